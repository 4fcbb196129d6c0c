// After a set of as many repetitions as possible: the 1RM that it speaks for, kept only where the member says so.
import { keepSettings, settings } from "../device/member.js";
import { estimate } from "../logic/settings.js";
import { setOf } from "../logic/steps.js";
import { weightSaid, say } from "../words.js";
import { button, make } from "./make.js";

/** @typedef {import("./guide.js").Guide} Guide */
/** @typedef {import("../logic/steps.js").Step} Step */
/** @typedef {import("../logic/settings.js").Lift} Lift */

/** The published formulas hold from 2 repetitions to 10; the multiples of the page end there. */
const FEWEST = 2;

/**
 * @param {Guide} guide
 * @param {Step} step a set in the log
 * @returns {{box: HTMLElement, show: () => void}} show it again once the set was corrected
 */
export function bestLift(guide, step) {
  const box = make("div", "sw-s-best");
  const show = () => {
    const lift = liftOf(guide, step);
    box.hidden = !lift;
    if (!lift) return;
    const { exercise } = guide.blocks[step.block].items[step.item];
    const span = { low: lift.low, high: weightSaid(`${lift.high} ${lift.unit}`) };
    const line = make("p", "", say("By this set your 1RM is between %(low)s and %(high)s.", span));
    const keep = button(say("Keep it as my best lift"), "sw-button sw-quiet", () => {
      const mine = settings();
      mine.lifts[exercise] = lift;
      const trouble = keepSettings(mine);
      line.textContent = trouble || say("Kept. Pages use the lower number: %(low)s to %(high)s.", span);
      keep.hidden = trouble === "";
    });
    box.replaceChildren(line, keep);
  };
  show();
  return { box, show };
}

/**
 * What a set says of 1RM; nothing for a set that ended at a number, or whose weight is not known.
 * @param {Guide} guide
 * @param {Step} step
 * @returns {Lift | undefined}
 */
function liftOf(guide, step) {
  const entry = guide.entryOf(step);
  if (!entry || setOf(step, guide.blocks).leave === undefined || guide.insteadOf(step)) return undefined;
  // A weight in each hand is not one lift.
  const found = /^(\d+(?:[.,]\d+)?)\s(kg|lb)$/.exec(entry.load);
  if (!found || entry.amount < FEWEST) return undefined;
  const number = found[1].replace(",", ".");
  const span = estimate(guide.session.multiples ?? "", number, entry.amount);
  return span && { number, unit: found[2] === "lb" ? "lb" : "kg", reps: entry.amount, ...span };
}
