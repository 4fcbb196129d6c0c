// A session as its page carries it in one block of JSON: setwright/phone/session_data.py makes it, and has its schema.

/** @typedef {"reps" | "hold" | "work" | "distance"} Measure */
/** @typedef {{kind: "lower" | "pause" | "lift" | "hold" | "settle", seconds: number, fast?: boolean}} Phase one phase of a repetition */
/**
 * @typedef {object} Load
 * @property {string} text in words
 * @property {"body weight" | "1RM"} [of] what a percentage is of
 * @property {boolean} [per_hand]
 * @property {string} [bands] the weights to take
 * @property {string} [weight] the owned weight of a fixed load
 * @property {string} [band] an elastic band's name
 * @property {string} [kit] what it is taken with
 * @property {"help" | "added"} [way] what it does where it is not just held
 * @property {string} [next_bands] the weights to take once all sets reach the top of their range
 * @property {string} [next_weight] the same, of a fixed load
 */
/**
 * @typedef {object} Set
 * @property {number} low reps, seconds or centimetres
 * @property {number} high
 * @property {number} [load] its place in the list
 * @property {number} [tempo] likewise
 * @property {string} [amount] its own words, where sets differ
 * @property {number} [leave] there where it is as many as possible: so many reps must be left
 * @property {number} [up_to] where such a set ends in any case
 * @property {boolean} [ramp] a warm-up set: it is not in the log
 */
/**
 * @typedef {object} Item one exercise
 * @property {string} exercise its id
 * @property {string} name
 * @property {Measure} measure
 * @property {1 | 2} sides 2 where they work one at a time
 * @property {string} amount in words
 * @property {string[]} kit
 * @property {Load[]} loads
 * @property {Phase[][]} tempos
 * @property {Set[]} sets
 * @property {boolean} [optional] a member may leave it out
 */
/** @typedef {{choices: string[], item: Item}} Way what members with one of these choices do in an exercise's place */
/**
 * @typedef {object} Block
 * @property {"straight" | "superset" | "circuit"} kind
 * @property {string} name
 * @property {number} [every] seconds from one start to the next
 * @property {number} [up_to] where as many rounds as possible end in any case
 * @property {Item[]} items
 * @property {boolean} [optional] a member may leave it out
 * @property {Way[][]} ways for each exercise; none where there is nothing to choose
 * @property {Record<string, unknown[][]>} courses the steps of each combination of ways, such as "0 2"
 */
/**
 * @typedef {object} Step
 * @property {"warm-up" | "set" | "rest" | "change" | "block" | "rounds" | "cool-down" | "finish"} kind rounds: as many as possible, one step for all
 * @property {number} block
 * @property {number} item
 * @property {number} round from 1
 * @property {number} rounds
 * @property {0 | 1 | 2} side 0 where both work
 * @property {number} seconds how long a pause lasts, or as many rounds as possible go on; 0 for a step without a clock
 */
/** @typedef {{version: 1, plan: string, session: string, week: number, efforts: string[], kit_names?: Record<string, string>, multiples?: string, blocks: Block[], steps: Step[]}} Session */

/**
 * The session of a page as a member with some choices does it; undefined where it has none, or one of another version.
 * @param {string | null | undefined} text
 * @param {string[]} choices the ids that the member ticked
 * @returns {Session | undefined}
 */
export function sessionFrom(text, choices = []) {
  const session = JSON.parse(text || "{}");
  if (session.version !== 1) return undefined;
  session.steps = session.steps.map(stepFrom);
  session.blocks.forEach((/** @type {Partial<Block>} */ block, /** @type {number} */ index) => {
    const { ways = [], courses = {}, items = [] } = block;
    const picks = ways.map((some) => pickOf(some, choices));
    block.items = items.map((item, place) => ({ ...BARE, ...(picks[place] ? ways[place][picks[place] - 1].item : item) }));
    const course = courses[picks.join(" ")];
    if (course) session.steps = withCourse(session.steps, index, course.map(stepFrom));
  });
  return session;
}

/** What an exercise without them leaves out. */
const BARE = { kit: [], loads: [], tempos: [] };

/**
 * @param {unknown[]} step a list of plain values
 * @returns {Step}
 */
function stepFrom([kind, block, item, round, rounds, side, seconds]) {
  return /** @type {Step} */ ({ kind, block, item, round, rounds, side, seconds });
}

/**
 * The number of the first way that fits a member; 0 is the exercise as it stands.
 * @param {{choices: string[]}[]} ways
 * @param {string[]} choices
 */
export function pickOf(ways, choices) {
  return ways.findIndex((way) => way.choices.some((one) => choices.includes(one))) + 1;
}

/**
 * The steps of a session with other ones for one block; the change to it, warm-up and cool-down stay.
 * @param {Step[]} steps
 * @param {number} block
 * @param {Step[]} course
 */
function withCourse(steps, block, course) {
  const own = (/** @type {Step} */ step) => step.block === block && (step.kind === "set" || step.kind === "rest" || step.kind === "change");
  const first = steps.findIndex(own);
  return [...steps.slice(0, first), ...course, ...steps.slice(first).filter((step) => !own(step))];
}

/**
 * Where a session goes on without what may be left out: the first step after it, with the pause before that.
 * @param {Step[]} steps
 * @param {number} at
 * @param {boolean} whole leave the whole block out, and not only this exercise
 */
export function after(steps, at, whole) {
  const { block, item } = steps[at];
  const left = steps.findIndex((step, index) => {
    if (index <= at) return false;
    if (step.block !== block || step.kind === "cool-down" || step.kind === "finish") return true;
    return !whole && step.item !== item;
  });
  return left < 0 ? steps.length - 1 : left;
}

/**
 * The set that a step is about; of a pause, the first of its exercise.
 * @param {Step} step
 * @param {Block[]} blocks
 */
export function setOf(step, blocks) {
  const { sets } = blocks[step.block].items[step.item];
  return sets[Math.max(0, step.round - 1)] ?? sets[0];
}

/**
 * Which set it is, counted among the warm-up sets or among the others.
 * @param {Step} step
 * @param {Block[]} blocks
 * @returns {{ramp: boolean, number: number, all: number}}
 */
export function placeAmong(step, blocks) {
  const leading = blocks[step.block].items[step.item].sets.filter((one) => one.ramp).length;
  const ramp = setOf(step, blocks).ramp === true;
  return { ramp, number: ramp ? step.round : step.round - leading, all: ramp ? leading : step.rounds - leading };
}

/**
 * A set's amount in words.
 * @param {Step} step
 * @param {Block[]} blocks
 */
export function amountOf(step, blocks) {
  return setOf(step, blocks).amount ?? blocks[step.block].items[step.item].amount;
}

/**
 * Whether a set ends its entry in the log: the second side closes what the first one began.
 * @param {Step} step
 */
export function closesSet(step) {
  return step.kind === "set" && step.side !== 1;
}
