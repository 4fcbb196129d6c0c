// A member's own weeks as an iCalendar file (RFC 5545), made on the device. Pure: no page, no clock.
import { later } from "./day.js";
import { say } from "../words.js";

/** @typedef {import("./week.js").Week} Week */
/** @typedef {import("./week.js").Day} Day */

/** A line has at most 75 octets without its end (RFC 5545, 3.1). */
const LONGEST_LINE = 75;

/**
 * The file: one entry a session, or one a week where its days are open. Times of day are those of the device, without a
 * zone: a member trains by the clock on the wall.
 * @param {{plan: string, ident: string}} plan
 * @param {Week[]} weeks
 * @param {string} root the site's address
 * @param {string} stamp when the file is made, in UTC: 20270705T101500Z
 */
export function calendarOf(plan, weeks, root, stamp) {
  const entries = weeks.flatMap((week) => {
    const open = week.days.filter(({ date }) => date === null);
    const dated = week.days.flatMap((day) => (day.date === null ? [] : [session(plan, week, day, day.date, root)]));
    return open.length ? [...dated, anyDay(plan, week, open, root)] : dated;
  });
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Setwright//own-weeks//EN",
    "CALSCALE:GREGORIAN",
    ...entries.flatMap((entry) => ["BEGIN:VEVENT", `DTSTAMP:${stamp}`, ...entry, "END:VEVENT"]),
    "END:VCALENDAR",
  ];
  return lines.flatMap(folded).join("\r\n") + "\r\n";
}

/**
 * @param {{plan: string, ident: string}} plan
 * @param {Week} week
 * @param {Day} day
 * @param {string} date
 * @param {string} root
 */
function session(plan, week, day, date, root) {
  return [
    `UID:${uid(plan.ident, week.number, day.planned, root)}`,
    ...(day.at ? timed(date, day.at, day.longest_s) : allDay(date, later(date, 1))),
    `SUMMARY:${escaped(day.name)}`,
    `DESCRIPTION:${escaped(`${placeSaid(plan, week)} ${day.time}. ${new URL(day.url, root).href}`)}`,
    `URL:${new URL(day.url, root).href}`,
  ];
}

/**
 * @param {{plan: string, ident: string}} plan
 * @param {Week} week
 * @param {Day[]} open
 * @param {string} root
 */
function anyDay(plan, week, open, root) {
  const names = open.map(({ number, name }) => `${number}. ${name}`).join("\n");
  return [
    `UID:${uid(plan.ident, week.number, "any-day", root)}`,
    ...allDay(week.starts, later(week.ends, 1)),
    `SUMMARY:${escaped(placeSaid(plan, week))}`,
    `DESCRIPTION:${escaped(`${say("In this order, on days that suit you:")}\n${names}\n${new URL(week.url, root).href}`)}`,
    `URL:${new URL(week.url, root).href}`,
  ];
}

/**
 * @param {{plan: string}} plan
 * @param {Week} week
 */
function placeSaid(plan, week) {
  return say("%(plan)s, week %(week)s.", { plan: plan.plan, week: week.number });
}

/**
 * @param {string} plan
 * @param {number} week
 * @param {string} place
 * @param {string} root
 */
function uid(plan, week, place, root) {
  return `${plan}-week-${String(week).padStart(2, "0")}-${place}-own@${new URL(root).hostname}`;
}

/**
 * @param {string} from
 * @param {string} until the day after the last
 */
function allDay(from, until) {
  const plain = (/** @type {string} */ day) => day.replaceAll("-", "");
  return [`DTSTART;VALUE=DATE:${plain(from)}`, `DTEND;VALUE=DATE:${plain(until)}`, "TRANSP:TRANSPARENT"];
}

/**
 * @param {string} date
 * @param {string} at
 * @param {number} longest_s
 */
function timed(date, at, longest_s) {
  return [`DTSTART:${date.replaceAll("-", "")}T${at.replace(":", "")}00`, `DURATION:PT${Math.ceil(longest_s / 60)}M`];
}

/**
 * A text with the signs escaped that mean something in a file (RFC 5545, 3.3.11).
 * @param {string} text
 */
export function escaped(text) {
  return text.replace(/[\\;,]/g, "\\$&").replace(/\r\n|\r|\n/g, "\\n");
}

/**
 * A line in pieces of at most 75 octets, each but the first after a space; no sign is cut in two.
 * @param {string} line
 */
export function folded(line) {
  const size = (/** @type {string} */ text) => new TextEncoder().encode(text).length;
  const pieces = [""];
  for (const sign of line) {
    const last = pieces.length - 1;
    if (size(pieces[last] + sign) > LONGEST_LINE) pieces.push(` ${sign}`);
    else pieces[last] += sign;
  }
  return pieces;
}
