// Which days a member's weeks fall on, how today stands to them, and what a missed week does. Pure: no page, no clock.
import { daysBetween, later, LONGEST_WAIT, weekday } from "./day.js";

/** @typedef {{kit: string, name: string, exercise: string, hand: boolean, way: "help" | "added" | null, of?: string, table?: number, weight?: string, for?: string[], not?: string[]}} Weighed kit: its id, name: what members call it; table: its place among the plan's; for, not: the choices of those who take it, and of those who take another one */
/** @typedef {{place: string, planned: string, day: number | null, number: number, at: string | null, name: string, time: string, longest_s: number, url: string, kit: string, why: string[], from: number | null, loads: Weighed[]}} PlannedDay day, from: the weekday and the one it was moved from, 0 for Monday; null for any day */
/** @typedef {{day: number | null, name: string, why: string}} PlannedSkip */
/** @typedef {{number: number, url: string, kind: string, phase: string, tag: string, days: PlannedDay[], skipped: PlannedSkip[]}} PlannedWeek */
/** @typedef {{weekday: number, what: string, hard: boolean}} Other training beside the plan, by weekday from Monday, 0 */
/** @typedef {{name: string, slug: string, starts: string, event: string | null}} Group */
/**
 * @typedef {object} Plan a plan as the site has it
 * @property {string} plan its name
 * @property {string} ident
 * @property {string} about whom it is for
 * @property {Other[]} other
 * @property {string[]} tables of weights
 * @property {string} url
 * @property {number} long_gap after how many weeks without training the way back is proposed
 * @property {string | null} follows the plan that it goes on from
 * @property {Group[]} groups those who begin together; none where each member begins when they like
 * @property {number | null} first the weekday on which weeks start; null for any
 * @property {{from: string, to: string, why: string}[]} breaks
 * @property {{name: string, week: number | null, day: number | null} | null} event
 * @property {PlannedWeek[]} weeks
 */
/** @typedef {{group: string, begins: string | null, moved: {week: number, weeks: number}[], left: string[]}} Own what a member chose: the group, the first day, from which weeks on the plan waits, and the sessions that they leave out, such as "3 friday" */
/** @typedef {PlannedDay & {date: string | null}} Day */
/** @typedef {Omit<PlannedWeek, "days"> & {starts: string, ends: string, days: Day[]}} Week */
/** @typedef {{plan: string, session: string, week: number, id: string, sets: unknown[]}} Done what the log says of a session */

/** @returns {Own} */
export function nothingChosen() {
  return { group: "", begins: null, moved: [], left: [] };
}

/**
 * The group that a member is in: the chosen one, or the only one.
 * @param {Plan} plan
 * @param {Own} own
 * @returns {Group | undefined}
 */
export function groupOf(plan, own) {
  return plan.groups.find(({ slug }) => slug === own.group) ?? (plan.groups.length === 1 ? plan.groups[0] : undefined);
}

/**
 * The first day of the first week for a member who begins on a day: that day where sessions are on any day, else the
 * start of the first week that holds all of its sessions from that day on.
 * @param {Plan} plan
 * @param {string} begins
 */
export function firstDay(plan, begins) {
  if (plan.first === null) return begins;
  const start = later(begins, -((weekday(begins) - plan.first + 7) % 7));
  const days = plan.weeks[0].days.flatMap(({ day }) => (day === null ? [] : [(day - Number(plan.first) + 7) % 7]));
  return days.length && later(start, Math.min(...days)) < begins ? later(start, 7) : start;
}

/**
 * The weeks of a plan with their days, as they fall for a member; none where nobody has said yet when they begin.
 * Weeks follow each other. One that a break touches begins behind it, and one that the member moved begins later.
 * @param {Plan} plan
 * @param {Own} own
 * @returns {Week[]}
 */
export function weeksFor(plan, own) {
  const starts = plan.groups.length ? groupOf(plan, own)?.starts : own.begins && firstDay(plan, own.begins);
  if (!starts) return [];
  let day = starts;
  return plan.weeks.map((week) => {
    for (const move of own.moved) if (move.week === week.number) day = later(day, 7 * move.weeks);
    for (const { from, to } of plan.breaks) {
      if (day <= to && later(day, 6) >= from) day = later(day, 7 * Math.ceil((daysBetween(day, to) + 1) / 7));
    }
    const begun = day;
    day = later(day, 7);
    return { ...week, starts: begun, ends: later(begun, 6), days: week.days.map((one) => ({ ...one, date: dayIn(begun, one.day) })) };
  });
}

/**
 * The date of a weekday in a week.
 * @param {string} starts the first day of the week
 * @param {number | null} at 0 for Monday; null for any day, which has no date
 */
export function dayIn(starts, at) {
  return at === null ? null : later(starts, (at - weekday(starts) + 7) % 7);
}

/**
 * The week that holds a day, and how the plan stands to it. Days compare as text, since they are written year first.
 * @param {Week[]} weeks
 * @param {string} today
 * @returns {{state: "before" | "during" | "between" | "after", week: Week, today: Day[]}} between: in a break, before that week
 */
export function standing(weeks, today) {
  const last = weeks[weeks.length - 1];
  if (today < weeks[0].starts) return { state: "before", week: weeks[0], today: [] };
  if (today > last.ends) return { state: "after", week: last, today: [] };
  const week = weeks.find((one) => today <= one.ends) ?? last;
  if (today < week.starts) return { state: "between", week, today: [] };
  return { state: "during", week, today: week.days.filter((day) => day.date === today) };
}

/**
 * Which sessions of a plan the log holds, by week and place. The same session twice in a week counts in order;
 * one that was left without a set does not.
 * @param {Plan} plan
 * @param {Done[]} log
 * @returns {Set<string>} such as "3 friday"
 */
export function doneOf(plan, log) {
  const done = new Set();
  for (const { number, days } of plan.weeks) {
    const logged = log.filter((one) => one.plan === plan.plan && one.week === number && one.sets.length).map((one) => one.session);
    for (const day of days) {
      const at = logged.indexOf(day.name);
      if (at < 0) continue;
      logged.splice(at, 1);
      done.add(`${number} ${day.place}`);
    }
  }
  return done;
}

/**
 * What lies behind a member: what was done, and what they leave out.
 * @param {Set<string>} done
 * @param {Own} own
 */
export function behind(done, own) {
  return new Set([...done, ...own.left]);
}

/**
 * The first session that is neither done nor left out.
 * @param {Plan} plan
 * @param {Set<string>} done with those left out
 * @returns {{week: PlannedWeek, day: PlannedDay} | undefined}
 */
export function nextOf(plan, done) {
  for (const week of plan.weeks) {
    const day = week.days.find(({ place }) => !done.has(`${week.number} ${place}`));
    if (day) return { week, day };
  }
  return undefined;
}

/**
 * Whether the log holds the last session of a plan.
 * @param {Plan} plan
 * @param {Set<string>} done
 */
export function isFinished(plan, done) {
  const last = plan.weeks.filter(({ days }) => days.length).pop();
  return last !== undefined && done.has(`${last.number} ${last.days[last.days.length - 1].place}`);
}

/**
 * The weeks right before this one of which the log holds nothing, where it holds something before them.
 * @param {Week[]} weeks
 * @param {Set<string>} done
 * @param {string} today
 * @returns {{week: number, weeks: number} | undefined} the first of them, and by how many weeks they lie back
 */
export function missedBy(weeks, done, today) {
  const trained = weeks.filter(({ number, days }) => days.some(({ place }) => done.has(`${number} ${place}`)));
  const last = trained[trained.length - 1];
  const { state, week } = standing(weeks, today);
  if (!last || state === "before" || state === "between") return undefined;
  const first = weeks.find(({ number, days }) => number > last.number && days.length);
  // Behind the plan's end weeks go on being counted: what is carried on with has to begin in the week of today.
  const until = state === "after" ? later(week.starts, 7 * Math.floor(daysBetween(week.starts, today) / 7)) : week.starts;
  if (!first || first.starts >= until) return undefined;
  return { week: first.number, weeks: Math.min(Math.ceil(daysBetween(first.starts, until) / 7), LONGEST_WAIT) };
}

/**
 * What moving a plan's weeks does to its end, its event and its taper.
 * @param {Plan} plan
 * @param {Own} own
 * @param {{week: number, weeks: number}} move
 * @returns {{moved: Own, ends: string, event: string | null, late: number, taper: string | null, tapersLate: number}}
 *   late: weeks that begin after the event; taper: when it begins now; tapersLate: how many of its weeks are late
 */
export function effectOf(plan, own, move) {
  const moved = { ...own, moved: [...own.moved, move] };
  const weeks = weeksFor(plan, moved);
  const event = groupOf(plan, own)?.event ?? null;
  const late = event === null ? [] : weeks.filter(({ starts }) => starts > event);
  const taper = weeks.find(({ kind }) => kind === "taper");
  return {
    moved,
    ends: weeks[weeks.length - 1].ends,
    event,
    late: late.length,
    taper: taper ? taper.starts : null,
    tapersLate: late.filter(({ kind }) => kind === "taper").length,
  };
}

/**
 * The day of an event that is a distance from the start of a member's own weeks.
 * @param {Plan} plan
 * @param {Week[]} weeks
 * @returns {string | undefined}
 */
export function eventOf(plan, weeks) {
  const { week, day } = plan.event ?? { week: null, day: null };
  if (week === null || day === null) return undefined;
  const last = weeks[Math.min(week, weeks.length) - 1].starts;
  return later(last, ((day - weekday(last) + 7) % 7) + 7 * Math.max(0, week - weeks.length));
}

/**
 * The last lighter week before one, or that one itself: what a member comes back with after a long gap.
 * @param {Plan} plan
 * @param {number} week
 * @returns {PlannedWeek | undefined}
 */
export function wayBack(plan, week) {
  return plan.weeks.filter(({ number, kind, days }) => number <= week && kind === "lighter" && days.length).pop();
}
