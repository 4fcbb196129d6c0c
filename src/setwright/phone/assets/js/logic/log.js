// What was done: sessions with their sets, session load, and weeks.
import { object } from "./settings.js";
import { many, say } from "../words.js";

/** @typedef {{exercise: string, name: string, block: string, set: number, measure: string, amount: number, sides: number, load: string, effort: number | null, place: string}} Entry place: where its step stands in the session; nothing where a table brought it */
/**
 * @typedef {object} Logged one session
 * @property {string} id when it began: local time, 2027-08-20T17:05:00
 * @property {string} plan
 * @property {string} session
 * @property {number} week
 * @property {Entry[]} sets
 * @property {number | null} effort of the whole session, 0 to 10
 * @property {number} minutes
 * @property {string[]} [next] what came of ranges: sentences for the next time
 */
/** @typedef {{count: number}} Mended how many values were out of range, or in parts, and became plain ones */

/** What a log may hold. A device whose battery was flat says 1970; a day has 1440 minutes. */
const FIRST_YEAR = 1970;
const LAST_YEAR = 2199;
const MOST = { minutes: 1440, sets: 500, set: 1000, week: 1000, amount: 10_000_000, letters: 200 };
const MEASURES = new Set(["reps", "hold", "work", "distance"]);

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
  /** @type {Map<string, {monday: string, load: number, sessions: number}>} */
  const trained = new Map();
  for (const one of sessions) {
    const monday = mondayOf(one.id);
    const week = trained.get(monday) ?? { monday, load: 0, sessions: 0 };
    trained.set(monday, { monday, load: week.load + sessionLoad(one), sessions: week.sessions + 1 });
  }
  const mondays = [...trained.keys()].sort();
  const weeks = [];
  // Backwards from the newest: a session of another century makes no longer list.
  for (let monday = mondays[mondays.length - 1]; weeks.length < most && monday >= mondays[0]; monday = before(monday)) {
    weeks.unshift(trained.get(monday) ?? { monday, load: 0, sessions: 0 });
  }
  return weeks;
}

/**
 * The sessions up to the week of a day, and how many lie beyond it, as a clock that went wrong dates them. Where all
 * lie beyond, it is this clock that is wrong, and they are all there is.
 * @param {Logged[]} sessions
 * @param {string} today such as 2027-08-20
 * @returns {{until: Logged[], later: number}}
 */
export function untilWeekOf(sessions, today) {
  const monday = mondayOf(today);
  const until = sessions.filter((one) => mondayOf(one.id) <= monday);
  return until.length ? { until, later: sessions.length - until.length } : { until: sessions, later: 0 };
}

/** @param {string} monday */
function before(monday) {
  const at = new Date(`${monday}T12:00:00Z`);
  at.setUTCDate(at.getUTCDate() - 7);
  return at.toISOString().slice(0, 10);
}

/**
 * A session as the storage or a file has it; undefined where it is none.
 * @param {unknown} value
 * @param {Mended} mended
 * @returns {Logged | undefined}
 */
export function loggedFrom(value, mended = { count: 0 }) {
  const { id, plan, session, week, sets, effort, minutes, next } = object(value);
  if (typeof id !== "string" || !isTime(id) || !Array.isArray(sets)) return undefined;
  const entries = sets.slice(0, MOST.sets).filter((one) => one && typeof one === "object");
  mended.count += sets.length - entries.length;
  return {
    id,
    plan: text(plan, mended),
    session: text(session, mended),
    week: whole(week, 0, MOST.week, 0, mended),
    sets: entries.map((one) => entryFrom(one, mended)),
    effort: whole(effort, 0, 10, null, mended),
    minutes: whole(minutes, 0, MOST.minutes, 0, mended),
    ...(Array.isArray(next) ? { next: next.slice(0, MOST.sets).map((one) => text(one, mended)) } : {}),
  };
}

/**
 * Whether a text is a local time that a calendar has.
 * @param {string} id
 */
function isTime(id) {
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/.test(id)) return false;
  const at = new Date(`${id}Z`);
  const year = Number(id.slice(0, 4));
  // A day that a month lacks, and hour 24, are read as the day after.
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(id) && year >= FIRST_YEAR && year <= LAST_YEAR;
}

/**
 * @param {unknown} value
 * @param {Mended} mended
 * @returns {Entry}
 */
function entryFrom(value, mended) {
  const { exercise, name, block, set, measure, amount, sides, load, effort, place } = object(value);
  const known = typeof measure === "string" && MEASURES.has(measure);
  if (!known && measure !== undefined) mended.count += 1;
  return {
    exercise: text(exercise, mended),
    name: text(name, mended),
    block: text(block, mended),
    set: whole(set, 0, MOST.set, 1, mended),
    measure: known ? measure : "reps",
    amount: whole(amount, 0, MOST.amount, 0, mended),
    sides: whole(sides, 1, 2, 1, mended),
    load: text(load, mended),
    effort: whole(effort, 0, 10, null, mended),
    place: text(place, mended),
  };
}

/**
 * @param {unknown} value
 * @param {Mended} mended
 */
function text(value, mended) {
  if (typeof value === "string" && value.length <= MOST.letters) return value;
  if (value !== undefined) mended.count += 1;
  return typeof value === "string" ? value.slice(0, MOST.letters) : "";
}

/**
 * A whole number, which all of a log's are: nobody does half a repetition. A fraction becomes the nearest one.
 * @template {number | null} T
 * @param {unknown} value
 * @param {number} least
 * @param {number} most
 * @param {T} otherwise
 * @param {Mended} mended
 * @returns {number | T}
 */
function whole(value, least, most, otherwise, mended) {
  const fits = typeof value === "number" && value >= least && value <= most;
  if (value !== undefined && value !== null && !(fits && Number.isInteger(value))) mended.count += 1;
  return fits ? Math.round(value) : otherwise;
}

/**
 * What is stored of a session and what this page knows of it, as one: no set of either is left out. Where both have a
 * set, the stored one stays, since another window may have put it right, but for what was changed here.
 * @param {Logged} stored
 * @param {Logged} mine
 * @param {(what: string) => boolean} changed by a set's place, "effort" or "minutes"
 * @returns {Logged}
 */
export function merged(stored, mine, changed) {
  const sets = [...stored.sets];
  const found = new Set();
  for (const set of mine.sets) {
    const index = sets.findIndex((one, at) => !found.has(at) && isSame(one, set));
    found.add(index < 0 ? sets.length : index);
    if (index < 0) sets.push(set);
    else if (changed(set.place)) sets[index] = set;
  }
  const effort = changed("effort") ? mine.effort : (stored.effort ?? mine.effort);
  const minutes = changed("minutes") ? mine.minutes : stored.minutes || mine.minutes;
  return { ...stored, sets, effort, minutes, ...(changed("next") ? { next: mine.next } : {}) };
}

/**
 * Whether two entries are the same set: by its place in the session, or, where a table brought it, by what it was.
 * @param {Entry} one
 * @param {Entry} other
 */
function isSame(one, other) {
  if (one.place && other.place) return one.place === other.place;
  return one.block === other.block && one.exercise === other.exercise && one.set === other.set;
}

/**
 * What came of restoring, in words.
 * @param {{added: number, skipped: number, mended: number}} tally
 */
export function restored({ added, skipped, mended }) {
  const words = [many("%(num)s session.", "%(num)s sessions.", added)];
  if (skipped) {
    words.push(many("%(num)s entry was skipped: no session of a log.", "%(num)s entries were skipped: no session of a log.", skipped));
  }
  if (mended) {
    words.push(
      many(
        "%(num)s value that cannot be was made whole, 0 or nothing.",
        "%(num)s values that cannot be were made whole, 0 or nothing.",
        mended,
      ),
    );
  }
  return words.join(" ");
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
