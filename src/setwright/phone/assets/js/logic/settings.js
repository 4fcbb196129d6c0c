// What a member may set, and reading it back: anything odd in the storage or in a file becomes the default.
import { compare, exact, kilograms } from "./exact.js";
import { isDay, LONGEST_WAIT } from "./day.js";

/** @typedef {{number: string, unit: "kg" | "lb"}} Typed as the member typed it, so that no unit drifts */
/** @typedef {{number: string, unit: "kg" | "lb", reps: number, low: string, high: string}} Lift */
/**
 * @typedef {object} Settings
 * @property {Typed | null} weight
 * @property {"kg" | "lb" | null} unit the one that the member chose
 * @property {"club" | "home"} place
 * @property {string} plan the id of the plan that the member follows; nothing where it was not asked
 * @property {Record<string, string[]>} kit kit at home, with its weights where it has some
 * @property {Record<string, Lift>} lifts by exercise
 * @property {string[]} choices ids of what the member said of themselves
 * @property {boolean} sound
 * @property {boolean} vibration
 * @property {"usual" | "large" | "largest"} text
 * @property {Record<string, import("./week.js").Own>} plans the member's own weeks, by plan
 */

/** @returns {Settings} */
export function usual() {
  return { weight: null, unit: null, place: "club", plan: "", kit: {}, lifts: {}, choices: [], sound: true, vibration: true, text: "usual", plans: {} };
}

/**
 * @param {unknown} value
 * @param {{count: number}} mended how many values can't be and were left out
 * @returns {Settings}
 */
export function settingsFrom(value, mended = { count: 0 }) {
  const settings = usual();
  const given = object(value);
  const weight = object(given.weight);
  const weighed = unit(weight.unit);
  if (weighed && isWeight(weight.number, weighed)) settings.weight = { number: weight.number, unit: weighed };
  else if (given.weight) mended.count += 1;
  settings.unit = unit(given.unit) ?? settings.weight?.unit ?? null;
  if (given.place === "home") settings.place = "home";
  if (typeof given.plan === "string" && given.plan.length <= MOST.letters) settings.plan = given.plan;
  for (const [name, weights] of named(given.kit, MOST.kit, mended)) {
    const own = Array.isArray(weights) ? weights.filter(isNumber).slice(0, MOST.weights) : undefined;
    if (own) settings.kit[name] = own;
    mended.count += own ? /** @type {unknown[]} */ (weights).length - own.length : 1;
  }
  for (const [name, lift] of named(given.lifts, MOST.lifts, mended)) {
    const { number, reps, low, high } = object(lift);
    const of = unit(object(lift).unit);
    const counted = typeof reps === "number" && Number.isInteger(reps) && reps >= 1 && reps <= MOST.reps;
    if (of && isLift(number) && isLift(low) && isLift(high) && counted) {
      settings.lifts[name] = { number, unit: of, reps, low, high };
    } else mended.count += 1;
  }
  if (Array.isArray(given.choices)) {
    const good = given.choices.filter((/** @type {unknown} */ one) => typeof one === "string" && one.length <= MOST.id);
    settings.choices = [...new Set(good)].slice(0, MOST.choices);
    mended.count += given.choices.length - settings.choices.length;
  }
  if (given.sound === false) settings.sound = false;
  if (given.vibration === false) settings.vibration = false;
  if (given.text === "large" || given.text === "largest") settings.text = given.text;
  for (const [name, value] of named(given.plans, MOST.plans, mended)) {
    const own = ownFrom(value);
    if (own) settings.plans[name] = own;
    else mended.count += 1;
  }
  return settings;
}

/**
 * A member's own weeks of a plan, as the storage or a file has them; undefined where they are none.
 * @param {unknown} value
 * @returns {import("./week.js").Own | undefined}
 */
function ownFrom(value) {
  const { group, begins, moved, left } = object(value);
  if (typeof group !== "string" || group.length > MOST.letters || !Array.isArray(moved)) return undefined;
  if (begins !== null && (typeof begins !== "string" || !isDay(begins))) return undefined;
  const whole = (/** @type {unknown} */ n) => typeof n === "number" && Number.isInteger(n) && n >= 1 && n <= LONGEST_WAIT;
  const moves = moved.slice(0, MOST.plans).map(object);
  if (!moves.every(({ week, weeks }) => whole(week) && whole(weeks))) return undefined;
  const places = (Array.isArray(left) ? left : []).filter((/** @type {unknown} */ one) => typeof one === "string" && one.length <= MOST.letters);
  return {
    group,
    begins,
    moved: moves.map(({ week, weeks }) => ({ week: Number(week), weeks: Number(weeks) })),
    left: [...new Set(places)].slice(0, MOST.left),
  };
}

/** A body weight that these pages take, kg. */
const LIGHTEST = { over: 20n, under: 1n };
const HEAVIEST = { over: 300n, under: 1n };
/** More than any set of lifts or kit; reps as the published formulas take them. */
const MOST = { kit: 100, choices: 100, id: 250, lifts: 500, weights: 60, letters: 80, reps: 10, plans: 100, left: 1000, lift: { over: 2000n, under: 1n } };

/**
 * Whether a body weight can be one: 20 to 300 kg.
 * @param {unknown} number
 * @param {string} of its unit
 * @returns {number is string}
 */
export function isWeight(number, of) {
  const kg = typeof number === "string" ? kilograms(number, of) : undefined;
  return kg !== undefined && compare(kg, LIGHTEST) >= 0 && compare(kg, HEAVIEST) <= 0;
}

/**
 * @param {unknown} number
 * @returns {number is string}
 */
function isLift(number) {
  const value = typeof number === "string" ? exact(number) : undefined;
  return value !== undefined && compare(value, MOST.lift) <= 0;
}

/**
 * The first so many entries of a table whose names can be names.
 * @param {unknown} table
 * @param {number} most
 * @param {{count: number}} mended
 */
function named(table, most, mended) {
  const all = Object.entries(object(table));
  const good = all.filter(([name]) => name !== "__proto__" && name.length <= MOST.letters).slice(0, most);
  mended.count += all.length - good.length;
  return good;
}

/**
 * The lowest and highest 1RM that the published formulas give, from the multiples that the page carries.
 * @param {string} multiples such as "2 1.03 1.09; 3 1.06 1.12"
 * @param {string} number the weight
 * @param {number} reps
 * @returns {{low: string, high: string} | undefined}
 */
export function estimate(multiples, number, reps) {
  const weight = Number(number);
  if (!(weight > 0)) return undefined;
  if (reps === 1) return { low: number, high: number };
  const row = multiples.split("; ").map((part) => part.split(" ").map(Number)).find(([count]) => count === reps);
  if (!row) return undefined;
  // Down and up to a tenth: an estimate is never rounded to the heavy side.
  return { low: String(Math.floor(weight * row[1] * 10) / 10), high: String(Math.ceil(weight * row[2] * 10) / 10) };
}

/**
 * @param {unknown} value
 * @returns {Record<string, unknown>}
 */
export function object(value) {
  return value && typeof value === "object" && !Array.isArray(value)
    ? /** @type {Record<string, unknown>} */ (value)
    : {};
}

/**
 * @param {unknown} value
 * @returns {value is string}
 */
function isNumber(value) {
  return typeof value === "string" && exact(value) !== undefined;
}

/**
 * A unit of weight; nothing for one that is not known, since a number in it may be twice the load.
 * @param {unknown} value
 */
function unit(value) {
  return value === "kg" || value === "lb" ? value : undefined;
}
