// A day as the data has it. Pure: no page, no clock.

/**
 * A day as the calendar of this device has it, in the form of the data: 2027-07-05.
 * @param {Date} now
 */
export function localDay(now) {
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
