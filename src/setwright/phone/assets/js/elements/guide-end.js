// The end of a guided session: what was done, against last time, each set open to correction, and what comes next.
import { logged } from "../device/member.js";
import { ownOf, planAt } from "../device/plans.js";
import { byExercise, inALine, lastTime } from "../logic/last-time.js";
import { closesSet } from "../logic/steps.js";
import { weeksFor } from "../logic/week.js";
import { dayElement, placeSaid } from "./days.js";
import { correctSets, finishForm } from "./guide-forms.js";
import { link, make } from "./make.js";
import { LANGUAGE, pieces, say } from "../words.js";

/** @typedef {import("./guide.js").Guide} Guide */
/** @typedef {import("../logic/log.js").Logged} Logged */

/** @param {Guide} guide */
export function summary(guide) {
  const box = make("div", "sw-s-end", finishForm(guide));
  if (guide.logged) box.append(...done(guide, guide.logged));
  const next = make("p", "sw-coming");
  box.append(next);
  void nextSession(guide).then((parts) => next.append(...parts));
  return box;
}

/**
 * What was done, an exercise a line that opens for its sets.
 * @param {Guide} guide
 * @param {Logged} now
 */
function done(guide, now) {
  const before = lastTime(logged(), now);
  const earlier = before ? byExercise(before.sets) : new Map();
  const title = make("h3", "", say("What you did"));
  const rows = [...byExercise(now.sets)].map(([key, sets]) => {
    const places = new Set(sets.map(({ place }) => place));
    const was = earlier.get(key);
    const line = make("span", "sw-s-was", was ? say("Last time: %(sets)s", { sets: inALine(was) }) : before ? say("Not done last time") : "");
    const said = make("span", "", inALine(sets));
    const row = make("details", "sw-s-row", make("summary", "", make("b", "", sets[0].name), " ", said, " ", line));
    row.addEventListener("toggle", () => {
      if (row.childElementCount === 1) row.append(correctSets(guide, guide.steps.filter((step) => closesSet(step) && places.has(guide.entryOf(step)?.place ?? ""))));
      const mine = guide.logged?.sets.filter(({ place }) => places.has(place)) ?? [];
      if (mine.length) said.textContent = inALine(mine);
    });
    return row;
  });
  const date = before && new Date(before.id).toLocaleDateString(LANGUAGE, { weekday: "long", day: "numeric", month: "long" });
  const when = date ? [make("p", "sw-small", say("Last time was %(day)s. Open a line to put a set right.", { day: date }))] : [make("p", "sw-small", say("Open a line to put a set right."))];
  return [title, ...when, ...rows];
}

/**
 * The session after this one in the plan, with its date in the member's own weeks where it has one.
 * @param {Guide} guide
 */
async function nextSession(guide) {
  const plan = await planAt(guide.dataset.days);
  if (!plan) return [];
  const root = new URL(guide.dataset.root ?? "", location.href);
  const here = ({ url = "" }) => new URL(url, root).pathname === location.pathname;
  const dated = weeksFor(plan, ownOf(plan)).flatMap(({ days }) => days);
  const all = dated.length ? dated : plan.weeks.flatMap(({ days }) => days.map((day) => ({ ...day, date: null })));
  const at = all.findIndex(here);
  const next = at < 0 ? undefined : all[at + 1];
  if (!next) return [];
  const session = link(new URL(next.url, root).href, next.name);
  return pieces("Next: %(session)s, %(day)s", { session, day: next.date ? dayElement(next.date) : placeSaid(next) });
}
