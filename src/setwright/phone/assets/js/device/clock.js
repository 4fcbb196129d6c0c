// The time that pages go by. A demonstration may take another day for today; a club's own site never does.

const DAY = /^\d{4}-\d\d-\d\d$/;

const ASKED = "setwright:on";

/** @type {number | undefined} */
let moved;

/**
 * Take a day for today, with the hour as it is: the one that the address asks for, as ?on=2027-08-20, or the site's own.
 * What was asked for holds on every page of this visit.
 * @param {string | undefined} own the day of a demonstration; nothing on a club's own site
 */
export function demonstrate(own) {
  if (own === undefined || moved !== undefined) return;
  const asked = askedFor() ?? own;
  const real = new Date();
  const [year, month, day] = DAY.test(asked) ? asked.split("-").map(Number) : [];
  const then = new Date(real);
  then.setFullYear(year, month - 1, day);
  moved = Number.isNaN(then.getTime()) ? 0 : then.getTime() - real.getTime();
}

/** The day that this visit asked for; nothing is kept where a browser keeps nothing. */
function askedFor() {
  const asked = new URLSearchParams(location.search).get("on");
  try {
    if (asked !== null) sessionStorage.setItem(ASKED, asked);
    return asked ?? sessionStorage.getItem(ASKED);
  } catch {
    return asked;
  }
}

/** Whether another day than the real one is shown. */
export function isDemonstrated() {
  return moved !== undefined && moved !== 0;
}

export function now() {
  return new Date(Date.now() + (moved ?? 0));
}

/** How long until the day changes, ms; a little more, so that it has. */
export function untilMidnight() {
  const at = now();
  const next = new Date(at);
  next.setHours(24, 0, 1, 0);
  return next.getTime() - at.getTime();
}
