// What was done: sessions with their sets, session load, and weeks.
import { object } from "./settings.js";
import { many, say } from "../words.js";

/** @typedef {{exercise: string, name: string, block: string, set: number, measure: string, amount: number, sides: number, load: string, effort: number | null}} Entry */
/**
 * @typedef {object} Logged one session
 * @property {string} id when it began: local time, 2027-08-20T17:05:00
 * @property {string} plan
 * @property {string} session
 * @property {number} week
 * @property {Entry[]} sets
 * @property {number | null} effort of the whole session, 0 to 10
 * @property {number} minutes
 */

/**
 * Session load: effort times minutes (Foster C, Med Sci Sports Exerc 1998;30:1164-1168).
 * @param {Logged} session
 */
export function sessionLoad(session) {
  return session.effort === null ? 0 : session.effort * session.minutes;
}

/**
 * Local time without a zone, as the log keeps it.
 * @param {number} ms
 */
export function localTime(ms) {
  const at = new Date(ms);
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}`;
}

/**
 * The Monday of a day's week (ISO 8601).
 * @param {string} day such as 2027-08-20
 */
export function mondayOf(day) {
  const at = new Date(`${day.slice(0, 10)}T12:00:00Z`);
  at.setUTCDate(at.getUTCDate() - ((at.getUTCDay() + 6) % 7));
  return at.toISOString().slice(0, 10);
}

/**
 * Session load by week, weeks without a session included, oldest first, the last so many.
 * @param {Logged[]} sessions
 * @param {number} most
 * @returns {{monday: string, load: number, sessions: number}[]}
 */
export function weeksOf(sessions, most) {
  if (!sessions.length) return [];
  const mondays = sessions.map((one) => mondayOf(one.id)).sort();
  const weeks = [];
  for (let monday = mondays[0]; monday <= mondays[mondays.length - 1]; monday = later(monday)) {
    const inIt = sessions.filter((one) => mondayOf(one.id) === monday);
    weeks.push({ monday, load: inIt.reduce((sum, one) => sum + sessionLoad(one), 0), sessions: inIt.length });
  }
  return weeks.slice(-most);
}

/** @param {string} monday */
function later(monday) {
  const at = new Date(`${monday}T12:00:00Z`);
  at.setUTCDate(at.getUTCDate() + 7);
  return at.toISOString().slice(0, 10);
}

/**
 * A session as the storage or a file has it; undefined where it is none.
 * @param {unknown} value
 * @returns {Logged | undefined}
 */
export function loggedFrom(value) {
  const { id, plan, session, week, sets, effort, minutes } = object(value);
  if (typeof id !== "string" || !/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/.test(id) || !Array.isArray(sets)) return undefined;
  return {
    id,
    plan: text(plan),
    session: text(session),
    week: count(week, 0),
    sets: sets.slice(0, 500).map(entryFrom),
    effort: effortFrom(effort),
    minutes: count(minutes, 0),
  };
}

/**
 * @param {unknown} value
 * @returns {Entry}
 */
function entryFrom(value) {
  const { exercise, name, block, set, measure, amount, sides, load, effort } = object(value);
  return {
    exercise: text(exercise),
    name: text(name),
    block: text(block),
    set: count(set, 1),
    measure: text(measure) || "reps",
    amount: count(amount, 0),
    sides: count(sides, 1),
    load: text(load),
    effort: effortFrom(effort),
  };
}

/** @param {unknown} value */
function text(value) {
  return typeof value === "string" ? value.slice(0, 200) : "";
}

/**
 * @param {unknown} value
 * @param {number} otherwise
 */
function count(value, otherwise) {
  return typeof value === "number" && Number.isFinite(value) && value >= 0 ? value : otherwise;
}

/** @param {unknown} value */
function effortFrom(value) {
  return typeof value === "number" && value >= 0 && value <= 10 ? value : null;
}

/**
 * A set's amount in words, as the log shows it.
 * @param {Entry} entry
 */
export function said(entry) {
  const amount = amountSaid(entry);
  return entry.sides === 2 ? `${amount} ${say("each side")}` : amount;
}

/** @param {Entry} entry */
function amountSaid({ measure, amount }) {
  if (measure === "reps") return many("%(num)s rep", "%(num)s reps", amount);
  if (measure === "distance") return say("%(number)s m", { number: amount / 100 });
  const time = say("%(seconds)s s", { seconds: amount });
  return measure === "hold" ? say("%(time)s hold", { time }) : time;
}
