// My load: the member's own row of the bands, with the whole table one tap away. Without it the table is there in full.
import { settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { choose, ownWeight, rows } from "../logic/bands.js";
import { inOtherUnit, kilograms } from "../logic/exact.js";
import { easierOption } from "./easier.js";
import { button, link, make } from "./make.js";
import { pieces, say, weightSaid } from "../words.js";

/** @typedef {import("../logic/settings.js").Settings} Settings */
/** @typedef {{state: "unset" | "below" | "above" | "easier" | "home" | "weight", take: string, planned: string, own: boolean}} Mine take and planned as data */

/**
 * What the settings make of a load's bands. take is a weight, "12.5 kg"; planned is the club's weight where an own one
 * stands in for it.
 * @param {Record<string, string | undefined>} data of a sw-load, or what the guide knows of a load
 * @param {Settings} mine
 * @returns {Mine}
 */
export function myLoad(data, mine) {
  /** @type {Mine} */
  const found = { state: "unset", take: "", planned: "", own: false };
  if (isAway(data.kit, mine)) return { ...found, state: "home" };
  const lift = mine.lifts[data.exercise ?? ""];
  const typed = data.of === "1rm" ? lift && { number: lift.low, unit: lift.unit } : mine.weight;
  const base = typed && kilograms(typed.number, typed.unit);
  const row = base && choose(rows(data.bands ?? ""), base);
  if (!row) return found;
  if ("outside" in row) return { ...found, state: row.outside };
  if (!/^\d/.test(row.take)) return { ...found, state: "easier" };
  const weights = mine.place === "home" ? mine.kit[data.kit ?? ""] : undefined;
  if (!weights?.length) return { ...found, state: "weight", take: row.take };
  const own = ownWeight(row.take, weights, data.way === "help");
  if (own === undefined) return { ...found, state: "easier", planned: row.take, own: true };
  return { state: "weight", take: `${own} ${row.take.split(" ")[1]}`, planned: row.take, own: true };
}

/**
 * Whether a member trains at home, where what a load is taken with is not.
 * @param {string | undefined} kit
 * @param {Settings} mine
 */
export function isAway(kit, mine) {
  return mine.place === "home" && kit !== undefined && !(kit in mine.kit);
}

/**
 * Whether a member's choices lead to the exercise of a load.
 * @param {import("../logic/agenda.js").Weighed} load
 * @param {Settings} mine
 */
export function isFor(load, mine) {
  const has = (/** @type {string} */ one) => mine.choices.includes(one);
  return (!load.for || load.for.some(has)) && !load.not?.some(has);
}

/**
 * What is taken for one load of a session, with its kit, in words; nothing where the settings do not tell, or where the
 * easier option stands for it.
 * @param {import("../logic/agenda.js").Weighed} load
 * @param {string[]} tables
 * @param {Settings} mine
 */
export function tableTakes(load, tables, mine) {
  const bands = load.table === undefined ? undefined : tables[load.table];
  const found = bands && myLoad({ of: load.of, bands, kit: load.kit, exercise: load.exercise, way: load.way ?? undefined }, mine);
  const take = found ? found.take : isAway(load.kit, mine) ? "" : load.weight;
  if (!take) return "";
  const values = { kit: load.name, weight: inBothUnits(take, mine) };
  if (load.way === "help") return say("%(kit)s %(weight)s of help", values);
  return load.hand ? say("%(kit)s %(weight)s in each hand", values) : say("%(kit)s %(weight)s", values);
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
    this.querySelector(":scope > [data-hook='you']")?.remove();
    this.toggleAttribute("data-folded", found.state !== "unset" && !("short" in this.dataset));
    if (this.dataset.short === "glance") {
      if (found.state === "weight") this.prepend(yours("span", ...inHand(found, this.dataset)));
      if (found.state === "home") this.prepend(yours("span", say("the home option")));
      return;
    }
    if ("short" in this.dataset) {
      if (found.state === "weight") this.prepend(yours("span", ...pieces("You: %(weight)s", { weight: bold(found) })));
      return;
    }
    const line = yours("div");
    if (found.state === "unset") {
      if (this.dataset.of !== "1rm" && document.querySelector("sw-own-weight")) return;
      const what = this.dataset.of === "1rm" ? say("Give your best lift") : say("Set your body weight");
      const step = link(this.dataset.settings ?? "", what);
      line.append(make("p", "sw-small", ...pieces("%(step)s to see only your weight here.", { step })));
      this.prepend(line);
      return;
    }
    line.append(...words(found, this.dataset, this.closest("[data-hook='inside'], [data-item]")), this.#unfold());
    this.prepend(line);
  }

  /** The button that shows and hides the whole table. */
  #unfold() {
    const what = this.dataset.of === "1rm" ? say("Whole table") : say("All body weights");
    const unfold = button(what, "sw-link", () => {
      const folded = this.toggleAttribute("data-folded");
      unfold.setAttribute("aria-expanded", String(!folded));
    });
    unfold.setAttribute("aria-expanded", "false");
    return unfold;
  }
}

/**
 * A weight without "You", where a line is short.
 * @param {Mine} found
 * @param {DOMStringMap} data
 */
function inHand(found, data) {
  const weight = bold(found);
  if (data.way === "help") return pieces("%(weight)s of help", { weight });
  return data.hand ? pieces("%(weight)s in each hand", { weight }) : [weight];
}

/**
 * A weight in words, with the same in the member's own unit beside it where that is another one.
 * @param {string} weight such as "12.5 kg"
 * @param {Settings} mine
 */
export function inBothUnits(weight, mine) {
  const [number, unit] = weight.split(" ");
  const said = weightSaid(weight);
  if (!mine.unit || mine.unit === unit) return said;
  return say("%(weight)s (%(same)s)", { weight: said, same: weightSaid(inOtherUnit(number, unit)) });
}

/**
 * What is the member's own, to be found again when the settings change.
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {...(string | Node)} inside
 */
function yours(tag, ...inside) {
  const line = make(tag, "sw-you", ...inside);
  line.dataset.hook = "you";
  return line;
}

/** @param {Mine} found */
function bold(found) {
  return make("b", "", inBothUnits(found.take, settings()));
}

/**
 * @param {Mine} found
 * @param {DOMStringMap} data
 * @param {Element | null} item what stands on the page about its exercise
 */
function words(found, data, item) {
  const you = (/** @type {(string | Node)[]} */ inside) => make("p", "sw-you-line", ...inside);
  const small = (/** @type {string} */ text) => make("p", "sw-small", text);
  const planned = found.planned && inBothUnits(found.planned, settings());
  if (found.state === "weight") {
    const weight = bold(found);
    const line = you(data.hand ? pieces("You: %(weight)s in each hand", { weight }) : data.way === "help" ? pieces("You: %(weight)s of help", { weight }) : pieces("You: %(weight)s", { weight }));
    if (!found.own || found.take === found.planned) return [line];
    if (data.way === "help") return [line, small(say("The least of your own that helps no less than the planned %(weight)s.", { weight: planned }))];
    return [line, small(say("The heaviest of your own that is not above the planned %(weight)s.", { weight: planned }))];
  }
  if (found.state === "easier") {
    const line = you(pieces("You: %(weight)s", { weight: make("b", "", easierOption(item)) }));
    if (found.own && data.way === "help") return [line, small(say("All that you have at home helps less than %(weight)s.", { weight: planned }))];
    return found.own ? [line, small(say("All that you have at home is above %(weight)s.", { weight: planned }))] : [line];
  }
  if (found.state === "home") return [you(pieces("You: %(weight)s", { weight: make("b", "", say("the home option")) }))];
  return [you([outside(found.state === "below", data.of === "1rm")])];
}

/**
 * @param {boolean} below
 * @param {boolean} ofMax
 */
export function outside(below, ofMax) {
  if (ofMax && below) return say("Your 1RM is below this table. Ask your coach what to take.");
  if (ofMax) return say("Your 1RM is above this table. Ask your coach what to take.");
  if (below) return say("Your body weight is below this table. Ask your coach what to take.");
  return say("Your body weight is above this table. Ask your coach what to take.");
}
