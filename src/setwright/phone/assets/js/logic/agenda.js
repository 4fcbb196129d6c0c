// What a day holds: the session, the event, or a rest with its reason, and what comes next. Pure: no page, no clock.

import { later, weekday } from "./day.js";
import { dayIn, eventOf, groupOf, isFinished, weeksFor } from "./week.js";

/** @typedef {import("./week.js").Plan} Published */
/** @typedef {import("./week.js").Own} Own */
/** @typedef {import("./week.js").Weighed} Weighed */
/** @typedef {import("./week.js").Other} Other */
/** @typedef {import("./week.js").Day & {movedFrom: string | null}} Session movedFrom: the date, where it was on another one */
/** @typedef {import("./week.js").PlannedSkip & {date: string | null}} Skipped */
/** @typedef {Omit<import("./week.js").Week, "days" | "skipped"> & {days: Session[], skipped: Skipped[]}} Week */
/** @typedef {{name: string, date: string}} Event */
/** @typedef {{of: Published, group: string, ident: string, plan: string, about: string, url: string, event: Event | null, other: Other[], tables: string[], weeks: Week[], from: string, until: string, begun: boolean, finished: boolean}} Plan as it falls for a member; no weeks where nobody has said yet when they begin; from, until: its first and last day, of all groups where none is chosen; begun: the member chose the first day; finished: its last session is done */
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

/** Later than any day: a plan that nobody has begun neither begins nor ends. */
const NEVER = "9999-12-31";

/**
 * A plan as it falls for a member, with every date. One whose start is the member's own is finished with its last session;
 * one that has days runs until they are past.
 * @param {Published} plan
 * @param {Own} own
 * @param {Set<string>} held what lies behind the member of it, as `behind` has it
 * @returns {Plan}
 */
export function asLived(plan, own, held) {
  const weeks = weeksFor(plan, own);
  const group = groupOf(plan, own);
  const isOwn = !plan.groups.length;
  const ways = weeks.length || isOwn ? [weeks] : plan.groups.map(({ slug }) => weeksFor(plan, { ...own, group: slug }));
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
    from: ways.map(([first]) => first?.starts ?? NEVER).sort()[0],
    until: [...ways.map(lastDay), on ?? ""].sort().reverse()[0],
    begun: isOwn && weeks.length > 0,
    finished: isOwn && isFinished(plan, held),
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
  return { ...found, state: stateOf(found, plan, today) };
}

/**
 * @param {Omit<Agenda, "state">} found
 * @param {Plan} plan
 * @param {string} today
 * @returns {Agenda["state"]}
 */
function stateOf({ event, sessions, week, next }, { weeks, until, finished }, today) {
  if (event?.date === today) return "event";
  if (until < today || (finished && !event)) return "after";
  if (!weeks.length) return "open";
  if (sessions.length) return "session";
  if (today < weeks[0].starts) return "before";
  return week || next || event ? "rest" : "after";
}

/** @param {{ends: string}[]} weeks */
function lastDay(weeks) {
  return weeks[weeks.length - 1]?.ends ?? NEVER;
}

/**
 * Which of the sessions of a week the log holds, or lie behind the member.
 * @param {Week} week
 * @param {Set<string>} held as `doneOf` or `behind` has them
 * @returns {Set<Session>}
 */
export function doneIn(week, held) {
  return new Set(week.days.filter(({ place }) => held.has(`${week.number} ${place}`)));
}

/**
 * Whether nothing of a plan is still to come.
 * @param {Plan} plan
 * @param {string} today
 */
export function isOver(plan, today) {
  return plan.until < today || (plan.finished && !(plan.event && plan.event.date >= today));
}

/**
 * Which plan a member is shown while it lasts: the one picked, the one that they gave a first day, or the one they logged
 * last; else the only one that runs, else the only one there is. A plan of theirs that is over stays, if none runs:
 * it says what comes next. Nothing where the member has to say.
 * @param {Plan[]} plans
 * @param {{picked: string, logged: string | undefined}} mine the plan picked, by its ident; the one of the newest entry of the log, by its name
 * @param {string} today
 * @returns {Plan | undefined}
 */
export function planOf(plans, mine, today) {
  const open = plans.filter((plan) => !isOver(plan, today));
  const picked = plans.find(({ ident }) => ident === mine.picked);
  const latest = plans.find(({ plan }) => plan === mine.logged);
  const begun = open.filter((plan) => plan.begun && plan.from <= today);
  const said = [picked, begun.length === 1 ? begun[0] : undefined, latest];
  const lasting = said.find((plan) => plan && open.includes(plan));
  if (lasting) return lasting;
  const over = picked ?? latest;
  // After a plan of theirs, one whose group they have not chosen is offered, and not taken for theirs.
  const running = open.filter(({ from, weeks }) => from <= today && (!over || weeks.length > 0));
  if (running.length === 1) return running[0];
  if (over && !running.length) return over;
  const going = running.length ? running : open;
  if (going.length > 1) return undefined;
  return going[0] ?? [...plans].sort((one, other) => (one.until < other.until ? 1 : -1))[0];
}

/**
 * What a plan that is over leads to: the plans that follow it, else all that are not over.
 * @param {Plan} plan
 * @param {Plan[]} plans
 * @param {string} today
 * @returns {{follows: boolean, plans: Plan[]}}
 */
export function nextPlans(plan, plans, today) {
  const open = plans.filter((one) => one.ident !== plan.ident && !isOver(one, today));
  const following = open.filter((one) => one.of.follows === plan.ident);
  return following.length ? { follows: true, plans: following } : { follows: false, plans: open };
}
