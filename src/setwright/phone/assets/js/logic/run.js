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
  return { page, plan, started: now, at: 0, since: now, more: 0, begun: null, choices, instead: {}, sides: {}, left: null, minutes: 0 };
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
  const { started, at, since, more, begun, instead, sides, left, minutes } = run;
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
    choices: textsOf(run.choices),
    instead: Object.fromEntries(others),
    sides: Object.fromEntries(Object.entries(sides ?? {}).filter(([, done]) => /^(1|2|12)$/.test(done))),
    left: isCount(left, steps - 1) && Number.isInteger(left) ? left : null,
    minutes: isCount(minutes, 1440) ? minutes : 0,
  };
}

const HALF_DAY_MS = 12 * 3600 * 1000;
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
  if (step.kind !== "set") {
    const whole = step.seconds + run.more;
    if (!step.seconds) return { state: "still", left: 0, whole: 0, passed: (now - run.since) / 1000 };
    const left = Math.ceil(whole - (now - run.since) / 1000);
    return { state: left > 0 ? "going" : "over", left, whole, passed: (now - run.since) / 1000 };
  }
  if (run.begun === null) return { state: "still", left: 0, whole: 0, passed: 0 };
  const passed = (now - run.begun) / 1000 - LEAD_S;
  if (passed < 0) return { state: "lead", left: Math.ceil(-passed), whole: LEAD_S, passed };
  if (!isTimed(step, blocks)) return { state: "going", left: 0, whole: 0, passed };
  const whole = setOf(step, blocks).high;
  const left = Math.ceil(whole - passed);
  return { state: left > 0 ? "going" : "over", left, whole, passed };
}

/**
 * Go to a step. since is the time at which it began, which may lie in the past.
 * @param {Run} run
 * @param {number} at
 * @param {number} since
 * @returns {Run}
 */
export function goTo(run, at, since) {
  return { ...run, at, since, more: 0, begun: null, left: null };
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
  if (!isTimed(step, blocks) || run.begun === null || clock(step, blocks, run, now).state !== "over") {
    return { run, done: undefined };
  }
  const ended = run.begun + (LEAD_S + setOf(step, blocks).high) * 1000;
  return { run: goTo(run, Math.min(run.at + 1, steps.length - 1), ended), done: step };
}

/**
 * The next set after a step, for "what comes next".
 * @param {Step[]} steps
 * @param {number} at
 */
export function nextSet(steps, at) {
  return steps.slice(at + 1).find((step) => step.kind === "set");
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
  const done = blocks.map(({ kind, items }) => [kind, items.map(({ exercise, measure, sides, sets }) => [exercise, measure, sides, sets])]);
  const text = JSON.stringify(done);
  let sum = 5381;
  for (let index = 0; index < text.length; index += 1) sum = (sum * 33 + text.charCodeAt(index)) % 4294967296;
  return sum.toString(36);
}
