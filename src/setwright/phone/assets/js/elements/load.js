// My load: the member's own row of the bands, with the whole table one tap away. Without it the table is there in full.
import { settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { choose, ownWeight, rows } from "../logic/bands.js";
import { kilograms } from "../logic/exact.js";
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
  const own = ownWeight(row.take, weights);
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
 * What is taken for one load of a session, with its kit, in words; nothing where the settings do not tell, or where the
 * easier option stands for it.
 * @param {import("../logic/agenda.js").Weighed} load
 * @param {string[]} tables
 * @param {Settings} mine
 */
export function tableTakes(load, tables, mine) {
  const bands = load.table === undefined ? undefined : tables[load.table];
  const found = bands && myLoad({ of: load.of, bands, kit: load.kit, exercise: load.exercise }, mine);
  const take = found ? found.take : isAway(load.kit, mine) ? "" : load.weight;
  if (!take) return "";
  const values = { kit: load.kit, weight: weightSaid(take) };
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
    this.querySelector(":scope > .sw-you")?.remove();
    this.toggleAttribute("data-folded", found.state !== "unset" && !("short" in this.dataset));
    if ("short" in this.dataset) {
      if (found.state === "weight") this.prepend(make("span", "sw-you", ...pieces("You: %(weight)s", { weight: bold(found) })));
      return;
    }
    const line = make("div", "sw-you");
    if (found.state === "unset") {
      const what = this.dataset.of === "1rm" ? say("Give your best lift") : say("Set your body weight");
      const step = link(this.dataset.settings ?? "", what);
      line.append(make("p", "sw-small", ...pieces("%(step)s to see only your weight here.", { step })));
      this.prepend(line);
      return;
    }
    line.append(...words(found, this.dataset), this.#unfold());
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

/** @param {Mine} found */
function bold(found) {
  return make("b", "", weightSaid(found.take));
}

/**
 * @param {Mine} found
 * @param {DOMStringMap} data
 */
function words(found, data) {
  const you = (/** @type {(string | Node)[]} */ inside) => make("p", "sw-you-line", ...inside);
  const small = (/** @type {string} */ text) => make("p", "sw-small", text);
  const planned = found.planned && weightSaid(found.planned);
  if (found.state === "weight") {
    const weight = bold(found);
    const line = you(data.hand ? pieces("You: %(weight)s in each hand", { weight }) : pieces("You: %(weight)s", { weight }));
    if (!found.own || found.take === found.planned) return [line];
    return [line, small(say("The heaviest of your own that is not above the planned %(weight)s.", { weight: planned }))];
  }
  if (found.state === "easier") {
    const line = you(pieces("You: %(weight)s", { weight: make("b", "", say("the easier option")) }));
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
