// The order of a session: from blocks as the page shows them to one step after the other.

/**
 * @typedef {object} Item one exercise of the page
 * @property {string} exercise its id
 * @property {string} name
 * @property {number} sets sets, or rounds
 * @property {"reps" | "hold" | "work" | "distance"} measure
 * @property {number} amount reps, seconds or centimetres
 * @property {number} sides 2 where the sides work one at a time
 * @property {string} tempo seconds of its four phases, or nothing
 * @property {number} rest seconds after a set, in straight sets
 */
/** @typedef {{name: string, kind: string, rest: number, change: number, items: Item[]}} Block */
/**
 * @typedef {object} Step
 * @property {"warm-up" | "set" | "rest" | "change" | "block" | "cool-down" | "finish"} kind
 * @property {number} block
 * @property {number} item
 * @property {number} round from 1
 * @property {number} rounds
 * @property {number} side 1 or 2; 0 where both work
 * @property {number} seconds how long a pause lasts; 0 for a step without a clock
 */

/**
 * @param {Block[]} blocks
 * @param {{between: number, warmUp: boolean, coolDown: boolean}} session
 * @returns {Step[]}
 */
export function stepsOf(blocks, session) {
  /** @type {Step[]} */
  const steps = [];
  if (session.warmUp) steps.push(pause("warm-up", 0, 0));
  blocks.forEach((block, index) => {
    if (index) steps.push(pause("block", index, session.between));
    steps.push(...(block.kind === "straight" ? straight(block, index) : inRounds(block, index)));
  });
  if (session.coolDown) steps.push(pause("cool-down", blocks.length - 1, 0));
  steps.push(pause("finish", blocks.length - 1, 0));
  return steps;
}

/**
 * All sets of one exercise, resting between them, then the next exercise.
 * @param {Block} block
 * @param {number} index
 */
function straight(block, index) {
  /** @type {Step[]} */
  const steps = [];
  block.items.forEach((item, place) => {
    if (place) steps.push(pause("change", index, block.change));
    for (let round = 1; round <= item.sets; round += 1) {
      if (round > 1) steps.push(pause("rest", index, item.rest));
      steps.push(...sidesOf(item, index, place, round, item.sets));
    }
  });
  return steps;
}

/**
 * One set of each exercise, then rest, then round again. An exercise with fewer rounds drops out of the last ones.
 * @param {Block} block
 * @param {number} index
 */
function inRounds(block, index) {
  /** @type {Step[]} */
  const steps = [];
  const rounds = Math.max(...block.items.map((item) => item.sets));
  for (let round = 1; round <= rounds; round += 1) {
    if (round > 1) steps.push(pause("rest", index, block.rest));
    let first = true;
    block.items.forEach((item, place) => {
      if (item.sets < round) return;
      if (!first && block.change) steps.push(pause("change", index, block.change));
      first = false;
      steps.push(...sidesOf(item, index, place, round, rounds));
    });
  }
  return steps;
}

/**
 * @param {Item} item
 * @param {number} block
 * @param {number} place
 * @param {number} round
 * @param {number} rounds
 * @returns {Step[]}
 */
function sidesOf(item, block, place, round, rounds) {
  const sides = item.sides === 2 ? [1, 2] : [0];
  return sides.map((side) => ({ kind: "set", block, item: place, round, rounds, side, seconds: 0 }));
}

/**
 * @param {Step["kind"]} kind
 * @param {number} block
 * @param {number} seconds
 * @returns {Step}
 */
function pause(kind, block, seconds) {
  return { kind, block, item: 0, round: 0, rounds: 0, side: 0, seconds };
}

/**
 * Whether a set ends its entry in the log: the second side closes what the first one began.
 * @param {Step} step
 */
export function closesSet(step) {
  return step.kind === "set" && step.side !== 1;
}
