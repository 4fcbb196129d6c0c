// Reading a session's page: its blocks as plain data, and the parts of it that the guided session shows again.
import { settings } from "../device/member.js";
import { myLoad } from "./load.js";
import { the } from "./make.js";
import { say, weightSaid } from "../words.js";

/** @typedef {import("../logic/steps.js").Block} Block */

const BLOCK = ".sw-block[data-kind]";
const ITEM = ".sw-item[data-sets]";

/**
 * @param {ParentNode} page
 * @returns {Block[]}
 */
export function blocksOf(page) {
  return [...page.querySelectorAll(BLOCK)].map((section) => {
    const { kind, rest, change } = /** @type {HTMLElement} */ (section).dataset;
    return {
      name: section.getAttribute("aria-label") ?? "",
      kind: kind ?? "straight",
      rest: Number(rest),
      change: Number(change),
      items: itemsOf(section).map(itemFrom),
    };
  });
}

/**
 * The list item of an exercise on the page.
 * @param {ParentNode} page
 * @param {number} block
 * @param {number} item
 */
export function itemAt(page, block, item) {
  return itemsOf(page.querySelectorAll(BLOCK)[block])[item];
}

/**
 * @param {Element} section
 * @returns {HTMLElement[]}
 */
function itemsOf(section) {
  return [...section.querySelectorAll(ITEM)].map((item) => /** @type {HTMLElement} */ (item));
}

/** @param {HTMLElement} item */
function itemFrom(item) {
  const { exercise, sets, measure, amount, sides, tempo, rest } = item.dataset;
  return {
    exercise: exercise ?? "",
    name: the(item, ".sw-item-name").textContent?.trim() ?? "",
    sets: Number(sets),
    measure: /** @type {import("../logic/steps.js").Item["measure"]} */ (measure),
    amount: Number(amount),
    sides: Number(sides ?? 1),
    tempo: tempo ?? "",
    rest: Number(rest),
  };
}

/**
 * How heavy, in words: the member's own weight where the settings tell it, else what the page says.
 * @param {HTMLElement} item
 * @returns {{text: string, known: boolean, easier: boolean}} known: a weight that a log can keep
 */
export function loadOf(item) {
  const bands = item.querySelector("sw-load");
  const inHand = (/** @type {string} */ taken) => {
    const weight = weightSaid(taken);
    return item.dataset.hand ? say("%(weight)s in each hand", { weight }) : weight;
  };
  if (bands instanceof HTMLElement) {
    const mine = myLoad(bands.dataset, settings());
    if (mine.state === "weight") return { text: inHand(mine.take), known: true, easier: false };
    if (mine.state === "easier") return { text: say("the easier option"), known: false, easier: true };
  }
  if (item.dataset.weight) return { text: inHand(item.dataset.weight), known: true, easier: false };
  const text = item.querySelector(".sw-load-what")?.textContent?.trim() ?? "";
  return { text, known: "band" in item.dataset, easier: false };
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
 */
export function homeFirst(page) {
  const mine = settings();
  for (const section of page.querySelectorAll(BLOCK)) {
    for (const item of itemsOf(section)) {
      const lacking = (item.dataset.kit ?? "").split(" ").filter((name) => name && !(name in mine.kit));
      const missing = mine.place === "home" && lacking.length > 0;
      item.querySelector(".sw-home-first")?.remove();
      if (!missing) continue;
      const line = document.createElement("p");
      line.className = "sw-home-first";
      const how = item.querySelector(".sw-home > dd");
      const without = say("Without %(kit)s:", { kit: lacking.reduce((most, last) => say("%(most)s and %(last)s", { most, last })) });
      line.append(`${without} `, ...(copyOf(how)?.childNodes ?? [EASIER]));
      the(item, ".sw-item-head").after(line);
    }
  }
}

const EASIER = say("there is no home option. Do the easier one, or leave it out.");
