// My load: the member's own row of the bands, with the whole table one tap away. Without it the table is there in full.
import { settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { choose, ownWeight, rows } from "../logic/bands.js";
import { kilograms } from "../logic/exact.js";
import { button, link, make } from "./make.js";

/** @typedef {import("../logic/settings.js").Settings} Settings */
/** @typedef {{state: "unset" | "below" | "above" | "easier" | "weight", take: string, planned: string, own: boolean}} Mine */

/**
 * What the settings make of a load's bands. take is the weight in words; planned is the club's weight where an own one
 * stands in for it.
 * @param {DOMStringMap} data of a sw-load
 * @param {Settings} mine
 * @returns {Mine}
 */
export function myLoad(data, mine) {
  /** @type {Mine} */
  const found = { state: "unset", take: "", planned: "", own: false };
  const lift = mine.lifts[data.exercise ?? ""];
  const typed = data.of === "1rm" ? lift && { number: lift.low, unit: lift.unit } : mine.weight;
  const base = typed && kilograms(typed.number, typed.unit);
  const row = base && choose(rows(data.bands ?? ""), base);
  if (!row) return found;
  if ("outside" in row) return { ...found, state: row.outside };
  if (!/^\d/.test(row.take)) return { ...found, state: "easier", take: row.take };
  const weights = mine.place === "home" ? mine.kit[data.kit ?? ""] : undefined;
  if (!weights?.length) return { ...found, state: "weight", take: row.take };
  const own = ownWeight(row.take, weights);
  if (own === undefined) return { ...found, state: "easier", take: "easier option", planned: row.take, own: true };
  return { state: "weight", take: `${own} ${row.take.split(" ")[1]}`, planned: row.take, own: true };
}

export class Load extends HTMLElement {
  /** @type {AbortController | undefined} */
  #until;

  connectedCallback() {
    this.#until = new AbortController();
    onChange((key) => key === "settings" && this.show(), this.#until.signal);
    this.show();
  }

  disconnectedCallback() {
    this.#until?.abort();
  }

  show() {
    const mine = settings();
    const found = myLoad(this.dataset, mine);
    this.querySelector(":scope > .sw-you")?.remove();
    this.toggleAttribute("data-folded", found.state !== "unset" && !("short" in this.dataset));
    if ("short" in this.dataset) {
      if (found.state === "weight") this.prepend(make("span", "sw-you", "You: ", make("b", "", found.take)));
      return;
    }
    const line = make("div", "sw-you");
    if (found.state === "unset") {
      const what = this.dataset.of === "1rm" ? "Give your best lift" : "Set your body weight";
      line.append(make("p", "sw-small", link(this.dataset.settings ?? "", what), " to see only your weight here."));
      this.prepend(line);
      return;
    }
    line.append(...words(found, this.dataset), this.#unfold());
    this.prepend(line);
  }

  /** The button that shows and hides the whole table. */
  #unfold() {
    const what = this.dataset.of === "1rm" ? "Whole table" : "All body weights";
    const unfold = button(what, "sw-link", () => {
      const folded = this.toggleAttribute("data-folded");
      unfold.setAttribute("aria-expanded", String(!folded));
    });
    unfold.setAttribute("aria-expanded", "false");
    return unfold;
  }
}

/**
 * @param {Mine} found
 * @param {DOMStringMap} data
 */
function words(found, data) {
  const hand = data.hand ? ` ${data.hand}` : "";
  if (found.state === "weight") {
    const line = make("p", "sw-you-line", "You: ", make("b", "", found.take), hand);
    if (!found.own || found.take === found.planned) return [line];
    const why = `The heaviest of your own that is not above the planned ${found.planned}.`;
    return [line, make("p", "sw-small", why)];
  }
  if (found.state === "easier") {
    const line = make("p", "sw-you-line", "You: ", make("b", "", "the easier option"));
    return found.own ? [line, make("p", "sw-small", `All that you have at home is above ${found.planned}.`)] : [line];
  }
  const where = found.state === "below" ? "below" : "above";
  const what = data.of === "1rm" ? "Your 1RM" : "Your body weight";
  return [make("p", "sw-you-line", `${what} is ${where} this table. Ask your coach what to take.`)];
}
