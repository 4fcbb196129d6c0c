// One exercise over time: its heaviest load, or its most repetitions, by session; and personal bests as plain facts. Pure.
import { compare, exact, kilograms } from "./exact.js";

/** @typedef {import("./log.js").Logged} Logged */
/** @typedef {import("./log.js").Entry} Entry */
/** @typedef {import("./exact.js").Exact} Exact */
/** @typedef {{id: string, best: Entry, value: number, sets: Entry[]}} Row best: the set that the value comes from */
/** @typedef {{measure: string, loaded: boolean, unit: string, rows: Row[]}} History oldest first; unit: of a load, kg or lb */

/**
 * The exercises of a log by id, with the name of the newest, those with most sessions first.
 * @param {Logged[]} sessions newest first
 * @returns {{exercise: string, name: string, sessions: number}[]}
 */
export function exercisesOf(sessions) {
  /** @type {Map<string, {exercise: string, name: string, sessions: number}>} */
  const found = new Map();
  for (const { sets } of sessions) {
    for (const exercise of new Set(sets.map((set) => set.exercise))) {
      const known = found.get(exercise) ?? { exercise, name: sets.find((set) => set.exercise === exercise)?.name ?? exercise, sessions: 0 };
      found.set(exercise, { ...known, sessions: known.sessions + 1 });
    }
  }
  return [...found.values()].sort((a, b) => b.sessions - a.sessions || (a.name < b.name ? -1 : 1));
}

/**
 * Its sets by session: by load where any was noted, else by amount. Sets of another measure than the newest are left out.
 * @param {Logged[]} sessions newest first
 * @param {string} exercise
 * @returns {History}
 */
export function historyOf(sessions, exercise) {
  const all = sessions.map((one) => ({ id: one.id, sets: one.sets.filter((set) => set.exercise === exercise) })).filter(({ sets }) => sets.length);
  const measure = all[0]?.sets[0].measure ?? "reps";
  const loads = all.flatMap(({ sets }) => sets.flatMap(({ load }) => weighed(load) ?? []));
  const loaded = loads.length > 0;
  const unit = loads[0]?.unit ?? "kg";
  const rows = all.flatMap(({ id, sets }) => {
    const counted = sets.filter((set) => set.measure === measure && (!loaded || weighed(set.load)));
    if (!counted.length) return [];
    const best = counted.reduce((most, set) => (better(set, most) ? set : most));
    return [{ id, best, sets: counted, value: loaded ? inUnit(best.load, unit) : best.amount }];
  });
  return { measure, loaded, unit, rows: rows.reverse() };
}

/**
 * Personal bests of an exercise: the heaviest set, and the most repetitions, or seconds, or metres, each on its first day.
 * @param {History} history
 * @returns {{heaviest: Row | undefined, most: Row | undefined}}
 */
export function bestsOf({ loaded, rows }) {
  const heaviest = loaded ? rows.reduce((/** @type {Row | undefined} */ top, row) => (!top || better(row.best, top.best) ? row : top), undefined) : undefined;
  const most = rows.reduce((/** @type {Row | undefined} */ top, row) => {
    const longest = row.sets.reduce((a, b) => (b.amount > a.amount ? b : a));
    return !top || longest.amount > top.best.amount ? { ...row, best: longest } : top;
  }, undefined);
  return { heaviest, most };
}

/**
 * @param {Entry} set
 * @param {Entry} than
 */
function better(set, than) {
  const [mine, other] = [weighed(set.load), weighed(than.load)];
  const by = mine && other ? compare(mine.kg, other.kg) : mine ? 1 : other ? -1 : 0;
  return by > 0 || (by === 0 && set.amount > than.amount);
}

/**
 * A load as the log has it in words, such as "12.5 kg in each hand", where it is a weight.
 * @param {string} load
 * @returns {{kg: Exact, number: string, unit: string} | undefined}
 */
export function weighed(load) {
  const found = /^(\d+(?:[.,]\d+)?)\s*(kg|lb)/.exec(load.trim());
  const kg = found && exact(found[1]) && kilograms(found[1], found[2]);
  return found && kg ? { kg, number: found[1].replace(",", "."), unit: found[2] } : undefined;
}

/**
 * @param {string} load
 * @param {string} unit
 */
function inUnit(load, unit) {
  const found = weighed(load);
  if (!found) return 0;
  if (found.unit === unit) return Number(found.number);
  const kg = Number(found.kg.over) / Number(found.kg.under);
  return Math.round((unit === "lb" ? kg / 0.45359237 : kg) * 10) / 10;
}
