// A sound that carries through a hall: a square wave near where the ear hears best. In silent mode the screen flashes.
import { beep } from "../device/signals.js";

/** @param {"count" | "go" | "end"} what */
export function sound(what) {
  const [hertz, seconds] = /** @type {const} */ ({ count: [1000, 0.15], go: [2000, 0.7], end: [1500, 1] })[what];
  beep(hertz, seconds, "square", 0.8);
}
