// Charts of the log, each with an axis and its numbers as a table: session load by week, and one exercise over time.
import { bestsOf, exercisesOf, historyOf } from "../logic/history.js";
import { inALine } from "../logic/last-time.js";
import { localTime, said, untilWeekOf, weeksOf } from "../logic/log.js";
import { make } from "./make.js";
import { LANGUAGE, many, say, weightSaid } from "../words.js";

/** @typedef {import("../logic/log.js").Logged} Logged */
/** @typedef {import("../logic/history.js").Row} Row */
/** @typedef {import("../logic/history.js").History} History */

const WEEKS_SHOWN = 16;
const SVG = "http://www.w3.org/2000/svg";
const HEIGHT = 60;
const STEP = 12;

/**
 * Session load by week.
 * @param {Logged[]} sessions
 */
export function loadChart(sessions) {
  const { until, later } = untilWeekOf(sessions, localTime(Date.now()));
  const weeks = weeksOf(until, WEEKS_SHOWN);
  const highest = Math.max(0, ...weeks.map((week) => week.load));
  const words = say("Session load by week, %(first)s to %(last)s. Highest: %(highest)s.", {
    first: dayOf(weeks[0].monday),
    last: dayOf(weeks[weeks.length - 1].monday),
    highest,
  });
  const left = many(
    "%(num)s session is dated later than this week, and is not in the chart.",
    "%(num)s sessions are dated later than this week, and are not in the chart.",
    later,
  );
  const label = say("Session load in each week; the numbers follow as a table");
  const svg = bars(weeks.map(({ load }) => load), Math.max(1, highest), label);
  const rows = weeks.map(({ monday, load, sessions: count }) => [dayOf(monday), String(load), String(count)]).reverse();
  const table = numbers([say("Week from"), say("Session load"), say("Sessions")], rows);
  return make("figure", "sw-chart-box sw-load-chart", axis(String(highest), svg), make("figcaption", "", later ? `${words} ${left}` : words), table);
}

/**
 * An exercise over time, and the choice of which.
 * @param {Logged[]} sessions newest first
 */
export function exerciseChart(sessions) {
  const known = exercisesOf(sessions);
  const place = make("div", "");
  const pick = make("select", "");
  for (const { exercise, name } of known) pick.append(new Option(name, exercise));
  const show = () => place.replaceChildren(...history(historyOf(sessions, pick.value)));
  pick.addEventListener("change", show);
  show();
  return make("section", "sw-one-exercise", make("h2", "", say("One exercise")), make("label", "sw-field", say("Exercise"), pick), place);
}

/** @param {History} found */
function history(found) {
  const rows = found.rows.slice(-40);
  if (!rows.length) return [];
  const most = Math.max(...rows.map(({ value }) => value));
  const shown = (/** @type {number} */ value) => valueSaid(value, found);
  const what = found.loaded ? say("Heaviest load of each session") : say("Most of each session");
  const svg = bars(rows.map(({ value }) => value), Math.max(1, most), `${what}; ${say("the numbers follow as a table")}`);
  const span = { first: dayOf(rows[0].id, true), last: dayOf(rows[rows.length - 1].id, true) };
  const caption = make("figcaption", "", `${what}. ${say("%(first)s to %(last)s", span)}`);
  const lines = [...rows].reverse().map(({ id, value, sets }) => [dayOf(id, true), shown(value), inALine(sets)]);
  const table = numbers([say("Day"), found.loaded ? say("Heaviest") : say("Most"), say("Sets")], lines);
  return [...bests(found), make("figure", "sw-chart-box", axis(shown(most), svg), caption, table)];
}

/** @param {History} found */
function bests(found) {
  const { heaviest, most } = bestsOf(found);
  const fact = (/** @type {string} */ name, /** @type {Row} */ row) => {
    const words = [row.best.load, said(row.best)].filter(Boolean).join(", ");
    return make("div", "", make("dt", "", name), make("dd", "", words, " ", make("span", "sw-muted", dayOf(row.id, true))));
  };
  const facts = [];
  if (heaviest) facts.push(fact(say("Heaviest set"), heaviest));
  if (most) facts.push(fact(found.measure === "reps" ? say("Most repetitions") : found.measure === "distance" ? say("Longest way") : say("Longest time"), most));
  return facts.length ? [make("dl", "sw-facts", ...facts)] : [];
}

/**
 * @param {number} value
 * @param {History} found
 */
function valueSaid(value, { loaded, unit, measure }) {
  if (loaded) return weightSaid(`${value} ${unit}`);
  if (measure === "reps") return many("%(num)s rep", "%(num)s reps", value);
  return measure === "distance" ? say("%(number)s m", { number: value / 100 }) : say("%(seconds)s s", { seconds: value });
}

/**
 * A drawing with what its height stands for, from 0.
 * @param {string} highest
 * @param {SVGElement} svg
 */
function axis(highest, svg) {
  const scale = make("div", "sw-scale", make("span", "", highest), make("span", "", "0"));
  scale.setAttribute("aria-hidden", "true");
  return make("div", "sw-drawn", scale, svg);
}

/**
 * @param {number[]} values
 * @param {number} most
 * @param {string} label
 */
function bars(values, most, label) {
  const svg = document.createElementNS(SVG, "svg");
  const wide = Math.max(8, values.length) * STEP;
  svg.setAttribute("class", "sw-chart sw-log-chart");
  svg.setAttribute("viewBox", `0 -2 ${wide} ${HEIGHT + 4}`);
  svg.setAttribute("preserveAspectRatio", "none");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", label);
  for (const y of [0, HEIGHT]) svg.append(drawn("line", { class: "sw-axis", x1: 0, y1: y, x2: wide, y2: y }));
  values.forEach((value, index) => {
    const height = Math.round((value / most) * HEIGHT * 10) / 10;
    svg.append(drawn("rect", { class: "sw-bar", x: index * STEP, y: HEIGHT - height, width: STEP - 3, height }));
  });
  return svg;
}

/**
 * @param {string} tag
 * @param {Record<string, string | number>} values
 */
function drawn(tag, values) {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(values)) element.setAttribute(name, String(value));
  return element;
}

/**
 * @param {string[]} heads
 * @param {string[][]} rows
 */
function numbers(heads, rows) {
  const head = make("tr", "", ...heads.map((text) => headed(text, "col")));
  const lines = rows.map(([first, ...others]) => make("tr", "", headed(first, "row"), ...others.map((text) => make("td", "", text))));
  const table = make("table", "sw-compact", make("thead", "", head), make("tbody", "", ...lines));
  return make("details", "sw-how", make("summary", "", say("The numbers")), make("div", "sw-scroll", table));
}

/**
 * @param {string} text
 * @param {string} scope
 */
function headed(text, scope) {
  const cell = make("th", "", text);
  cell.scope = scope;
  return cell;
}

/**
 * @param {string} day
 * @param {boolean} year
 */
function dayOf(day, year = false) {
  const at = new Date(`${day.slice(0, 10)}T12:00:00`);
  return at.toLocaleDateString(LANGUAGE, year ? { day: "numeric", month: "short", year: "numeric" } : { day: "numeric", month: "short" });
}
