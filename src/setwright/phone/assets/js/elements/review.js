// The physiotherapist's page: show, find and sort exercises, and prepare the lines that sign them off.
import { localDay } from "../logic/day.js";
import { missing, signOffLine, sorted, wanted } from "../logic/sign-off.js";
import { revealTools, the } from "./make.js";
import { many, say } from "../words.js";

/** @typedef {import("../logic/sign-off.js").Entry & {element: HTMLElement}} Item */

export class Review extends HTMLElement {
  #until = new AbortController();

  connectedCallback() {
    for (const tools of this.querySelectorAll("[data-hook='tools']")) revealTools(tools);
    const day = /** @type {HTMLInputElement} */ (the(this, "[data-hook='day']"));
    if (!day.value) day.value = localDay(new Date());
    const signal = this.#until.signal;
    for (const event of ["input", "change"]) this.addEventListener(event, () => this.#refresh(), { signal });
    the(this, "[data-hook='copy']").addEventListener("click", () => void this.#copy(), { signal });
    addEventListener("hashchange", () => this.#open(), { signal });
    // On paper nothing can be opened.
    addEventListener("beforeprint", () => this.#openAll(), { signal });
    this.#refresh();
    this.#open();
  }

  disconnectedCallback() {
    this.#until.abort();
    this.#until = new AbortController();
  }

  /** @returns {Item[]} */
  #entries() {
    return [...this.querySelectorAll("[data-exercise]")].map((found) => {
      const element = /** @type {HTMLElement} */ (found);
      const { exercise = "", name = "", status = "", pattern = "", date = "" } = element.dataset;
      return { element, exercise, name, status, pattern, date };
    });
  }

  /** @param {string} selector */
  #value(selector) {
    return /** @type {HTMLInputElement} */ (the(this, selector)).value;
  }

  #refresh() {
    const entries = this.#entries();
    const status = this.#value("[data-hook='show']");
    const text = this.#value("[data-hook='find']");
    let shown = 0;
    for (const entry of entries) {
      const show = wanted(entry, status, text);
      entry.element.hidden = !show;
      shown += show ? 1 : 0;
    }
    the(this, "[data-hook='count']").textContent = say("%(shown)s of %(all)s exercises", { shown, all: entries.length });
    const order = sorted(entries, this.#value("[data-hook='sort']"));
    // Moving an element takes the focus from what is inside it, so nothing moves that stands right already.
    if (order.some((entry, index) => entry !== entries[index])) {
      the(this, "[data-hook='list']").append(...order.map((entry) => entry.element));
    }
    this.#prepare(order);
  }

  /** @param {Item[]} entries */
  #prepare(entries) {
    const reviewer = {
      who: this.#value("[data-hook='who']"),
      role: this.#value("[data-hook='role']"),
      day: this.#value("[data-hook='day']"),
    };
    const ticked = entries.filter(({ element }) =>
      /** @type {HTMLInputElement} */ (the(element, "[data-hook='tick'] input")).checked,
    );
    const lacking = missing(reviewer);
    const lines = ticked.map(({ element, exercise }) =>
      signOffLine(exercise, reviewer, this.#note(element), digests(element)),
    );
    const out = /** @type {HTMLTextAreaElement} */ (the(this, "[data-hook='out']"));
    out.value = lacking ? "" : lines.map((line) => `${line}\n`).join("");
    const copy = /** @type {HTMLButtonElement} */ (the(this, "[data-hook='copy']"));
    copy.disabled = !out.value;
    const count = many("%(num)s exercise ticked.", "%(num)s exercises ticked.", ticked.length);
    the(this, "[data-hook='said']").textContent = ticked.length && lacking ? `${count} ${lacking}` : count;
  }

  /** @param {HTMLElement} element */
  #note(element) {
    return /** @type {HTMLInputElement} */ (the(element, "[data-hook='remark'] input")).value;
  }

  async #copy() {
    const out = /** @type {HTMLTextAreaElement} */ (the(this, "[data-hook='out']"));
    let said = say("Copied. Send the lines to the coach.");
    try {
      await navigator.clipboard.writeText(out.value);
    } catch {
      // Not allowed, or not over a secure connection: the reviewer copies by hand.
      out.focus();
      out.select();
      said = say("The lines are marked: copy them with the keyboard or the menu.");
    }
    the(this, "[data-hook='said']").textContent = said;
  }

  /** Opens the exercise that the address names. */
  #open() {
    const ident = decodeURIComponent(location.hash.slice(1));
    const item = this.#entries().find((entry) => entry.exercise === ident)?.element;
    if (!item) return;
    item.querySelector("details")?.setAttribute("open", "");
    item.scrollIntoView();
  }

  #openAll() {
    for (const more of this.querySelectorAll("details")) more.open = true;
  }
}

/** @param {HTMLElement} element */
function digests(element) {
  /** @type {Record<string, string>} */
  const found = {};
  for (const { name, value } of element.attributes) {
    if (name.startsWith("data-part-")) found[name.slice("data-part-".length)] = value;
  }
  return found;
}
