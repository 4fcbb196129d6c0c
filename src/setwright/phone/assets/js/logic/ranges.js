// What was done, compared with the range that was asked for.

/**
 * Where the sets of an exercise ended: all at the top of their range or above, some below it, or else within. Undefined
 * where a set is missing, or where any of them asks for no range.
 * @param {{low: number, high: number}[]} asked
 * @param {(number | undefined)[]} done
 * @returns {"top" | "within" | "below" | undefined}
 */
export function ended(asked, done) {
  if (!asked.length || asked.some(({ low, high }) => low === high)) return undefined;
  const amounts = asked.map((_, place) => done[place]);
  if (amounts.some((amount) => amount === undefined)) return undefined;
  const all = /** @type {number[]} */ (amounts);
  if (all.some((amount, place) => amount < asked[place].low)) return "below";
  return all.every((amount, place) => amount >= asked[place].high) ? "top" : "within";
}
