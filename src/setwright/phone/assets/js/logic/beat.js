// A tempo as a beat: which phase of which repetition a moment falls into.
import { say } from "../words.js";

/** @typedef {{name: string, seconds: number}} Phase */

const NAMES = [say("Lower"), say("Pause"), say("Lift"), say("Hold")];

/**
 * The phases of a tempo that take time. "3 0 1! 0": the mark stands for a fast lift, counted as the page counts it.
 * @param {string} tempo
 * @returns {Phase[]}
 */
export function phasesOf(tempo) {
  return tempo.split(" ").flatMap((part, index) => {
    const seconds = Number(part.replace("!", ""));
    if (!(seconds > 0)) return [];
    return [{ name: part.endsWith("!") ? say("Lift fast") : NAMES[index], seconds }];
  });
}

/**
 * @param {Phase[]} phases
 * @param {number} passed seconds since the beat began
 * @returns {{rep: number, index: number, left: number, share: number}} the repetition from 1, the phase, its seconds left
 */
export function beatAt(phases, passed) {
  const whole = phases.reduce((sum, phase) => sum + phase.seconds, 0);
  const rep = Math.floor(passed / whole) + 1;
  let into = passed % whole;
  let index = 0;
  while (index < phases.length - 1 && into >= phases[index].seconds) {
    into -= phases[index].seconds;
    index += 1;
  }
  const { seconds } = phases[index];
  return { rep, index, left: Math.ceil(seconds - into), share: into / seconds };
}
