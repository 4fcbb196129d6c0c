// Exact numbers, so that a body weight on the edge of a band falls on the same side here as on the printed table.

/** @typedef {{over: bigint, under: bigint}} Exact */

/** The international pound (international yard and pound agreement, 1959). */
export const KG_PER_LB = { over: 45359237n, under: 100000000n };

/**
 * A number as people and pages write it: 68, 68.5, 68,5 or 160/3; undefined for anything else.
 * @param {string} text
 * @returns {Exact | undefined}
 */
export function exact(text) {
  const share = /^(\d{1,12})\/(\d{1,12})$/.exec(text);
  if (share && BigInt(share[2]) > 0n) return { over: BigInt(share[1]), under: BigInt(share[2]) };
  const decimal = /^(\d{1,9})(?:[.,](\d{1,9}))?$/.exec(text.trim());
  if (!decimal) return undefined;
  const places = decimal[2] ?? "";
  return { over: BigInt(decimal[1] + places), under: 10n ** BigInt(places.length) };
}

/**
 * Below 0, 0 or above 0, as a stands to b.
 * @param {Exact} a
 * @param {Exact} b
 */
export function compare(a, b) {
  const left = a.over * b.under;
  const right = b.over * a.under;
  return left < right ? -1 : left > right ? 1 : 0;
}

/**
 * @param {Exact} a
 * @param {Exact} b
 * @returns {Exact}
 */
export function times(a, b) {
  return { over: a.over * b.over, under: a.under * b.under };
}

/**
 * Kilograms, exactly, from a number and its unit.
 * @param {string} number
 * @param {string} unit
 */
export function kilograms(number, unit) {
  const value = exact(number);
  return value && unit === "lb" ? times(value, KG_PER_LB) : value;
}

/**
 * Kilograms in a unit, exactly.
 * @param {Exact} value
 * @param {string} unit
 * @returns {Exact}
 */
export function inUnit(value, unit) {
  return unit === "lb" ? { over: value.over * KG_PER_LB.under, under: value.under * KG_PER_LB.over } : value;
}

/**
 * The same weight in the other unit, to a tenth, for show only: what was typed is what is kept.
 * @param {string} number
 * @param {string} unit
 */
export function inOtherUnit(number, unit) {
  const value = exact(number);
  if (!value) return "";
  if (unit === "kg") return `${tenths(inUnit(value, "lb"))} lb`;
  return `${tenths(times(value, KG_PER_LB))} kg`;
}

/**
 * A number to a tenth, halves rounded up.
 * @param {Exact} value
 */
export function tenths(value) {
  return written((value.over * 20n + value.under) / (value.under * 2n));
}

/**
 * The last tenth that is not above a number: a limit is never rounded up.
 * @param {Exact} value
 */
export function tenthsBelow(value) {
  return written((value.over * 10n) / value.under);
}

/** @param {bigint} count tenths */
function written(count) {
  return count % 10n === 0n ? `${count / 10n}` : `${count / 10n}.${count % 10n}`;
}
