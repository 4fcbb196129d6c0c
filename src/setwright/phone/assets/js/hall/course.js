// A session on one clock for a whole group: what everybody does, moment by moment. Pure.

/** @typedef {import("../logic/steps.js").Session} Session */
/** @typedef {import("../logic/steps.js").Block} Block */
/** @typedef {import("../logic/steps.js").Item} Item */
/** @typedef {import("../logic/steps.js").Set} Set */
/**
 * @typedef {object} Moment
 * @property {"begin" | "warm-up" | "work" | "rest" | "change" | "block" | "cool-down" | "end"} kind
 * @property {number} block
 * @property {number[]} items by part of the group, the exercise that it does; the coming one of a pause; -1 for none
 * @property {number} round from 1
 * @property {number} rounds
 * @property {number} seconds 0 where the coach goes on by hand
 */

/** What a pace is counted as where none is written, and how fast a loaded walk is: the same as in the session's times. */
const USUAL_REP_S = 4;
const CARRY_CM_PER_S = 100;
const CHANGE_SIDES_S = 10;

/**
 * @param {Session} session
 * @param {boolean} divided whether supersets go in halves and circuits in stations
 * @returns {Moment[]}
 */
export function courseOf(session, divided) {
  /** @type {Moment[]} */
  const course = [still("begin", 0)];
  if (session.steps.some((step) => step.kind === "warm-up")) course.push(still("warm-up", 0));
  session.blocks.forEach((block, index) => {
    const steps = session.steps.filter((step) => step.block === index);
    const between = steps.find((step) => step.kind === "block");
    const inside = divided && isDivided(block, steps) ? parted(block, index, steps) : all(block, index, steps);
    const first = inside[0];
    if (between) course.push({ ...first, kind: "block", seconds: between.seconds });
    else course.push({ ...first, kind: "block", seconds: 0 });
    course.push(...inside);
  });
  const last = session.blocks.length - 1;
  if (session.steps.some((step) => step.kind === "cool-down")) course.push(still("cool-down", last));
  return [...course, still("end", last)];
}

/**
 * How many parts a group makes in a block: two halves, a station for each exercise, or one.
 * @param {Block} block
 * @param {{kind: string}[]} steps
 */
function isDivided(block, steps) {
  return block.kind !== "straight" && block.every === undefined && !steps.some((step) => step.kind === "rounds");
}

/**
 * @param {Moment["kind"]} kind
 * @param {number} block
 * @returns {Moment}
 */
function still(kind, block) {
  return { kind, block, items: [], round: 0, rounds: 0, seconds: 0 };
}

/**
 * Everybody does the same, as the steps say it; both sides of a set are one moment.
 * @param {Block} block
 * @param {number} index
 * @param {import("../logic/steps.js").Step[]} steps
 * @returns {Moment[]}
 */
function all(block, index, steps) {
  return steps.flatMap((step) => /** @type {Moment[]} */ (momentsOf(step)));

  /** @param {import("../logic/steps.js").Step} step */
  function momentsOf(step) {
    const { kind, item, round, rounds, seconds } = step;
    const here = { block: index, items: [item], round, rounds };
    if (kind === "rounds") return [{ ...here, kind: "work", items: block.items.map((_, place) => place), round: 0, seconds }];
    if (kind === "set") return step.side === 2 ? [] : [{ ...here, kind: "work", seconds: workOf(block.items[item], round) }];
    return (kind === "rest" || kind === "change") && seconds ? [{ ...here, kind, seconds }] : [];
  }
}

/**
 * Every part of the group at another exercise, all moving on together; who has none in a round rests.
 * @param {Block} block
 * @param {number} index
 * @param {import("../logic/steps.js").Step[]} steps
 * @returns {Moment[]}
 */
function parted(block, index, steps) {
  const count = block.items.length;
  const rounds = Math.max(...block.items.map((item) => item.sets.length));
  const change = Math.max(0, ...steps.filter((step) => step.round === 1 && isPause(step)).map((step) => step.seconds));
  /** @type {Moment[]} */
  const moments = [];
  for (let round = 1; round <= rounds; round += 1) {
    for (let turn = 0; turn < count; turn += 1) {
      const items = block.items.map((_, part) => placeIn(block, (part + turn) % count, round));
      const pause = turn ? change : steps.find((step) => step.kind === "rest" && step.item === 0 && step.round === round)?.seconds ?? 0;
      const here = { block: index, items, round, rounds };
      if (moments.length && pause) moments.push({ ...here, kind: turn ? "change" : "rest", seconds: pause });
      const longest = Math.max(...items.map((item) => (item < 0 ? 0 : workOf(block.items[item], round))));
      moments.push({ ...here, kind: "work", seconds: longest });
    }
  }
  return moments;
}

/** @param {{kind: string, item: number}} step */
function isPause(step) {
  return step.kind === "change" || (step.kind === "rest" && step.item > 0);
}

/**
 * @param {Block} block
 * @param {number} item
 * @param {number} round
 */
function placeIn(block, item, round) {
  return round <= block.items[item].sets.length ? item : -1;
}

/**
 * The seconds of one set with all of its sides, at the most that is written.
 * @param {Item} item
 * @param {number} round
 */
export function workOf(item, round) {
  const set = item.sets[Math.min(round, item.sets.length) - 1];
  return secondsOf(item, set) * item.sides + (item.sides - 1) * CHANGE_SIDES_S;
}

/**
 * @param {Item} item
 * @param {Set} set
 */
function secondsOf(item, set) {
  const most = set.leave === undefined ? set.high : set.up_to ?? set.high;
  if (item.measure === "distance") return Math.ceil(most / CARRY_CM_PER_S);
  if (item.measure !== "reps") return most;
  const phases = set.tempo === undefined ? [] : item.tempos[set.tempo];
  const rep = phases.reduce((sum, phase) => sum + phase.seconds, 0);
  return Math.ceil(most * (rep || USUAL_REP_S));
}
