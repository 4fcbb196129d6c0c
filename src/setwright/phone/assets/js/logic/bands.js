// Finding the member's row in the bands that the page carries. No dose is computed here.
import { compare, exact } from "./exact.js";

/** @typedef {import("./exact.js").Exact} Exact */
/** @typedef {{from: Exact, to: Exact, fromIn: boolean, toIn: boolean, take: string}} Row */

const ROW = /^([[(])([\d/]+), ([\d/]+)([\])]) (.+)$/;

/**
 * Bands as the page writes them: "[40, 160/3) 8 kg; [160/3, 70] 10 kg".
 * @param {string} text
 * @returns {Row[]}
 */
export function rows(text) {
  return text.split("; ").flatMap((part) => {
    const found = ROW.exec(part);
    const from = found && exact(found[2]);
    const to = found && exact(found[3]);
    if (!found || !from || !to) return [];
    return [{ from, to, fromIn: found[1] === "[", toIn: found[4] === "]", take: found[5] }];
  });
}

/**
 * What to take at a body weight (or a 1RM), or on which side of the table it lies.
 * @param {Row[]} bands
 * @param {Exact} base
 * @returns {{take: string} | {outside: "below" | "above"} | undefined}
 */
export function choose(bands, base) {
  if (!bands.length) return undefined;
  for (const row of bands) {
    const low = compare(base, row.from);
    const high = compare(base, row.to);
    if ((low > 0 || (low === 0 && row.fromIn)) && (high < 0 || (high === 0 && row.toIn))) return { take: row.take };
  }
  return { outside: compare(base, bands[0].from) < 0 ? "below" : "above" };
}

/**
 * The heaviest of a member's own weights that is not above the planned one; undefined where none is. Of weights that
 * help, the lightest that is not below it.
 * @param {string} take such as "10 kg"
 * @param {string[]} own numbers in the club's unit
 * @param {boolean} helps
 */
export function ownWeight(take, own, helps = false) {
  const planned = exact(take.split(" ")[0]);
  if (!planned) return undefined;
  let best;
  for (const number of own) {
    const weight = exact(number);
    const harder = (/** @type {Exact} */ one, /** @type {Exact} */ other) => (helps ? compare(other, one) : compare(one, other)) > 0;
    if (!weight || harder(weight, planned)) continue;
    if (!best || harder(weight, best.weight)) best = { weight, number };
  }
  return best?.number;
}
