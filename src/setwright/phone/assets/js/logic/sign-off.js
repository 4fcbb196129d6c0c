// The line that a reviewer gives to the coach, and which exercises a reviewer wants to see. Pure: no page, no clock.
import { LANGUAGE, say } from "../words.js";

/** @typedef {{exercise: string, name: string, status: string, pattern: string, date: string}} Entry */
/** @typedef {{who: string, role: string, day: string}} Reviewer */

export const PARTS = ["text", "cues", "cautions", "limits", "figure"];

/**
 * One line of sign-offs.yml, the same as the command writes. Texts stand in double quotes as in JSON, which YAML reads
 * the same way.
 * @param {string} exercise
 * @param {Reviewer} reviewer
 * @param {string} note
 * @param {Record<string, string>} digests of each part and of the words elsewhere, and the doses in use as they are signed
 */
export function signOffLine(exercise, reviewer, note, digests) {
  const said = note.trim() ? [`note: ${quoted(note)}`] : [];
  const parts = [
    `exercise: ${exercise}`,
    `who: ${quoted(reviewer.who)}`,
    `role: ${quoted(reviewer.role)}`,
    `date: ${reviewer.day}`,
    ...said,
    ...PARTS.map((part) => `${part}: ${digests[part]}`),
    `words: ${digests.words}`,
    `doses: ${digests.dosage}`,
  ];
  return `- {${parts.join(", ")}}`;
}

/** @param {string} text */
function quoted(text) {
  return JSON.stringify(text.trim().split(/\s+/).join(" "));
}

/**
 * What is still missing from a reviewer, in words; nothing where all is there.
 * @param {Reviewer} reviewer
 */
export function missing(reviewer) {
  const lacking = [];
  if (!reviewer.who.trim()) lacking.push(say("your name"));
  if (!reviewer.role.trim()) lacking.push(say("your role"));
  if (!/^\d{4}-\d{2}-\d{2}$/.test(reviewer.day)) lacking.push(say("the day"));
  return lacking.length ? say("Still missing: %(parts)s.", { parts: lacking.join(", ") }) : "";
}

/**
 * @param {Entry} entry
 * @param {string} status a status, or nothing for all
 * @param {string} text part of a name or of an id, in any case
 */
export function wanted(entry, status, text) {
  const sought = text.trim().toLowerCase();
  return (!status || entry.status === status) && `${entry.name} ${entry.exercise}`.toLowerCase().includes(sought);
}

const DUE = ["changed-back", "changed", "unreviewed", "reviewed"];

/**
 * Entries in another order; equal ones by name.
 * @template {Entry} T
 * @param {readonly T[]} entries
 * @param {string} by name, date, pattern, or nothing for what is due first
 * @returns {T[]}
 */
export function sorted(entries, by) {
  /** @param {Entry} entry */
  const rank = (entry) => {
    if (by === "date") return entry.date || "9999";
    if (by === "pattern") return entry.pattern;
    return by === "name" ? "" : String(DUE.indexOf(entry.status));
  };
  return [...entries].sort((a, b) => compared(rank(a), rank(b)) || compared(a.name, b.name));
}

/**
 * @param {string} a
 * @param {string} b
 */
function compared(a, b) {
  return a.localeCompare(b, LANGUAGE);
}
