// Sound, vibration and a screen that stays on, each where the device has it.
import { settings } from "./member.js";

/** @type {AudioContext | undefined} */
let audio;

/** Sound may only begin with a touch: call this from one. */
export function readySound() {
  try {
    audio ??= new AudioContext();
    void audio.resume();
  } catch {
    // A device without sound: the screen shows everything that is heard.
  }
}

/**
 * @param {number} hertz
 * @param {number} seconds
 * @param {OscillatorType} wave
 * @param {number} level from 0 to 1
 */
export function beep(hertz, seconds, wave = "sine", level = 0.25) {
  if (!audio || audio.state !== "running") return;
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.type = wave;
  tone.frequency.value = hertz;
  volume.gain.setValueAtTime(level, audio.currentTime);
  volume.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + seconds);
  tone.connect(volume).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + seconds);
}

/** @param {number[]} pattern ms on, off, on */
function buzz(pattern) {
  navigator.vibrate?.(pattern);
}

/**
 * What a member hears and feels, as the settings allow it: a second of a count, a beginning, an end.
 * @param {"count" | "go" | "end"} what
 */
export function signal(what) {
  const mine = settings();
  const [hertz, seconds, pattern] = /** @type {const} */ ({
    count: [660, 0.12, [60]],
    go: [990, 0.4, [250]],
    end: [880, 0.6, [200, 120, 200]],
  })[what];
  if (mine.sound) beep(hertz, seconds);
  if (mine.vibration) buzz([...pattern]);
}

/** Keeps the screen on while wanted, and asks again after the page was out of sight. */
export class Awake {
  /** @type {WakeLockSentinel | undefined} */
  #lock;
  #wanted = false;

  async on() {
    this.#wanted = true;
    if (!("wakeLock" in navigator) || document.visibilityState !== "visible") return;
    if (this.#lock && !this.#lock.released) return;
    try {
      const lock = await navigator.wakeLock.request("screen");
      if (this.#wanted) this.#lock = lock;
      else await lock.release();
    } catch {
      // Low battery or not allowed: the clock goes on all the same.
    }
  }

  off() {
    this.#wanted = false;
    void this.#lock?.release();
    this.#lock = undefined;
  }
}
