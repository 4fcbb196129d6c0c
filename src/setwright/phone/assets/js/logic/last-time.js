// A session held against the one before it of its kind. Pure.
import { said } from "./log.js";

/** @typedef {import("./log.js").Logged} Logged */
/** @typedef {import("./log.js").Entry} Entry */

/**
 * The newest session of the same kind before this one.
 * @param {Logged[]} sessions
 * @param {Logged} now
 * @returns {Logged | undefined}
 */
export function lastTime(sessions, now) {
  const before = sessions.filter((one) => one.plan === now.plan && one.session === now.session && one.id < now.id && one.sets.length);
  return before.sort((a, b) => (a.id < b.id ? 1 : -1))[0];
}

/**
 * The sets of an exercise in a line: "8, 8, 7 reps each side, 12 kg"; every set for itself where they are of different kinds.
 * @param {Entry[]} sets
 */
export function inALine(sets) {
  const loads = new Set(sets.map(({ load }) => load));
  const words = sets.map(said);
  const same = new Set(words).size === 1 && loads.size === 1;
  const one = (/** @type {Entry} */ set) => [said(set), set.load].filter(Boolean).join(", ");
  return same && sets.length > 1 ? `${sets.length} × ${one(sets[0])}` : sets.map(one).join("; ");
}

/**
 * The sets of a session by exercise, in the order in which they were done.
 * @param {Entry[]} sets
 * @returns {Map<string, Entry[]>} by block, exercise and name
 */
export function byExercise(sets) {
  /** @type {Map<string, Entry[]>} */
  const found = new Map();
  for (const set of sets) {
    const key = [set.block, set.exercise, set.name].join("\n");
    found.set(key, [...(found.get(key) ?? []), set]);
  }
  return found;
}
