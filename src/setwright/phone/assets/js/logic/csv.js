// The log as comma-separated values (RFC 4180: CRLF, quotes doubled), and back.

/** @typedef {import("./log.js").Logged} Logged */

const HEAD = [
  "started", "plan", "session", "week", "minutes", "session effort", "session load",
  "block", "exercise", "exercise name", "set", "measure", "amount", "sides", "load", "effort", "club",
];
/** Tables of earlier versions do not say of which club they are. */
const EARLIER = HEAD.slice(0, -1);

/**
 * One line a set, the session's own columns repeated; a session without a set has one line.
 * @param {Logged[]} sessions
 * @param {string} club
 */
export function csvOf(sessions, club) {
  const lines = [HEAD];
  for (const one of sessions) {
    const load = one.effort === null ? "" : String(one.effort * one.minutes);
    const own = [one.id, one.plan, one.session, String(one.week), String(one.minutes), shown(one.effort), load];
    const sets = one.sets.map((set) => [
      set.block, set.exercise, set.name, String(set.set), set.measure, String(set.amount), String(set.sides),
      set.load, shown(set.effort),
    ]);
    for (const set of sets.length ? sets : [Array(9).fill("")]) lines.push([...own, ...set, club]);
  }
  return lines.map((line) => line.map(quoted).join(",") + "\r\n").join("");
}

/** @param {number | null} effort */
function shown(effort) {
  return effort === null ? "" : String(effort);
}

/**
 * A text that a spreadsheet would run as a formula gets an apostrophe before it; a number stays one. So that reading
 * gives every text back as it was, one that begins with apostrophes before such a sign gets one more.
 * @param {string} field
 */
function harmless(field) {
  return FORMULA.test(field) && !NUMBER.test(field) ? `'${field}` : field;
}

/** The signs that start a formula, or hide one (OWASP, CSV Injection; the list of signs from memory). */
const FORMULA = /^'*(?:[\t\r\n]|\s*[=+\-@\uff1d\uff0b\uff0d\uff20])/;
const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;

/**
 * @param {string} field
 */
function asWritten(field) {
  return field.startsWith("'") && FORMULA.test(field) ? field.slice(1) : field;
}

/** @param {string} field */
function quoted(field) {
  const text = harmless(field);
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * The fields of a CSV text, line by line; nothing where a quote is never closed or stands in the middle of a field.
 * @param {string} text
 * @param {"," | ";"} separator
 * @returns {string[][]}
 */
export function fieldsOf(text, separator = ",") {
  const ends = separator === ";" ? /[";\r\n]/g : /[",\r\n]/g;
  const lines = [];
  /** @type {string[]} */
  let line = [];
  let at = 0;
  while (at < text.length) {
    let field = "";
    if (text[at] === '"') {
      let end = text.indexOf('"', at + 1);
      for (; end >= 0 && text[end + 1] === '"'; end = text.indexOf('"', end + 2));
      if (end < 0) return [];
      field = text.slice(at + 1, end).replaceAll('""', '"');
      at = end + 1;
    } else {
      ends.lastIndex = at;
      const end = ends.exec(text)?.index ?? text.length;
      field = text.slice(at, end);
      at = end;
    }
    line.push(field);
    if (text[at] === separator) {
      at += 1;
      if (at < text.length) continue;
      line.push("");
    } else if (text[at] === '"' || (at < text.length && text[at] !== "\r" && text[at] !== "\n")) return [];
    else at += text.startsWith("\r\n", at) ? 2 : 1;
    lines.push(line);
    line = [];
  }
  return lines;
}

/**
 * What stands between fields: a spreadsheet of a country that writes 2,5 takes semicolons, and may say so in a first line.
 * @param {string} text
 * @returns {{separator: "," | ";", body: string}}
 */
function separated(text) {
  const plain = text.replace(/^\uFEFF/, "");
  const said = /^sep=([,;])\r?\n/.exec(plain);
  const body = said ? plain.slice(said[0].length) : plain;
  const [first] = body.split(/\r?\n/, 1);
  return { separator: (said ? said[1] === ";" : first.includes(";")) ? ";" : ",", body };
}

/**
 * The sessions of a CSV that csvOf made, as plain values for loggedFrom; undefined where it is another file.
 * @param {string} text
 * @param {string} here the name of this club
 * @returns {{sessions: unknown[], skipped: number, of: string} | undefined} skipped: lines that are none of this
 *   table's; of: the first club that is named and is not the one here, or nothing
 */
export function sessionsIn(text, here) {
  const { separator, body } = separated(text);
  const [head, ...lines] = fieldsOf(body, separator);
  if (!head || ![HEAD.join(), EARLIER.join()].includes(head.join())) return undefined;
  /** @type {Map<string, {id: string, plan: string, session: string, week: number, minutes: number, effort: number | null, sets: unknown[]}>} */
  const sessions = new Map();
  const count = (/** @type {string} */ field) => Number(separator === ";" ? field.replace(",", ".") : field);
  const effort = (/** @type {string} */ field) => (field === "" ? null : count(field));
  let skipped = 0;
  let of = "";
  for (const line of lines) {
    if (line.length !== head.length) {
      if (line.join("").trim()) skipped += 1;
      continue;
    }
    const [id, plan, session, week, minutes, whole, , block, exercise, name, set, measure, amount, sides, load, own, club] =
      line.map(asWritten);
    if (!of && club && club !== here) of = club;
    const known = sessions.get(id) ?? {
      id, plan, session, week: count(week), minutes: count(minutes), effort: effort(whole), sets: [],
    };
    sessions.set(id, known);
    if (!measure) continue;
    const numbers = { set: count(set), amount: count(amount), sides: count(sides), effort: effort(own) };
    known.sets.push({ block, exercise, name, measure, load, ...numbers });
  }
  return { sessions: [...sessions.values()], skipped, of };
}
