// The log as comma-separated values (RFC 4180: CRLF, quotes doubled), and back.

/** @typedef {import("./log.js").Logged} Logged */

const HEAD = [
  "started", "plan", "session", "week", "minutes", "session effort", "session load",
  "block", "exercise", "exercise name", "set", "measure", "amount", "sides", "load", "effort",
];

/**
 * One line a set, the session's own columns repeated; a session without a set has one line.
 * @param {Logged[]} sessions
 */
export function csvOf(sessions) {
  const lines = [HEAD];
  for (const one of sessions) {
    const load = one.effort === null ? "" : String(one.effort * one.minutes);
    const own = [one.id, one.plan, one.session, String(one.week), String(one.minutes), shown(one.effort), load];
    const sets = one.sets.map((set) => [
      set.block, set.exercise, set.name, String(set.set), set.measure, String(set.amount), String(set.sides),
      set.load, shown(set.effort),
    ]);
    for (const set of sets.length ? sets : [Array(9).fill("")]) lines.push([...own, ...set]);
  }
  return lines.map((line) => line.map(quoted).join(",") + "\r\n").join("");
}

/** @param {number | null} effort */
function shown(effort) {
  return effort === null ? "" : String(effort);
}

/** @param {string} field */
function quoted(field) {
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

/**
 * The fields of a CSV text, line by line.
 * @param {string} text
 * @returns {string[][]}
 */
export function fieldsOf(text) {
  const lines = [];
  let line = [];
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|\n|\r|$)/y;
  while (field.lastIndex < text.length) {
    const found = field.exec(text);
    if (!found) return [];
    line.push(found[1] === undefined ? found[2] : found[1].replaceAll('""', '"'));
    if (found[3] === ",") {
      if (field.lastIndex === text.length) line.push("");
      else continue;
    }
    lines.push(line);
    line = [];
  }
  return lines;
}

/**
 * The sessions of a CSV that csvOf made, as plain values for loggedFrom; undefined where it is another file.
 * @param {string} text
 * @returns {unknown[] | undefined}
 */
export function sessionsIn(text) {
  const [head, ...lines] = fieldsOf(text.replace(/^\uFEFF/, ""));
  if (!head || head.join() !== HEAD.join()) return undefined;
  /** @type {Map<string, {id: string, plan: string, session: string, week: number, minutes: number, effort: number | null, sets: unknown[]}>} */
  const sessions = new Map();
  const effort = (/** @type {string} */ field) => (field === "" ? null : Number(field));
  for (const line of lines) {
    if (line.length !== HEAD.length) return undefined;
    const [id, plan, session, week, minutes, whole, , block, exercise, name, set, measure, amount, sides, load, own] = line;
    const known = sessions.get(id) ?? {
      id, plan, session, week: Number(week), minutes: Number(minutes), effort: effort(whole), sets: [],
    };
    sessions.set(id, known);
    if (!name) continue;
    const numbers = { set: Number(set), amount: Number(amount), sides: Number(sides), effort: effort(own) };
    known.sets.push({ block, exercise, name, measure, load, ...numbers });
  }
  return [...sessions.values()];
}
