// A tempo as a beat: which phase of which repetition a moment falls into.
import { say } from "../words.js";

/** @typedef {import("./steps.js").Phase} Phase */

const NAMES = { lower: say("Lower"), pause: say("Pause"), lift: say("Lift"), hold: say("Hold"), settle: say("Settle") };

/**
 * What a member does in a phase.
 * @param {Phase} phase
 */
export function nameOf(phase) {
  return phase.fast ? say("Lift fast, with control") : NAMES[phase.kind];
}

/**
 * The same with its seconds; what goes as fast as control allows has none to count.
 * @param {Phase} phase
 */
export function paceOf(phase) {
  return phase.fast ? nameOf(phase) : say("%(phase)s %(seconds)s s", { phase: nameOf(phase), seconds: phase.seconds });
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
