// The two places of the guided session where a member enters something: correcting a set in a rest, and the end.
import { said, sessionLoad } from "../logic/log.js";
import { ended } from "../logic/ranges.js";
import { bestLift } from "./best-lift.js";
import { effortSelect } from "./effort.js";
import { button, make } from "./make.js";
import { itemAt, nextOf } from "./session-page.js";
import { many, say } from "../words.js";

/** @typedef {import("./guide.js").Guide} Guide */
/** @typedef {import("../logic/steps.js").Step} Step */

/** How much one touch changes: a repetition, five seconds, a metre. */
/** @type {Record<string, number>} */
const STEP = { reps: 1, hold: 5, work: 5, distance: 100 };

/**
 * The sets since the last rest, each with its amount, load and effort.
 * @param {Guide} guide
 * @param {Step[]} steps
 */
export function correctSets(guide, steps) {
  const list = make("ul", "sw-s-done");
  for (const step of steps) {
    const entry = guide.entryOf(step);
    if (!entry) continue;
    const amount = make("span", "sw-s-said", said(entry));
    const best = bestLift(guide, step);
    const change = (/** @type {number} */ by) => () => {
      const now = guide.entryOf(step) ?? entry;
      guide.correct(step, { amount: Math.max(0, now.amount + by * (STEP[now.measure] ?? 1)) });
      amount.textContent = said(guide.entryOf(step) ?? now);
      best.show();
    };
    const less = button("−", "sw-s-step", change(-1));
    const more = button("+", "sw-s-step", change(1));
    less.setAttribute("aria-label", say("%(exercise)s: less", { exercise: entry.name }));
    more.setAttribute("aria-label", say("%(exercise)s: more", { exercise: entry.name }));
    const effort = effortSelect(entry.effort);
    effort.addEventListener("change", () => {
      guide.correct(step, { effort: effort.value === "" ? null : Number(effort.value) });
    });
    list.append(
      make(
        "li",
        "",
        make("p", "sw-s-name", say("Done: %(exercise)s", { exercise: entry.name })),
        make("div", "sw-s-amounts", less, amount, more),
        ...loadField(guide, step, entry, best.show),
        make("label", "", `${say("Effort")} `, effort),
        best.box,
      ),
    );
  }
  list.hidden = !list.childElementCount;
  return list;
}

/**
 * What was lifted, where the exercise has a load.
 * @param {Guide} guide
 * @param {Step} step
 * @param {import("../logic/log.js").Entry} entry
 * @param {() => void} changed
 */
function loadField(guide, step, entry, changed) {
  if (!entry.load && !guide.loadOf(step).text) return [];
  const load = make("input", "");
  load.value = entry.load;
  load.maxLength = 40;
  load.addEventListener("change", () => {
    guide.correct(step, { load: load.value.trim() });
    changed();
  });
  return [make("label", "", `${say("Load")} `, load)];
}

/**
 * Where a member writes how many repetitions it were.
 * @param {number | undefined} noted
 */
export function countField(noted) {
  const field = make("input", "");
  field.inputMode = "numeric";
  field.maxLength = 4;
  field.value = noted === undefined ? "" : String(noted);
  return field;
}

/**
 * Effort of the whole session and its minutes, and the session load that comes of them.
 * @param {Guide} guide
 */
export function finishForm(guide) {
  const box = make("div", "sw-s-finish");
  const { logged } = guide;
  if (!logged) {
    box.append(make("p", "", say("No set was done, so there is nothing to save.")));
    return box;
  }
  const lines = rangesReached(guide);
  if (lines.length) guide.sum({ next: lines });
  if (!logged.minutes) guide.sum({ minutes: guide.minutes });
  const now = () => guide.logged ?? logged;
  const words = guide.session.efforts;
  const effort = effortSelect(now().effort, words);
  const minutes = make("input", "");
  minutes.inputMode = "numeric";
  minutes.value = String(now().minutes);
  minutes.maxLength = 3;
  const sum = make("p", "sw-s-sum");
  const show = () => {
    const { effort: felt, minutes: lasted } = now();
    const values = { effort: felt ?? 0, minutes: lasted, load: sessionLoad(now()) };
    sum.textContent = felt !== null ? say("Session load: %(effort)s × %(minutes)s = %(load)s", values) : "";
  };
  effort.addEventListener("change", () => {
    guide.sum({ effort: effort.value === "" ? null : Number(effort.value) });
    show();
  });
  minutes.addEventListener("change", () => {
    const number = Number(minutes.value);
    if (Number.isInteger(number) && number > 0) guide.sum({ minutes: number });
    minutes.value = String(now().minutes);
    show();
  });
  const sets = many("%(num)s set in the log.", "%(num)s sets in the log.", logged.sets.length);
  box.append(
    make("p", "", guide.stopped ? sets : `${sets} ${say("Drink something, and cool down.")}`),
    ...(lines.length ? [make("ul", "sw-plain sw-s-next-time", ...lines.map((line) => make("li", "", line)))] : []),
    make("label", "", `${say("How hard was all of it?")} `, effort),
    make("label", "", `${say("Minutes")} `, minutes),
    sum,
    make("p", "sw-small", say("Ask yourself again in half an hour: My log lets you change it.")),
  );
  show();
  return box;
}

/**
 * What was done against the ranges that were asked for, a sentence for each exercise that asks for one.
 * @param {Guide} guide
 */
function rangesReached(guide) {
  return guide.blocks.flatMap((block, index) =>
    block.items.flatMap((item, place) => {
      const entries = item.sets.map((_, set) => guide.logged?.sets.find((one) => one.place === `${index}.${place}.${set + 1}`));
      if (entries.some((entry) => entry && entry.name !== item.name)) return [];
      const where = ended(item.sets, entries.map((entry) => entry?.amount));
      const exercise = item.name;
      if (where === "below") return [say("%(exercise)s: below the range. Stay at this weight, or take less.", { exercise })];
      if (where === "within") return [say("%(exercise)s: within the range. Stay until every set reaches the top.", { exercise })];
      if (where !== "top") return [];
      const weight = nextOf(item, item.sets, entries.map((entry) => entry?.load ?? ""), itemAt(guide.page, index, place));
      if (weight) return [say("%(exercise)s: all sets reached the top. Next time %(weight)s.", { exercise, weight })];
      return [say("%(exercise)s: all sets reached the top. Ask your coach what comes next.", { exercise })];
    }),
  );
}
