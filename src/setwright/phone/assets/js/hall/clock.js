// The one clock of a hall: where it stands by the time of day, so that a reload or a sleeping screen loses nothing. Pure.

/**
 * @typedef {object} Stand
 * @property {number} at which moment
 * @property {number | null} ends when it ends, in ms; null where the coach goes on by hand
 * @property {number | null} left ms that are left while it is paused; null while it runs
 */
/** @typedef {import("./course.js").Moment} Moment */

/**
 * @param {Moment[]} course
 * @param {number} at
 * @param {number} now
 * @returns {Stand}
 */
export function goTo(course, at, now) {
  const place = Math.min(course.length - 1, Math.max(0, at));
  const { seconds } = course[place];
  return { at: place, ends: seconds ? now + seconds * 1000 : null, left: null };
}

/**
 * Where it stands by now: moments whose time is over are gone through, one after the other.
 * @param {Moment[]} course
 * @param {Stand} stand
 * @param {number} now
 * @returns {Stand}
 */
export function caughtUp(course, stand, now) {
  let here = stand;
  while (here.left === null && here.ends !== null && here.ends <= now && here.at < course.length - 1) {
    here = goTo(course, here.at + 1, here.ends);
  }
  return here;
}

/**
 * Pauses it, or goes on.
 * @param {Stand} stand
 * @param {number} now
 * @returns {Stand}
 */
export function turned(stand, now) {
  if (stand.left !== null) return { ...stand, ends: now + stand.left, left: null };
  return stand.ends === null ? stand : { ...stand, left: Math.max(0, stand.ends - now) };
}

/**
 * @param {Stand} stand
 * @param {number} seconds more
 * @returns {Stand}
 */
export function longer(stand, seconds) {
  if (stand.left !== null) return { ...stand, left: stand.left + seconds * 1000 };
  return stand.ends === null ? stand : { ...stand, ends: stand.ends + seconds * 1000 };
}

/**
 * @param {Stand} stand
 * @param {number} now
 * @returns {number | null} whole seconds that are left; null where there is no clock
 */
export function secondsLeft(stand, now) {
  if (stand.left !== null) return Math.ceil(stand.left / 1000);
  return stand.ends === null ? null : Math.max(0, Math.ceil((stand.ends - now) / 1000));
}
