// Numbers as members type them: a point or a comma, and what else one of them might mean. Pure.
import { compare, exact, kilograms } from "./exact.js";

/** More than anybody has lifted once, kg (common practice, no source). */
const MOST_LIFTED = { over: 600n, under: 1n };

/**
 * A weight as it was typed, with a point; nothing where it has three decimals, which is a thousand or a slip, or is none.
 * @param {string} text
 */
export function weightTyped(text) {
  const found = /^(\d{1,4})(?:[.,](\d{1,2}))?$/.exec(text.trim());
  return found ? found.slice(1).filter(Boolean).join(".") : undefined;
}

/**
 * Weights from a line such as "8, 12 kg and 16" or "7,5 12,5". A comma with a digit on both sides stands in a number
 * where what follows is a part that weights come in, a half or a quarter, and between two weights elsewhere.
 * @param {string} line
 * @returns {string[]} with points
 */
export function weightsIn(line) {
  const pieces = line.split(/,\s+|[;\s]+/).flatMap((piece) => (isPart(piece) ? [piece.replace(",", ".")] : piece.split(",")));
  const numbers = pieces.flatMap((piece) => piece.match(/\d+(?:\.\d+)?/g) ?? []);
  return [...new Set(numbers)].filter((number) => exact(number));
}

/** @param {string} piece */
function isPart(piece) {
  return /^\D*\d+,(?:5|25|75|50|125|375|625|875)\D*$/.test(piece);
}

/**
 * @param {string} number
 * @param {string} unit
 */
export function isLiftable(number, unit) {
  const kg = kilograms(number, unit);
  return kg !== undefined && kg.over > 0n && compare(kg, MOST_LIFTED) <= 0;
}

/**
 * The other unit, where a body weight lies outside the club's tables as it was typed, and inside them in that one.
 * @param {string} number
 * @param {"kg" | "lb"} unit
 * @param {string} from the tables' lightest body weight, kg
 * @param {string} to
 * @returns {"kg" | "lb" | undefined}
 */
export function meantIn(number, unit, from, to) {
  const [low, high] = [exact(from), exact(to)];
  const isInside = (/** @type {string} */ of) => {
    const kg = kilograms(number, of);
    return kg !== undefined && low !== undefined && high !== undefined && compare(kg, low) >= 0 && compare(kg, high) <= 0;
  };
  const other = unit === "kg" ? "lb" : "kg";
  return !isInside(unit) && isInside(other) ? other : undefined;
}
