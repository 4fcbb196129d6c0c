// Where a guided session stands. Every time is a clock's time in ms, so that a lock, a call or a reload loses nothing.
import { closesSet, setOf } from "./steps.js";

/** @typedef {import("./steps.js").Step} Step */
/** @typedef {import("./steps.js").Block} Block */
/**
 * @typedef {object} Run
 * @property {string} page where it runs
 * @property {string} plan a fingerprint of the steps: a session that was published anew starts afresh
 * @property {number} started
 * @property {number} at index of the step
 * @property {number} since when the step began
 * @property {number} more seconds added to the pause
 * @property {number | null} begun when the hold, work time or beat was started
 * @property {number | null} zero when the first set of a block by the clock began
 * @property {number} count rounds that a member has counted
 * @property {string[]} choices what the member had ticked when it began
 * @property {Record<string, string>} instead the easier exercise done instead, by block and item
 * @property {Record<string, string>} sides which sides of a set are done, by its place: "1", "2" or "12"
 * @property {number | null} left where the session was left for its end, if it was
 * @property {number} minutes as the member typed them; 0 for what the clock says
 */

/** Seconds of 3-2-1 before a timed set. */
export const LEAD_S = 3;

/**
 * @param {string} page
 * @param {string} plan
 * @param {number} now
 * @param {string[]} choices
 * @returns {Run}
 */
export function begin(page, plan, now, choices = []) {
  const still = { zero: null, count: 0, choices, instead: {}, sides: {}, left: null, minutes: 0 };
  return { page, plan, started: now, at: 0, since: now, more: 0, begun: null, ...still };
}

/**
 * The choices with which a run on a page began; undefined where none runs there.
 * @param {unknown} value as the storage has it
 * @param {string} page
 */
export function runningOn(value, page) {
  const run = /** @type {Partial<Run> | null} */ (value && typeof value === "object" ? value : null);
  return run?.page === page ? textsOf(run.choices) : undefined;
}

/** @param {unknown} value */
function textsOf(value) {
  return Array.isArray(value) ? value.filter((/** @type {unknown} */ one) => typeof one === "string") : [];
}

/**
 * A run as the storage has it, where it is one, for the same page and the same steps, and not older than half a day.
 * @param {unknown} value
 * @param {string} page
 * @param {string} plan
 * @param {number} now
 * @param {number} steps how many the session has
 * @returns {Run | undefined}
 */
export function resumed(value, page, plan, now, steps) {
  const run = /** @type {Partial<Run> | null} */ (value && typeof value === "object" ? value : null);
  if (!run || run.page !== page || run.plan !== plan) return undefined;
  const { started, at, since, more, begun, zero, count, instead, sides, left, minutes } = run;
  if (!isCount(started, LATEST_MS) || !isCount(since, LATEST_MS) || !isCount(more, HALF_DAY_MS)) return undefined;
  if (!isCount(at, steps - 1) || !Number.isInteger(at) || now - since > HALF_DAY_MS) return undefined;
  const others = Object.entries(instead ?? {}).filter(([, name]) => typeof name === "string");
  return {
    page,
    plan,
    started,
    at,
    // A clock that was set back meanwhile: no rest may last until it has caught up.
    since: Math.min(since, now),
    more,
    begun: isCount(begun, LATEST_MS) ? Math.min(begun, now) : null,
    zero: isCount(zero, LATEST_MS) ? Math.min(zero, now + LEAD_S * 1000) : null,
    count: isCount(count, MOST_ROUNDS) && Number.isInteger(count) ? count : 0,
    choices: textsOf(run.choices),
    instead: Object.fromEntries(others),
    sides: Object.fromEntries(Object.entries(sides ?? {}).filter(([, done]) => /^(1|2|12)$/.test(done))),
    left: isCount(left, steps - 1) && Number.isInteger(left) ? left : null,
    minutes: isCount(minutes, 1440) ? minutes : 0,
  };
}

const HALF_DAY_MS = 12 * 3600 * 1000;
const MOST_ROUNDS = 1000;
const LATEST_MS = Date.UTC(2199, 11, 31);

/**
 * @param {unknown} value
 * @param {number} most
 * @returns {value is number}
 */
function isCount(value, most) {
  return typeof value === "number" && value >= 0 && value <= most;
}

/**
 * Whether a step is a set that a clock ends.
 * @param {Step} step
 * @param {Block[]} blocks
 */
export function isTimed(step, blocks) {
  if (step.kind !== "set") return false;
  const { measure } = blocks[step.block].items[step.item];
  return measure === "hold" || measure === "work";
}

/**
 * Where the clock of a step stands. left counts down, and below 0 once a pause is over; over is the whole length.
 * @param {Step} step
 * @param {Block[]} blocks
 * @param {Run} run
 * @param {number} now
 * @returns {{state: "still" | "lead" | "going" | "over", left: number, whole: number, passed: number}}
 */
export function clock(step, blocks, run, now) {
  const { every } = blocks[step.block];
  if (step.kind === "rounds") return countingDown(step.seconds, run, now);
  if (every && run.zero !== null && (step.kind === "rest" || (step.kind === "set" && !isTimed(step, blocks)))) {
    return untilNextStart(step, every, run, run.zero, now);
  }
  if (step.kind !== "set") {
    const whole = step.seconds + run.more;
    if (!step.seconds) return { state: "still", left: 0, whole: 0, passed: (now - run.since) / 1000 };
    const left = Math.ceil(whole - (now - run.since) / 1000);
    return { state: left > 0 ? "going" : "over", left, whole, passed: (now - run.since) / 1000 };
  }
  return countingDown(isTimed(step, blocks) ? setOf(step, blocks).high : 0, run, now);
}

/**
 * A clock that a member starts: 3-2-1, and then down from so many seconds, or just on where there are none.
 * @param {number} whole
 * @param {Run} run
 * @param {number} now
 * @returns {ReturnType<typeof clock>}
 */
function countingDown(whole, run, now) {
  if (run.begun === null) return { state: "still", left: 0, whole: 0, passed: 0 };
  const passed = (now - run.begun) / 1000 - LEAD_S;
  if (passed < 0) return { state: "lead", left: Math.ceil(-passed), whole: LEAD_S, passed };
  if (!whole) return { state: "going", left: 0, whole: 0, passed };
  const left = Math.ceil(whole - passed);
  return { state: left > 0 ? "going" : "over", left, whole, passed };
}

/** What a timer may be off by. */
const SLACK_MS = 50;

/**
 * When the next set starts, in a block in which one does every so often. A set that lasted longer waits for the start
 * after it.
 * @param {number} every seconds
 * @param {number} zero when the first one began
 * @param {number} since when this step began
 */
export function nextStart(every, zero, since) {
  const each = every * 1000;
  return zero + Math.max(1, Math.ceil((since - zero - SLACK_MS) / each)) * each;
}

/**
 * @param {Step} step a rest, or a set that no clock ends
 * @param {number} every
 * @param {Run} run
 * @param {number} zero
 * @param {number} now
 * @returns {ReturnType<typeof clock>}
 */
function untilNextStart(step, every, run, zero, now) {
  if (now < zero) return { state: "lead", left: Math.ceil((zero - now) / 1000), whole: LEAD_S, passed: (now - zero) / 1000 };
  // A set has begun at a start, so that the next one is a whole turn away; a rest ends at whichever comes next.
  const end = nextStart(every, zero, step.kind === "set" ? run.since + 2 * SLACK_MS : run.since);
  const whole = step.kind === "set" ? every : (end - run.since) / 1000;
  const left = Math.ceil((end - now) / 1000);
  return { state: left > 0 ? "going" : "over", left, whole, passed: whole - (end - now) / 1000 };
}

/**
 * Go to a step. since is the time at which it began, which may lie in the past. A block's clock ends with the block.
 * @param {Run} run
 * @param {number} at
 * @param {number} since
 * @param {Step[]} steps
 * @returns {Run}
 */
export function goTo(run, at, since, steps) {
  const same = steps[at].block === steps[run.at].block && ["set", "rest"].includes(steps[at].kind);
  return { ...run, at, since, more: 0, begun: null, zero: same ? run.zero : null, count: 0, left: null };
}

/**
 * Catch up with the clock: a timed set that has run out is done, and the pause after it began when it ended.
 * @param {Step[]} steps
 * @param {Block[]} blocks
 * @param {Run} run
 * @param {number} now
 * @returns {{run: Run, done: Step | undefined}}
 */
export function caughtUp(steps, blocks, run, now) {
  const step = steps[run.at];
  const { every } = blocks[step.block];
  if (every && run.zero !== null && step.kind === "rest") return { run: started(steps, blocks, run, run.zero, every, now), done: undefined };
  if (!isTimed(step, blocks) || run.begun === null || clock(step, blocks, run, now).state !== "over") {
    return { run, done: undefined };
  }
  const ended = run.begun + (LEAD_S + setOf(step, blocks).high) * 1000;
  return { run: goTo(run, Math.min(run.at + 1, steps.length - 1), ended, steps), done: step };
}

/**
 * At the full minute, the rest of a block by the clock is over and its next set begins by itself; a clock of its own
 * starts, too, but not for somebody who was away for a whole turn.
 * @param {Step[]} steps
 * @param {Block[]} blocks
 * @param {Run} run
 * @param {number} zero
 * @param {number} every
 * @param {number} now
 * @returns {Run}
 */
function started(steps, blocks, run, zero, every, now) {
  const end = nextStart(every, zero, run.since);
  if (now < end || run.at + 1 >= steps.length) return run;
  const next = goTo(run, run.at + 1, end, steps);
  const alone = isTimed(steps[next.at], blocks) && now - end < every * 1000;
  return alone ? { ...next, begun: end - LEAD_S * 1000 } : next;
}

/**
 * The next set after a step, for "what comes next".
 * @param {Step[]} steps
 * @param {number} at
 */
export function nextSet(steps, at) {
  return steps.slice(at + 1).find((step) => step.kind === "set" || step.kind === "rounds");
}

/**
 * The sets that were closed since the last rest or change of block, newest last: those that a rest lets a member correct.
 * @param {Step[]} steps
 * @param {number} at
 */
export function justDone(steps, at) {
  const found = [];
  for (let index = at - 1; index >= 0; index -= 1) {
    const step = steps[index];
    if (step.kind === "rest" || step.kind === "block" || step.kind === "warm-up") break;
    if (closesSet(step)) found.unshift(step);
  }
  return found;
}

/**
 * A fingerprint of what is done in a session, whatever words it is said in.
 * @param {Block[]} blocks
 */
export function fingerprint(blocks) {
  const done = blocks.map(({ kind, every, items }) => [kind, items.map(({ exercise, measure, sides, sets }) => [exercise, measure, sides, sets]), every ?? []]);
  const text = JSON.stringify(done);
  let sum = 5381;
  for (let index = 0; index < text.length; index += 1) sum = (sum * 33 + text.charCodeAt(index)) % 4294967296;
  return sum.toString(36);
}
