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
 */
/** @typedef {{kind: "straight" | "superset" | "circuit", name: string, every?: number, up_to?: number, items: Item[]}} Block every: seconds from one start to the next; up_to: where as many rounds as possible end in any case */
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
/** @typedef {{version: 1, plan: string, session: string, week: number, efforts: string[], multiples?: string, blocks: Block[], steps: Step[]}} Session */

/**
 * The session of a page; undefined where it has none, or one of another version.
 * @param {string | null | undefined} text
 * @returns {Session | undefined}
 */
export function sessionFrom(text) {
  const session = JSON.parse(text || "{}");
  if (session.version !== 1) return undefined;
  for (const block of session.blocks) {
    block.items = block.items.map((/** @type {object} */ item) => ({ kit: [], loads: [], tempos: [], ...item }));
  }
  session.steps = session.steps.map((/** @type {unknown[]} */ [kind, block, item, round, rounds, side, seconds]) => {
    return { kind, block, item, round, rounds, side, seconds };
  });
  return session;
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
