// Which week a day falls into, and what to do. Pure: no page, no clock.

/** @typedef {{date: string, said: string, name: string, time: string, url: string}} Day */
/** @typedef {{number: number, starts: string, said: string, ends: string, url: string, kind: string, days: Day[]}} Week */

/**
 * A day as the calendar of this device has it, in the form of the data: 2027-07-05.
 * @param {Date} now
 */
export function localDay(now) {
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * The week that holds a day, and how the plan stands to it. Days compare as text, since they are written year first.
 * @param {Week[]} weeks
 * @param {string} today
 * @returns {{state: "before" | "during" | "after", week: Week, today: Day | undefined, next: Day | undefined}}
 */
export function standing(weeks, today) {
  const first = weeks[0];
  const last = weeks[weeks.length - 1];
  const next = weeks.flatMap((week) => week.days).find((day) => day.date > today);
  if (today < first.starts) return { state: "before", week: first, today: undefined, next };
  if (today > last.ends) return { state: "after", week: last, today: undefined, next: undefined };
  const week = weeks.find((one) => today <= one.ends) ?? last;
  return { state: "during", week, today: week.days.find((day) => day.date === today), next };
}
