// Days of the calendar, written year first: 2027-07-05. Pure: no page, no clock.

/** The most weeks that a member's own ones wait at once: two years. */
export const LONGEST_WAIT = 104;

/**
 * A day as the calendar of this device has it, in the form of the data: 2027-07-05.
 * @param {Date} now
 */
export function localDay(now) {
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * Whether a text is a day that a calendar has.
 * @param {string} text
 */
export function isDay(text) {
  return /^(19|20|21)\d\d-\d\d-\d\d$/.test(text) && later(text, 0) === text;
}

/**
 * The day so many days later. Counted at noon in one time zone, so that no change of clocks makes a day longer.
 * @param {string} day
 * @param {number} days
 */
export function later(day, days) {
  const at = new Date(`${day}T12:00:00Z`);
  if (Number.isNaN(at.getTime())) return "";
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}

/**
 * The days from one day to another.
 * @param {string} from
 * @param {string} to
 */
export function daysBetween(from, to) {
  return Math.round((Date.parse(`${to}T12:00:00Z`) - Date.parse(`${from}T12:00:00Z`)) / 86_400_000);
}

/**
 * @param {string} day
 * @returns {number} 0 for Monday
 */
export function weekday(day) {
  return (new Date(`${day}T12:00:00Z`).getUTCDay() + 6) % 7;
}
