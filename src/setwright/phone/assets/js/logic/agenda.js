// What a day holds: the session, the event, or a rest with its reason, and what comes next. Pure: no page, no clock.

import { later, weekday } from "./day.js";
import { dayIn, eventOf, groupOf, weeksFor } from "./week.js";

/** @typedef {import("./week.js").Plan} Published */
/** @typedef {import("./week.js").Own} Own */
/** @typedef {import("./week.js").Weighed} Weighed */
/** @typedef {import("./week.js").Other} Other */
/** @typedef {import("./week.js").Day & {movedFrom: string | null}} Session movedFrom: the date, where it was on another one */
/** @typedef {import("./week.js").PlannedSkip & {date: string | null}} Skipped */
/** @typedef {Omit<import("./week.js").Week, "days" | "skipped"> & {days: Session[], skipped: Skipped[]}} Week */
/** @typedef {{name: string, date: string}} Event */
/** @typedef {{of: Published, group: string, ident: string, plan: string, about: string, url: string, event: Event | null, other: Other[], tables: string[], weeks: Week[]}} Plan as it falls for a member; no weeks where nobody has said yet when they begin */
/**
 * @typedef {object} Agenda how a day stands in a plan
 * @property {"open" | "before" | "session" | "event" | "rest" | "after"} state open: nobody has said yet when the plan begins
 * @property {Week | undefined} week
 * @property {Session[]} sessions of the day; without any, those of the week that are on any day
 * @property {Skipped | undefined} skipped the session that the coach left out today
 * @property {Session | undefined} moved the session that would be today's, and is on another day
 * @property {Other[]} other the training beside the plan today
 * @property {Session | undefined} next the next session after the day
 * @property {Event | undefined} event the event that is still to come, or is today
 * @property {{why: string, until: string} | undefined} closed the break that today is in, and when the plan goes on
 */

/**
 * A plan as it falls for a member, with every date.
 * @param {Published} plan
 * @param {Own} own
 * @returns {Plan}
 */
export function asLived(plan, own) {
  const weeks = weeksFor(plan, own);
  const group = groupOf(plan, own);
  const on = group?.event ?? (weeks.length ? eventOf(plan, weeks) : undefined);
  return {
    of: plan,
    group: plan.groups.length > 1 ? (group?.name ?? "") : "",
    ident: plan.ident,
    plan: plan.plan,
    about: plan.about,
    url: plan.url,
    event: plan.event && on ? { name: plan.event.name, date: on } : null,
    other: plan.other,
    tables: plan.tables,
    weeks: weeks.map((week) => ({
      ...week,
      days: week.days.map((one) => ({ ...one, movedFrom: dayIn(week.starts, one.from) })),
      skipped: week.skipped.map((one) => ({ ...one, date: dayIn(week.starts, one.day) })),
    })),
  };
}

/**
 * Days compare as text, since they are written year first.
 * @param {Plan} plan
 * @param {string} today
 * @returns {Agenda}
 */
export function agendaOf(plan, today) {
  const { weeks, event } = plan;
  const all = weeks.flatMap(({ days }) => days);
  const next = all.find(({ date }) => date !== null && date > today);
  const week = weeks.find(({ starts, ends }) => starts <= today && today <= ends);
  const dated = all.filter(({ date }) => date === today);
  const sessions = dated.length ? dated : (week?.days ?? []).filter(({ date }) => date === null);
  const until = week ? undefined : weeks.find(({ starts }) => starts > today)?.starts;
  const shut = plan.of.breaks.find(({ from, to }) => from <= later(today, 6) && today <= to);
  const found = {
    week,
    sessions,
    skipped: week?.skipped.find(({ date }) => date === today),
    moved: sessions.length ? undefined : week?.days.find(({ movedFrom }) => movedFrom === today),
    other: week ? plan.other.filter((one) => one.weekday === weekday(today)) : [],
    next,
    event: event && event.date >= today ? event : undefined,
    closed: shut && until && until !== weeks[0].starts ? { why: shut.why, until } : undefined,
  };
  return { ...found, state: stateOf(found, weeks, today) };
}

/**
 * @param {Omit<Agenda, "state">} found
 * @param {Week[]} weeks
 * @param {string} today
 * @returns {Agenda["state"]}
 */
function stateOf({ event, sessions, week, next }, weeks, today) {
  if (!weeks.length) return "open";
  if (event?.date === today) return "event";
  if (sessions.length) return "session";
  if (today < weeks[0].starts) return "before";
  return week || next || event ? "rest" : "after";
}

/** Later than any day: a plan that nobody has begun has not ended. */
const NEVER = "9999-12-31";

/**
 * The last day of a plan: of its weeks, or of the event that it leads up to.
 * @param {Plan} plan
 */
export function lastDay({ weeks, event }) {
  const ends = weeks[weeks.length - 1]?.ends ?? NEVER;
  return event && event.date > ends ? event.date : ends;
}

/**
 * Which of the sessions of a week the log holds.
 * @param {Week} week
 * @param {Set<string>} held as `doneOf` has them
 * @returns {Set<Session>}
 */
export function doneIn(week, held) {
  return new Set(week.days.filter(({ place }) => held.has(`${week.number} ${place}`)));
}

/**
 * Which plan a member is shown: the one picked, or the only one that has not ended; nothing where the member has to say.
 * One without a first day counts only where none has days: it waits among the plans until it is picked.
 * @param {Plan[]} plans
 * @param {string} picked
 * @param {string} today
 * @returns {Plan | undefined}
 */
export function planOf(plans, picked, today) {
  const open = plans.filter((plan) => lastDay(plan) >= today);
  const mine = plans.find(({ ident }) => ident === picked);
  if (mine && (open.includes(mine) || !open.length)) return mine;
  const dated = open.filter(({ weeks }) => weeks.length);
  const going = dated.length ? dated : open;
  if (going.length > 1) return undefined;
  return going[0] ?? mine ?? [...plans].sort((one, other) => (lastDay(one) < lastDay(other) ? 1 : -1))[0];
}
