// The session's page: what stands there about each exercise, and the parts of it that the guided session shows again.
import { settings } from "../device/member.js";
import { inOtherUnit } from "../logic/exact.js";
import { pickOf } from "../logic/steps.js";
import { easierAtHome, easierOption } from "./easier.js";
import { inBothUnits, isAway, myLoad, outside } from "./load.js";
import { make, the } from "./make.js";
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
 * A part of it: head, page, grave, not-for, amount, bound, height, note, cues, stop, care, limits, easier, home.
 * @param {ParentNode} item
 * @param {string} name
 * @returns {HTMLElement | null}
 */
export function partOf(item, name) {
  const parts = /** @type {HTMLElement[]} */ ([...item.querySelectorAll(`[data-part='${name}']`)]);
  return parts.find((part) => !part.closest("[data-hook='instead']")) ?? null;
}

/**
 * What a member's choices lead to comes to the front; what it stands for is folded in its place.
 * @param {ParentNode} page
 * @param {string[]} choices
 */
export function frontChosen(page, choices) {
  for (const item of /** @type {NodeListOf<HTMLElement>} */ (page.querySelectorAll("[data-item]:has(> [data-hook='instead'])"))) {
    if (item.dataset.chosen) swap(item, item.dataset.chosen);
    const ways = /** @type {HTMLElement[]} */ ([...item.querySelectorAll(":scope > [data-hook='instead']")]);
    const pick = pickOf(ways.map((way) => ({ choices: way.dataset.for?.split(" ") ?? [] })), choices);
    if (pick) swap(item, String(pick));
    if (pick) item.dataset.chosen = String(pick);
    else delete item.dataset.chosen;
  }
}

/**
 * In the list at a glance, too, each line is the member's own.
 * @param {ParentNode} page
 * @param {string[]} choices
 */
export function glanceChosen(page, choices) {
  for (const line of page.querySelectorAll("[data-hook='glance']")) {
    const [main, ...ways] = /** @type {HTMLElement[]} */ ([...line.children]);
    const pick = pickOf(ways.map((way) => ({ choices: way.dataset.for?.split(" ") ?? [] })), choices);
    [main, ...ways].forEach((way, place) => way.toggleAttribute("hidden", place !== pick));
  }
}

/**
 * A touch on a line of the list opens the exercise to which it leads.
 * @param {Event} event
 */
export function openFromGlance(event) {
  const line = /** @type {Element} */ (event.target).closest("[data-hook='at-a-glance'] a");
  const item = line && document.getElementById(line.getAttribute("href")?.slice(1) ?? "");
  item?.querySelector("[data-hook='fold']")?.toggleAttribute("open", true);
}

/**
 * A weight that is the same for everyone, with the same in the member's own unit behind it, where that is another one.
 * @param {ParentNode} page
 */
export function besideWeights(page) {
  const mine = settings();
  for (const load of /** @type {NodeListOf<HTMLElement>} */ (page.querySelectorAll("[data-weight]"))) {
    load.querySelector("[data-hook='same']")?.remove();
    const [number, unit] = (load.dataset.weight ?? "").split(" ");
    if (!mine.unit || mine.unit === unit) continue;
    const same = document.createElement("span");
    same.className = "sw-same";
    same.dataset.hook = "same";
    same.textContent = ` (${weightSaid(inOtherUnit(number, unit))})`;
    load.append(same);
  }
}

/**
 * @param {HTMLElement} item
 * @param {string} way
 */
function swap(item, way) {
  const folded = the(item, `:scope > [data-hook='instead'][data-way='${way}']`);
  const inside = the(folded, ":scope > [data-hook='inside']");
  const front = [...item.children].filter((part) => !part.matches("[data-hook='instead']"));
  const chosen = [...inside.children];
  inside.replaceChildren(...front);
  item.prepend(...chosen);
  // In front it is one line of the list; what lies in a fold already needs no second one.
  for (const fold of item.querySelectorAll("[data-hook='fold']")) fold.toggleAttribute("open", fold.parentElement !== item);
  // What the fold holds now is said by the other of its two lines.
  for (const line of /** @type {HTMLElement[]} */ ([...the(folded, "summary").children])) line.hidden = !line.hidden;
}

/**
 * How heavy, in words: the member's own weight where the settings tell it, else what the page says.
 * @param {Item} item
 * @param {Set} set
 * @param {ParentNode} place where it stands on the page
 * @returns {{text: string, kept: string, advice?: string, table?: HTMLElement[]}} kept: what a log can keep of it, nothing
 *   where no weight is known; advice: what to do where the tables have none; table: the weights to choose from, where the
 *   settings do not say which
 */
export function loadOf(item, set, place) {
  const load = set.load === undefined ? undefined : item.loads[set.load];
  if (!load) return { text: "", kept: "" };
  const mine = settings();
  if (isAway(load.kit, mine)) return { text: say("the home option"), kept: "" };
  const inHand = (/** @type {string} */ weight) => {
    if (load.way === "help") return say("%(weight)s of help", { weight });
    if (load.way === "added") return say("%(weight)s added to your own weight", { weight });
    return load.per_hand ? say("%(weight)s in each hand", { weight }) : weight;
  };
  const taken = (/** @type {string} */ weight) => ({ text: inHand(inBothUnits(weight, mine)), kept: inHand(weightSaid(weight)) });
  if (load.bands) {
    const of = load.of === "1RM" ? "1rm" : "body-weight";
    const found = myLoad({ of, bands: load.bands, kit: load.kit, exercise: item.exercise, way: load.way }, mine);
    if (found.state === "weight") return taken(found.take);
    if (found.state === "below" || found.state === "above") {
      return { text: load.text, kept: "", advice: outside(found.state === "below", of === "1rm") };
    }
    if (found.state === "easier") return { text: easierOption(place), kept: "" };
    if (found.state === "unset") return { text: load.text, kept: "", table: tableOf(place, load.bands) };
  }
  if (load.weight) return taken(load.weight);
  return { text: load.text, kept: load.band === undefined ? "" : load.text };
}

/**
 * What to take next time, once every set reached the top of its range with the weight that was planned; nothing where the
 * sets have several loads, where another weight was taken, or where nothing owned and allowed comes next.
 * @param {Item} item
 * @param {Set[]} sets
 * @param {string[]} taken what the log has of each set
 * @param {ParentNode} place where it stands on the page
 */
export function nextOf(item, sets, taken, place) {
  const load = item.loads.length === 1 && sets.every((set) => set.load === 0) ? item.loads[0] : undefined;
  if (!load || taken.some((one, set) => one !== loadOf(item, sets[set], place).kept)) return "";
  const next = load.next_bands ? { ...load, bands: load.next_bands } : { ...load, bands: undefined, weight: load.next_weight };
  if (!next.bands && !next.weight) return "";
  const found = loadOf({ ...item, loads: [next] }, sets[0], place);
  return found.kept === taken[0] ? "" : found.kept && found.text;
}

/**
 * A copy of the weights to take, with the line above them.
 * @param {ParentNode} place
 * @param {string} bands which of them, as data
 */
function tableOf(place, bands) {
  const mine = [...place.querySelectorAll("sw-load:not([data-short])")].find((load) => /** @type {HTMLElement} */ (load).dataset.bands === bands);
  const table = mine?.querySelector("dl") ?? null;
  return [table?.previousElementSibling ?? null, table].flatMap((part) => some(copyOf(part)));
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
 * A copy of what a part says, as a paragraph.
 * @param {Element} part
 */
export function inParagraph(part) {
  const copy = copyOf(part);
  return copy && make("p", "", ...copy.childNodes);
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
 * @param {Record<string, string>} names what members call kit, where that is not its id
 */
export function homeFirst(page, blocks, names = {}) {
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
      const without = say("Without %(kit)s:", { kit: lacking.map((name) => names[name] ?? name).reduce((most, last) => say("%(most)s and %(last)s", { most, last })) });
      line.append(`${without} `, ...(copyOf(partOf(item, "home"))?.childNodes ?? easierAtHome(item)));
      partOf(item, "head")?.parentElement?.after(line);
    });
  });
}

/**
 * @param {HTMLElement | undefined} part
 * @returns {HTMLElement[]}
 */
export function some(part) {
  return part ? [part] : [];
}
