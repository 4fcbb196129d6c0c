// What a day holds: the session, the event, or a rest with its reason, and what comes next. Pure: no page, no clock.

/** @typedef {{kit: string, name: string, exercise: string, hand: boolean, way: "help" | "added" | null, of?: string, table?: number, weight?: string, for?: string[], not?: string[]}} Weighed kit: its id, name: what members call it; table: its place among the plan's; for, not: the choices of those who take it, and of those who take another one */
/** @typedef {{date: string, name: string, time: string, url: string, kit: string, why: string[], from: string | null, loads: Weighed[]}} Session */
/** @typedef {{date: string, name: string, why: string}} Skipped */
/** @typedef {{number: number, starts: string, ends: string, url: string, kind: string, phase: string, tag: string, days: Session[], skipped: Skipped[]}} Week */
/** @typedef {{weekday: number, what: string, hard: boolean}} Other training beside the plan, by weekday from Monday, 0 */
/** @typedef {{name: string, date: string}} Event */
/** @typedef {{id: string, plan: string, about: string, url: string, event: Event | null, other: Other[], tables: string[], weeks: Week[]}} Plan */
/** @typedef {import("./log.js").Logged} Logged */
/**
 * @typedef {object} Agenda how a day stands in a plan
 * @property {"before" | "session" | "event" | "rest" | "after"} state
 * @property {Week | undefined} week
 * @property {Session[]} sessions of the day
 * @property {Skipped | undefined} skipped the session that the coach left out today
 * @property {Session | undefined} moved the session that would be today's, and is on another day
 * @property {Other[]} other the training beside the plan today
 * @property {Session | undefined} next the next session after the day
 * @property {Event | undefined} event the event that is still to come, or is today
 */

/**
 * Days compare as text, since they are written year first.
 * @param {Plan} plan
 * @param {string} today
 * @returns {Agenda}
 */
export function agendaOf(plan, today) {
  const { weeks, event } = plan;
  const all = weeks.flatMap(({ days }) => days);
  const next = all.find(({ date }) => date > today);
  const week = weeks.find(({ starts, ends }) => starts <= today && today <= ends);
  const sessions = all.filter(({ date }) => date === today);
  const weekday = (new Date(`${today}T12:00:00Z`).getUTCDay() + 6) % 7;
  const found = {
    week,
    sessions,
    skipped: week?.skipped.find(({ date }) => date === today),
    moved: sessions.length ? undefined : week?.days.find(({ from }) => from === today),
    other: week ? plan.other.filter((one) => one.weekday === weekday) : [],
    next,
    event: event && event.date >= today ? event : undefined,
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
  if (event?.date === today) return "event";
  if (sessions.length) return "session";
  if (today < (weeks[0]?.starts ?? today)) return "before";
  return week || next || event ? "rest" : "after";
}

/**
 * The last day of a plan: of its weeks, or of the event that it leads up to.
 * @param {Plan} plan
 */
export function lastDay({ weeks, event }) {
  const ends = weeks[weeks.length - 1]?.ends ?? "";
  return event && event.date > ends ? event.date : ends;
}

/**
 * Which of the sessions of a week are in the log: by plan, session and week, each entry once, whatever the day it was done.
 * @param {Plan} plan
 * @param {Week} week
 * @param {Logged[]} logged
 * @returns {Set<Session>}
 */
export function doneOf(plan, week, logged) {
  const mine = logged.filter((one) => one.plan === plan.plan && one.week === week.number && one.sets.length);
  const done = new Set();
  for (const session of week.days) {
    const at = mine.findIndex((one) => one.session === session.name);
    if (at >= 0) {
      mine.splice(at, 1);
      done.add(session);
    }
  }
  return done;
}

/**
 * Which plan a member is shown: the one picked, or the only one that has not ended; nothing where the member has to say.
 * @param {Plan[]} plans
 * @param {string} picked
 * @param {string} today
 * @returns {Plan | undefined}
 */
export function planOf(plans, picked, today) {
  const going = plans.filter((plan) => lastDay(plan) >= today);
  const mine = plans.find(({ id }) => id === picked);
  if (mine && (going.includes(mine) || !going.length)) return mine;
  if (going.length > 1) return undefined;
  return going[0] ?? mine ?? [...plans].sort((one, other) => (lastDay(one) < lastDay(other) ? 1 : -1))[0];
}
