// Moves a figure in its exercise's tempo. Without it, on paper and where less motion is wanted, start and end stand still.
import { button } from "./make.js";
import { say } from "../words.js";

const ROUNDS = 6;

export class Figure extends HTMLElement {
  /** @type {Animation[]} */
  running = [];
  less = window.matchMedia("(prefers-reduced-motion: reduce)");

  connectedCallback() {
    if (!this.dataset.frames || !this.dataset.beats || this.querySelector("[data-hook='moving']")) return;
    this.addMoving();
    this.toggle = button(say("Play"), "sw-fig-button", () => this.turn());
    this.querySelector("[data-hook='bar']")?.append(this.toggle);
    this.less.addEventListener("change", this.calm);
    if (!this.less.matches) this.play();
  }

  disconnectedCallback() {
    this.less.removeEventListener("change", this.calm);
    this.rest();
  }

  /** Stops at once when the reader's device asks for less motion. */
  calm = () => {
    if (this.less.matches) this.rest();
  };

  /** A copy of the start, in the middle of the picture: the pair itself stays as it is, for paper. */
  addMoving() {
    const start = this.querySelector("[data-hook='start']");
    if (!start) return;
    const moving = /** @type {SVGGElement} */ (start.cloneNode(true));
    moving.setAttribute("class", "sw-fig-moving");
    moving.dataset.hook = "moving";
    const [x, y] = JSON.parse(this.dataset.middle ?? "[0,0]");
    moving.setAttribute("transform", `translate(${x} ${y})`);
    start.parentElement?.append(moving);
  }

  /** Play, pause, go on. */
  turn() {
    if (!this.running.length) this.play();
    else if (this.running[0].playState === "paused") this.each((one) => one.play(), say("Pause"));
    else this.each((one) => one.pause(), say("Play"));
  }

  play() {
    /** @type {(number[] | null)[]} */
    const frames = JSON.parse(this.dataset.frames ?? "[]");
    /** @type {[number, number][]} */
    const beats = JSON.parse(this.dataset.beats ?? "[]");
    const whole = beats[beats.length - 1][0];
    this.classList.add("sw-fig-plays");
    for (const part of this.querySelectorAll("[data-hook='moving'] [data-part]")) {
      const places = frames[Number(part.getAttribute("data-part"))];
      if (!places) continue;
      const steps = beats.map(([second, frame]) => ({ offset: second / whole, transform: at(places, frame) }));
      this.running.push(part.animate(steps, { duration: whole * 1000, iterations: ROUNDS }));
    }
    const [first] = this.running;
    if (first) first.onfinish = () => this.rest();
    this.label(say("Pause"));
  }

  /** Back to the still pair. */
  rest() {
    for (const one of this.running) one.cancel();
    this.running = [];
    this.classList.remove("sw-fig-plays");
    this.label(say("Play"));
  }

  /**
   * @param {(one: Animation) => void} act
   * @param {string} label
   */
  each(act, label) {
    this.running.forEach(act);
    this.label(label);
  }

  /** @param {string} text */
  label(text) {
    if (this.toggle) this.toggle.textContent = text;
  }
}

/**
 * The transform of one part in one frame: five numbers a frame, place, turn and stretch along and across.
 * @param {number[]} places
 * @param {number} frame
 */
function at(places, frame) {
  const [x, y, turn, wide, long] = places.slice(frame * 5, frame * 5 + 5);
  return `translate(${x}px, ${y}px) rotate(${turn}deg) scale(${wide}, ${long})`;
}
