// The session's page: what stands there about each exercise, and the parts of it that the guided session shows again.
import { settings } from "../device/member.js";
import { isAway, myLoad, outside } from "./load.js";
import { the } from "./make.js";
import { say, weightSaid } from "../words.js";

/** @typedef {import("../logic/steps.js").Block} Block */
/** @typedef {import("../logic/steps.js").Item} Item */
/** @typedef {import("../logic/steps.js").Set} Set */

/**
 * What stands on the page about one exercise.
 * @param {ParentNode} page
 * @param {number} block
 * @param {number} item
 */
export function itemAt(page, block, item) {
  return the(page, `[data-item='${block}.${item}']`);
}

/**
 * A part of it: head, grave, not-for, amount, bound, height, note, cues, care, easier, home.
 * @param {ParentNode} item
 * @param {string} name
 * @returns {HTMLElement | null}
 */
export function partOf(item, name) {
  return item.querySelector(`[data-part='${name}']`);
}

/**
 * How heavy, in words: the member's own weight where the settings tell it, else what the page says.
 * @param {Item} item
 * @param {Set} set
 * @returns {{text: string, known: boolean, advice?: string}} known: a weight that a log can keep
 */
export function loadOf(item, set) {
  const load = set.load === undefined ? undefined : item.loads[set.load];
  if (!load) return { text: "", known: false };
  if (isAway(load.kit, settings())) return { text: say("the home option"), known: false };
  const inHand = (/** @type {string} */ taken) => {
    const weight = weightSaid(taken);
    return load.per_hand ? say("%(weight)s in each hand", { weight }) : weight;
  };
  if (load.bands) {
    const of = load.of === "1RM" ? "1rm" : "body-weight";
    const mine = myLoad({ of, bands: load.bands, kit: load.kit, exercise: item.exercise }, settings());
    if (mine.state === "weight") return { text: inHand(mine.take), known: true };
    if (mine.state === "below" || mine.state === "above") {
      return { text: load.text, known: false, advice: outside(mine.state === "below", of === "1rm") };
    }
    if (mine.state === "easier") return { text: say("the easier option"), known: false };
  }
  if (load.weight) return { text: inHand(load.weight), known: true };
  return { text: load.text, known: load.band !== undefined };
}

/**
 * A copy of a part of the page without its anchors' names.
 * @param {Element | null} part
 * @returns {HTMLElement | undefined}
 */
export function copyOf(part) {
  if (!part) return undefined;
  const copy = /** @type {HTMLElement} */ (part.cloneNode(true));
  copy.removeAttribute("id");
  for (const inner of copy.querySelectorAll("[id]")) inner.removeAttribute("id");
  return copy;
}

/**
 * What stands under a heading of the page, up to the next one: the list after "Stop if", for example.
 * @param {string} id
 */
export function under(id) {
  return copyOf(document.querySelector(`#${id} ~ ul`));
}

/**
 * At home, what the member lacks comes first: the home option moves above the doses of such an exercise.
 * @param {ParentNode} page
 * @param {Block[]} blocks
 */
export function homeFirst(page, blocks) {
  const mine = settings();
  blocks.forEach((block, index) => {
    block.items.forEach(({ kit, loads }, place) => {
      const item = itemAt(page, index, place);
      const lacking = kit.filter((name) => !(name in mine.kit));
      partOf(item, "home-first")?.remove();
      item.toggleAttribute("data-away", loads.some((load) => isAway(load.kit, mine)));
      if (mine.place !== "home" || !lacking.length) return;
      const line = document.createElement("p");
      line.className = "sw-home-first";
      line.dataset.part = "home-first";
      const without = say("Without %(kit)s:", { kit: lacking.reduce((most, last) => say("%(most)s and %(last)s", { most, last })) });
      line.append(`${without} `, ...(copyOf(partOf(item, "home"))?.childNodes ?? [EASIER]));
      partOf(item, "head")?.after(line);
    });
  });
}

const EASIER = say("there is no home option. Do the easier one, or leave it out.");

/**
 * @param {HTMLElement | undefined} part
 * @returns {HTMLElement[]}
 */
export function some(part) {
  return part ? [part] : [];
}
