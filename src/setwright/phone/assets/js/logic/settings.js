// What a member may set, and reading it back: anything odd in the storage or in a file becomes the default.
import { exact } from "./exact.js";

/** @typedef {{number: string, unit: "kg" | "lb"}} Typed as the member typed it, so that no unit drifts */
/** @typedef {{number: string, unit: "kg" | "lb", reps: number, low: string, high: string}} Lift */
/**
 * @typedef {object} Settings
 * @property {Typed | null} weight
 * @property {"club" | "home"} place
 * @property {Record<string, string[]>} kit kit at home, with its weights where it has some
 * @property {Record<string, Lift>} lifts by exercise
 * @property {boolean} sound
 * @property {boolean} vibration
 * @property {"usual" | "large" | "largest"} text
 */

/** @returns {Settings} */
export function usual() {
  return { weight: null, place: "club", kit: {}, lifts: {}, sound: true, vibration: true, text: "usual" };
}

/**
 * @param {unknown} value
 * @returns {Settings}
 */
export function settingsFrom(value) {
  const settings = usual();
  const given = object(value);
  const weight = object(given.weight);
  if (isNumber(weight.number)) settings.weight = { number: weight.number, unit: unit(weight.unit) };
  if (given.place === "home") settings.place = "home";
  for (const [name, weights] of Object.entries(object(given.kit))) {
    if (Array.isArray(weights)) settings.kit[name] = weights.filter(isNumber).slice(0, 60);
  }
  for (const [name, lift] of Object.entries(object(given.lifts))) {
    const { number, reps, low, high, unit: of } = object(lift);
    if (isNumber(number) && isNumber(low) && isNumber(high) && typeof reps === "number") {
      settings.lifts[name] = { number, unit: unit(of), reps, low, high };
    }
  }
  if (given.sound === false) settings.sound = false;
  if (given.vibration === false) settings.vibration = false;
  if (given.text === "large" || given.text === "largest") settings.text = given.text;
  return settings;
}

/**
 * Weights from a line such as "8, 12 kg and 16".
 * @param {string} line
 */
export function weightsIn(line) {
  return [...new Set(line.match(/\d+(?:\.\d+)?/g) ?? [])].filter(isNumber);
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

/** @param {unknown} value */
function unit(value) {
  return value === "lb" ? "lb" : "kg";
}
