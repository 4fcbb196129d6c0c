// Which sides of a set are done, where they work one at a time: a set of one side is no set of both.

/**
 * The sides that are done once one more is: "1", "2" or "12"; nothing where both work at once.
 * @param {string} done
 * @param {0 | 1 | 2} side
 */
export function sidesWith(done, side) {
  return side ? [...new Set(done + side)].sort().join("") : "";
}

/**
 * How many sides a set in the log stands for.
 * @param {1 | 2} sides of the exercise
 * @param {string} done
 */
export function sideCount(sides, done) {
  return sides === 2 && done.length === 1 ? 1 : sides;
}

/**
 * The seconds of a set that a clock ends: of two sides the shorter one, so that the log never says more than was done.
 * @param {string} done the sides before this one
 * @param {0 | 1 | 2} side
 * @param {number | undefined} before
 * @param {number} seconds
 */
export function secondsOf(done, side, before, seconds) {
  const other = side && before !== undefined && done === String(3 - side);
  return other ? Math.min(before, seconds) : seconds;
}
