// What the home page shows of a day: one card with one thing to do, and the week round it.
import { isFor, tableTakes } from "./load.js";
import { daysBetween } from "../logic/day.js";
import { missedBy, nextOf } from "../logic/week.js";
import { LANGUAGE, many, pieces, say } from "../words.js";
import { dayElement, daySaid, illOrInjured, leftIn, placeSaid, startEasier } from "./days.js";
import { button, link, make } from "./make.js";

/** @typedef {import("../logic/agenda.js").Plan} Plan */
/** @typedef {import("../logic/agenda.js").Agenda} Agenda */
/** @typedef {import("../logic/agenda.js").Session} Session */
/** @typedef {import("../logic/agenda.js").Week} Week */
/** @typedef {import("../logic/settings.js").Settings} Settings */
/** @typedef {{plan: Plan, agenda: Agenda, done: Set<Session>, passed: Set<Session>, held: Set<string>, left: string[], leave: (left: string[]) => void, root: string, mine: Settings, settingsPage: string, today: string, follows: boolean, last: string | undefined}} Day passed, held: with what the member leaves out, which is in left; follows: another plan goes on from this one; last: the day of the newest entry of the log in this plan */

/**
 * The one thing of a day.
 * @param {Day} day
 * @returns {HTMLElement}
 */
export function dayCard(day) {
  const box = make("section", `sw-day sw-day-${day.agenda.state}`);
  const { sessions } = day.agenda;
  if (day.agenda.state === "open") box.append(...ofOpen(day));
  else if (day.agenda.state === "session") {
    const left = sessions.find((one) => !day.passed.has(one));
    const open = left ?? sessions[0];
    if (open.date === null && !left) box.append(place(day), make("h2", "", say("This week's sessions are done")));
    else box.append(...ofSession(day, open));
    if (open.date === null && left) box.append(make("p", "", say("This week, in this order, on days that suit you.")), leaving(day, day.agenda.week?.number ?? 0, left));
    else if (open.date !== null) for (const other of sessions.filter((one) => one !== open)) box.append(make("p", "", ...alsoToday(day, other)));
    box.append(...beside(day.agenda));
  } else if (day.agenda.state === "event") box.append(...ofEvent(day));
  else if (day.agenda.state === "rest") box.append(...ofRest(day));
  else if (day.agenda.state === "before") box.append(...ofBefore(day));
  else box.append(...ofAfter(day));
  if (day.plan.group) box.append(make("p", "sw-small", say("Your group: %(group)s.", { group: day.plan.group })));
  box.append(...leftOut(day), ...missed(day));
  box.prepend(...afterLong(day));
  return box;
}

/**
 * A plan that begins when a member says: what comes next by the log, and where the first day or the group is chosen.
 * @param {Day} all
 */
function ofOpen(all) {
  const { plan, held, root } = all;
  const title = make("p", "sw-place", plan.plan);
  const choose = (/** @type {string} */ words) => make("p", "", link(`${root}${plan.url}#my-weeks`, words));
  if (plan.of.groups.length) return [title, choose(say("Choose your group, and your days stand here."))];
  const next = nextOf(plan.of, held);
  if (!next) return [title, make("p", "", say("Your log holds every session of this plan."))];
  const { week, day } = next;
  const start = link(`${root}${day.url}#go`, say("Start"));
  start.className = "sw-button sw-start";
  const look = link(root + day.url, say("Look at it first"));
  look.className = "sw-link";
  return [
    title,
    make("p", "", held.size ? say("Next, by your log, in week %(week)s:", { week: week.number }) : say("Begin when you like:")),
    make("h2", "", day.name),
    make("p", "", `${placeSaid(day)}, ${day.time}`),
    make("p", "sw-go", start, look),
    leaving(all, week.number, day),
    choose(say("Choose your first day, and dates stand here")),
  ];
}

/**
 * The way to leave a session out, where sessions come one after the other.
 * @param {Day} day
 * @param {number} week
 * @param {{place: string}} session
 */
function leaving({ left, leave }, week, { place: at }) {
  return make("p", "", button(say("Leave it out"), "sw-link", () => leave([...left, `${week} ${at}`])));
}

/**
 * The session that was left out last, and the way back.
 * @param {Day} day
 */
function leftOut({ plan, left, leave }) {
  const last = left[left.length - 1];
  const session = leftIn(plan.of, last);
  if (!session) return [];
  const undo = button(say("Undo"), "sw-link", () => leave(left.slice(0, -1)));
  return [make("p", "sw-small", session, " ", undo)];
}

/**
 * What stands before everything else after a gap that is long: to start easier, and whom to ask.
 * @param {Day} day
 */
function afterLong({ plan, held, today, last, agenda }) {
  if (!last || agenda.state === "after" || agenda.state === "before") return [];
  const weeks = plan.weeks.length ? (missedBy(plan.weeks, held, today)?.weeks ?? 0) : daysBetween(last, today) / 7;
  return weeks < plan.of.long_gap ? [] : [make("p", "sw-hint", `${startEasier()} ${illOrInjured()}`)];
}

/**
 * Weeks of which the log holds nothing, and the way to carry on.
 * @param {Day} day
 */
function missed({ plan, held, root, today }) {
  const gap = plan.weeks.length ? missedBy(plan.weeks, held, today) : undefined;
  if (!gap) return [];
  const said = many("Your log holds nothing of the last week.", "Your log holds nothing of the last %(num)s weeks.", gap.weeks);
  return [make("p", "sw-hint", said, " ", link(`${root}${plan.url}#my-weeks`, say("Carry on where you stopped")))];
}

/**
 * @param {Day} day
 * @param {Session} session
 */
function ofSession(day, session) {
  const { done, root } = day;
  const isDone = done.has(session);
  const facts = make(
    "dl",
    "sw-facts",
    fact(say("Time"), session.at ? `${session.at}, ${session.time}` : session.time),
    fact(say("Kit"), session.kit),
    ...weights(day, session),
  );
  const look = link(root + session.url, say("Look at it first"));
  look.className = "sw-link";
  const start = link(`${root}${session.url}#go`, isDone ? say("Do it again") : say("Start"));
  start.className = isDone ? "sw-button sw-quiet sw-start" : "sw-button sw-start";
  const why = session.why.map((words) => make("p", "sw-hint", words));
  return [
    place(day),
    make("h2", "", session.name, ...(isDone ? [" ", make("span", "sw-ticked", `✓ ${say("done")}`)] : [])),
    ...why,
    facts,
    make("p", "sw-go", start, look),
  ];
}

/**
 * @param {Day} day
 * @param {Session} session
 */
function alsoToday(day, session) {
  const name = link(day.root + session.url, session.name);
  return pieces("Also today: %(session)s, %(time)s", { session: name, time: session.time });
}

/** @param {Day} day */
function ofEvent(day) {
  return [
    place(day),
    make("h2", "", day.agenda.event?.name ?? ""),
    make("p", "", say("Today is the day that this plan leads up to. No strength work today.")),
  ];
}

/** @param {Day} day */
function ofRest(day) {
  const { agenda } = day;
  return [place(day), make("h2", "", say("Rest today")), ...reason(agenda), ...beside(agenda), ...coming(day)];
}

/** @param {Day} day */
function ofBefore(day) {
  const [first] = day.plan.weeks;
  return [
    make("p", "sw-place", day.plan.plan),
    make("h2", "", say("Your plan has not begun")),
    make("p", "", ...pieces("It starts on %(day)s.", { day: dayElement(first.starts) })),
    ...coming(day, say("First session")),
  ];
}

/** @param {Day} day */
function ofAfter({ plan, root, follows }) {
  return [
    make("p", "sw-place", plan.plan),
    make("h2", "", say("This plan has ended.")),
    ...(follows ? [] : [make("p", "", say("Ask your coach what comes next."))]),
    make("p", "", link(root + plan.url, say("Look back at the plan"))),
  ];
}

/**
 * Why there is no session today.
 * @param {Agenda} agenda
 */
function reason({ skipped, moved, week, closed }) {
  if (closed) return [make("p", "sw-hint", ...pieces("A break. The next week begins on %(day)s.", { day: dayElement(closed.until) }), ` ${closed.why}`)];
  if (skipped) return [make("p", "sw-hint", make("b", "", say("%(session)s is left out today.", { session: skipped.name })), ` ${skipped.why}`)];
  if (moved?.date) {
    const day = dayElement(moved.date);
    return [make("p", "sw-hint", ...pieces("%(session)s is on %(day)s this week.", { session: moved.name, day }), ` ${moved.why.join(" ")}`)];
  }
  const days = week?.days ?? [];
  if (!days.length) return [make("p", "", say("No session this week."))];
  const said = days.map(({ date, number }) => (date ? weekday(date) : say("Session %(number)s", { number }))).join(", ");
  return [make("p", "", say("This week's sessions: %(days)s.", { days: said }))];
}

/**
 * The training beside the plan.
 * @param {Agenda} agenda
 */
function beside({ other }) {
  return other.map(({ what, hard }) =>
    make("p", "sw-beside", make("span", "sw-key", hard ? say("Key session of the week") : say("Beside the plan")), ` ${what}`),
  );
}

/**
 * The next session, and the event where it is still to come.
 * @param {Day} day
 * @param {string} label
 */
function coming({ agenda, root }, label = say("Next session")) {
  const { next, event } = agenda;
  const parts = [];
  if (next) {
    const way = link(root + next.url, next.name);
    way.className = "sw-next-session";
    parts.push(make("p", "sw-coming", make("span", "sw-key", label), " ", way, " ", when(next), `, ${next.time}`));
  }
  if (event) {
    parts.push(make("p", "sw-coming", make("span", "sw-key", say("Leads up to")), ` ${event.name}, `, dayElement(event.date)));
  }
  return parts;
}

/**
 * The week with its days: what is done, what is left out, and where today stands.
 * @param {Plan} plan
 * @param {Week} week
 * @param {Set<Session>} done
 * @param {Set<Session>} passed
 * @param {string} root
 * @param {string} today
 */
export function weekList(plan, week, done, passed, root, today) {
  const rows = [
    ...week.days.map((one) => {
      const tick = done.has(one) ? [" ", make("span", "sw-ticked", `✓ ${say("done")}`)] : [];
      const way = link(root + one.url, one.name);
      const said = passed.has(one) && !done.has(one) ? make("span", "", ...pieces("%(session)s: left out", { session: way })) : way;
      return { date: one.date, inside: [when(one), " ", said, ...tick] };
    }),
    ...week.skipped.map((one) => ({ date: one.date, inside: [...(one.date ? [dayElement(one.date), " "] : []), `${say("%(session)s: left out", { session: one.name })}`] })),
  ].sort((a, b) => (a.date ?? "").localeCompare(b.date ?? ""));
  const list = make("ul", "sw-plain sw-week-days");
  for (const { date, inside } of rows) {
    const item = make("li", "", ...inside);
    if (date === today) item.setAttribute("aria-current", "date");
    list.append(item);
  }
  const title = make("h2", "", say("This week"));
  const all = link(root + week.url, say("All of week %(week)s", { week: week.number }));
  return make("section", "sw-this-week", title, list, make("p", "", all, " ", link(root + plan.url, say("The whole plan"))));
}

/**
 * Which plan is the member's: asked once, where there are several.
 * @param {Plan[]} plans
 * @param {(id: string) => void} pick
 * @param {{title?: string, mine?: string}} shown another title than the question; the plan that is picked already
 */
export function planPicker(plans, pick, { title, mine } = {}) {
  const box = make("section", "sw-pick-plan", make("h2", "", title ?? say("Which plan is yours?")));
  box.dataset.hook = "pick-plan";
  for (const { ident, plan, about } of plans) {
    const one = button(plan, "sw-button sw-quiet", () => pick(ident));
    if (mine) one.setAttribute("aria-pressed", String(ident === mine));
    box.append(make("p", "", one, " ", make("span", "sw-small", about)));
  }
  if (!title) box.append(make("p", "sw-small", say("Asked once. Below, under Plans, you can change it.")));
  return box;
}

/**
 * That another day than the real one is shown, and the way to the real one.
 * @param {Date} day
 */
export function demonstration(day) {
  const said = day.toLocaleDateString(LANGUAGE, { weekday: "long", day: "numeric", month: "long", year: "numeric" });
  const real = link("?on=", say("Show the real day"));
  return make("p", "sw-demonstration", ...pieces("This is a demonstration: it shows %(day)s as today.", { day: make("b", "", said) }), " ", real);
}

/**
 * The day, and where its week stands in the plan.
 * @param {Day} day
 */
function place({ agenda, plan, today }) {
  const { week } = agenda;
  const said = daySaid(today);
  const values = { day: said, week: week?.number ?? 0, weeks: plan.weeks.length, phase: week?.phase ?? "" };
  const line = make("p", "sw-place", week ? say("%(day)s. Week %(week)s of %(weeks)s, %(phase)s", values) : `${said}. ${plan.plan}`);
  if (week?.tag) line.append(" ", make("span", `sw-tag sw-tag-${week.kind}`, week.tag));
  return line;
}

/**
 * The member's own weights for a session, or the way to say a body weight.
 * @param {Day} day
 * @param {Session} session
 */
function weights({ plan, mine, settingsPage }, session) {
  const loads = session.loads.filter((load) => isFor(load, mine));
  if (!loads.length) return [];
  const taken = loads.map((load) => tableTakes(load, plan.tables, mine));
  const known = [...new Set(taken.flatMap((one) => (one ? [one] : [])))];
  if (known.length) return [fact(say("Your weights"), known.join(", "))];
  if (mine.weight) return [fact(say("Your weights"), say("the home options, or the easier ones"))];
  return [fact(say("Your weights"), link(settingsPage, say("Set your body weight")))];
}

/**
 * @param {string} name
 * @param {string | Node} value
 */
function fact(name, value) {
  return make("div", "", make("dt", "", name), make("dd", "", value));
}

/**
 * The date of a session, or its place in a week where it is on any day.
 * @param {Session} session
 */
function when(session) {
  return session.date ? dayElement(session.date) : placeSaid(session);
}

/** @param {string} date */
function weekday(date) {
  return new Date(`${date}T12:00:00`).toLocaleDateString(LANGUAGE, { weekday: "long" });
}
