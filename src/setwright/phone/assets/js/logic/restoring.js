// What a file would bring into the log, before anything is written: the log is added to, and never lowered. Pure.
import { merged } from "./log.js";
import { many, say } from "../words.js";

/** @typedef {import("./log.js").Logged} Logged */
/** @typedef {{fresh: number, grown: number, same: number, sets: number, left: number}} Tally sets: new sets of sessions that are here; left: values that differ, and stay as the log has them */

/**
 * A session as it would stand: what the log has stays as it is, and what it lacks is taken.
 * @param {Logged | undefined} stored
 * @param {Logged} given
 * @returns {Logged}
 */
export function grown(stored, given) {
  return stored ? merged(stored, given, () => false) : given;
}

/**
 * @param {Logged[]} given
 * @param {(id: string) => Logged | undefined} stored
 * @returns {Tally}
 */
export function tallied(given, stored) {
  const tally = { fresh: 0, grown: 0, same: 0, sets: 0, left: 0 };
  for (const session of given) {
    const here = stored(session.id);
    if (!here) {
      tally.fresh += 1;
      continue;
    }
    const whole = grown(here, session);
    const more = whole.sets.length - here.sets.length;
    if (JSON.stringify(whole) === JSON.stringify(here)) tally.same += 1;
    else tally.grown += 1;
    tally.sets += more;
    tally.left += differing(session, whole);
  }
  return tally;
}

/**
 * @param {Logged} given
 * @param {Logged} whole
 */
function differing(given, whole) {
  const kept = new Set(whole.sets.map((set) => JSON.stringify(set)));
  const sets = given.sets.filter((set) => !kept.has(JSON.stringify(set))).length;
  const effort = given.effort !== null && given.effort !== whole.effort ? 1 : 0;
  return sets + effort + (given.minutes && given.minutes !== whole.minutes ? 1 : 0);
}

/**
 * @param {Tally} tally
 */
export function tallySaid({ fresh, grown: more, same, sets, left }) {
  const words = [many("%(num)s session is new.", "%(num)s sessions are new.", fresh)];
  if (more) words.push(say("%(count)s are here and get what they lack (%(sets)s sets).", { count: more, sets }));
  if (same) words.push(many("%(num)s is here as it is.", "%(num)s are here as they are.", same));
  if (left) words.push(many("%(num)s value differs: yours stays.", "%(num)s values differ: yours stay.", left));
  return words.join(" ");
}
