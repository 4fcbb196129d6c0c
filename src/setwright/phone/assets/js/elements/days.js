// Days of a member's own weeks in words, as elements, and what is said after a gap.
import { make } from "./make.js";
import { LANGUAGE, say } from "../words.js";

/**
 * @param {string} day 2027-08-20
 * @returns {string} Friday 20 August
 */
export function daySaid(day) {
  const at = new Date(`${day}T12:00:00Z`);
  return at.toLocaleDateString(LANGUAGE, { weekday: "long", day: "numeric", month: "long", timeZone: "UTC" }).replace(",", "");
}

/** @param {string} day */
export function dayElement(day) {
  const time = make("time", "", daySaid(day));
  time.dateTime = day;
  return time;
}

/**
 * @param {import("../logic/week.js").PlannedDay} day
 * @returns {string} Session 2, or the name of the weekday
 */
export function placeSaid(day) {
  return day.day === null ? say("Session %(number)s", { number: day.number }) : weekdaySaid(day.day);
}

/** @param {number} day 0 for Monday */
function weekdaySaid(day) {
  // 5 January 1970 was a Monday.
  return new Date(Date.UTC(1970, 0, 5 + day, 12)).toLocaleDateString(LANGUAGE, { weekday: "long", timeZone: "UTC" });
}

/**
 * A session that the member leaves out, in words; nothing where the plan has it no more.
 * @param {import("../logic/week.js").Plan} plan
 * @param {string | undefined} left such as "3 session-2"
 */
export function leftIn(plan, left) {
  for (const { number, days } of plan.weeks) {
    const day = days.find(({ place: at }) => left === `${number} ${at}`);
    if (day) return say("You leave out %(session)s of week %(week)s.", { session: day.name, week: number });
  }
  return "";
}

export function startEasier() {
  return say("After a gap as long as this, start easier than you stopped: fewer sets, lighter weights, and stop while it still feels easy.");
}

export function illOrInjured() {
  return say("Were you ill or injured? Ask a doctor or a physiotherapist before you go on. No page can tell whether you may.");
}
