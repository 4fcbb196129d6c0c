// The hall's screen: a session for a whole group on one clock. It keeps where it stands for this window only.
import { Awake, readySound } from "../device/signals.js";
import { figureOf } from "../elements/guide-figure.js";
import { button, make } from "../elements/make.js";
import { copyOf, itemAt, partOf } from "../elements/session-page.js";
import { many, say } from "../words.js";
import { caughtUp, goTo, longer, secondsLeft, turned } from "./clock.js";
import { courseOf } from "./course.js";
import { sessionAt } from "./session.js";
import { sound } from "./sound.js";

/** @typedef {import("./course.js").Moment} Moment */
/** @typedef {{at: number, ends: number | null, left: number | null, divided: boolean, silent: boolean}} Kept */

const TICK_MS = 200;
const CUE_MS = 6000;
const LONGER_S = 15;
const KEYS = /** @type {Record<string, "turn" | "on" | "back" | "longer" | "silent" | "leave">} */ ({
  " ": "turn", Enter: "turn", MediaPlayPause: "turn", k: "turn",
  ArrowRight: "on", PageDown: "on", MediaTrackNext: "on", n: "on",
  ArrowLeft: "back", PageUp: "back", MediaTrackPrevious: "back", p: "back",
  ArrowUp: "longer", "+": "longer", m: "silent", Escape: "leave",
});

class Hall extends HTMLElement {
  #awake = new Awake();
  #ticking = 0;
  #shown = -1;
  #second = -1;
  #place = new URLSearchParams(location.search).get("session") ?? "";
  /** @type {Kept} */
  #stand = { at: 0, ends: null, left: null, divided: true, silent: false };
  /** @type {Moment[]} */
  #course = [];
  /** @type {NonNullable<Awaited<ReturnType<typeof sessionAt>>> | undefined} */
  #found;
  #screen = make("div", "sw-hall");
  #clock = make("p", "sw-hall-clock");
  #cue = make("p", "sw-hall-cue");

  async connectedCallback() {
    const root = new URL(this.dataset.root ?? "", location.href).href;
    this.#found = await sessionAt(root, this.#place);
    for (const hint of document.querySelectorAll(".sw-needs-script")) hint.toggleAttribute("hidden", this.#found !== undefined);
    if (!this.#found) {
      this.replaceChildren(make("p", "", say("Choose a session from the list: its screen opens from there.")));
      return;
    }
    this.#stand = this.#kept() ?? this.#stand;
    this.#course = courseOf(this.#found.session, this.#stand.divided);
    this.#screen.setAttribute("role", "region");
    this.#screen.setAttribute("aria-label", say("Hall's screen"));
    this.replaceChildren(this.#screen);
    document.documentElement.classList.add("sw-in-the-hall");
    document.addEventListener("keydown", this.#key);
    this.#ticking = window.setInterval(() => this.#tick(), TICK_MS);
    this.#tick();
  }

  disconnectedCallback() {
    clearInterval(this.#ticking);
    document.removeEventListener("keydown", this.#key);
    document.documentElement.classList.remove("sw-in-the-hall");
    this.#awake.off();
  }

  /** @returns {Kept | undefined} */
  #kept() {
    try {
      const kept = JSON.parse(sessionStorage.getItem(this.#name) ?? "null");
      return kept && Number.isInteger(kept.at) ? kept : undefined;
    } catch {
      return undefined;
    }
  }

  get #name() {
    return `setwright:hall:${this.#place}`;
  }

  /** @param {Partial<Kept>} change */
  #set(change) {
    this.#stand = { ...this.#stand, ...change };
    try {
      sessionStorage.setItem(this.#name, JSON.stringify(this.#stand));
    } catch {
      // A window that keeps nothing: the screen runs all the same, and a reload begins anew.
    }
    this.#tick();
  }

  /** @param {KeyboardEvent} event */
  #key = (event) => {
    const act = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    const pressed = event.target instanceof HTMLElement && event.target.closest("button, a, input");
    if (pressed && (event.key === " " || event.key === "Enter")) return;
    if (this.#stand.at === 0 && event.key.startsWith("Page")) return;
    event.preventDefault();
    this.#do(act);
  };

  /** @param {"turn" | "on" | "back" | "longer" | "silent" | "leave" | "divided"} act */
  #do(act) {
    const { at } = this.#stand;
    const now = Date.now();
    readySound();
    void this.#awake.on();
    const byHand = this.#stand.ends === null && this.#stand.left === null;
    if (act === "leave") location.assign(new URL(this.#place.replace("plans/", "group/"), new URL(this.dataset.root ?? "", location.href)));
    else if (act === "on" || (act === "turn" && byHand)) this.#set(goTo(this.#course, at + 1, now));
    else if (act === "back") this.#set(goTo(this.#course, at - 1, now));
    else if (act === "turn") this.#set(turned(this.#stand, now));
    else if (act === "longer") this.#set(longer(this.#stand, LONGER_S));
    else if (act === "silent") this.#set({ silent: !this.#stand.silent });
    else if (this.#found) {
      this.#course = courseOf(this.#found.session, !this.#stand.divided);
      this.#shown = -1;
      this.#set({ divided: !this.#stand.divided, at: 0, ends: null, left: null });
    }
  }

  #tick() {
    const now = Date.now();
    const before = this.#stand.at;
    const here = caughtUp(this.#course, this.#stand, now);
    if (here.at !== before) this.#set(here);
    if (this.#shown !== this.#stand.at) this.#draw();
    const moment = this.#course[this.#stand.at];
    const left = secondsLeft(this.#stand, now);
    const text = left === null ? "" : `${Math.floor(left / 60)}:${String(left % 60).padStart(2, "0")}`;
    if (this.#clock.textContent !== text) this.#clock.textContent = text;
    this.#screen.toggleAttribute("data-paused", this.#stand.left !== null);
    for (const one of this.#screen.querySelectorAll("[data-act='turn']")) one.textContent = this.#turnSaid();
    for (const one of this.#screen.querySelectorAll("[data-act='silent']")) one.setAttribute("aria-pressed", String(this.#stand.silent));
    if (left !== null && left !== this.#second && left > 0 && left <= 3 && this.#stand.left === null) this.#signal("count");
    this.#second = left ?? -1;
    const cues = this.#cues(moment);
    const cue = cues.length ? cues[Math.floor(now / CUE_MS) % cues.length] : "";
    if (this.#cue.textContent !== cue) this.#cue.textContent = cue;
  }

  #turnSaid() {
    if (this.#stand.left !== null) return say("Go on");
    return this.#stand.ends === null ? say("Start") : say("Pause");
  }

  /** @param {"count" | "go" | "end"} what */
  #signal(what) {
    if (!this.#stand.silent) sound(what);
    else this.#screen.animate?.([{ opacity: 1 }, { opacity: 0.3 }, { opacity: 1 }], { duration: what === "count" ? 150 : 500 });
  }

  /** @param {Moment} moment */
  #cues(moment) {
    const { page } = this.#found ?? {};
    if (!page || moment.kind !== "work") return [];
    return moment.items.filter((item) => item >= 0).flatMap((item) => {
      const said = [...(partOf(itemAt(page, moment.block, item), "cues")?.children ?? [])].map((cue) => cue.textContent ?? "");
      return moment.items.length > 1 ? said.map((cue) => say("%(exercise)s: %(cue)s", { exercise: this.#nameOf(moment.block, item), cue })) : said;
    });
  }

  /**
   * @param {number} block
   * @param {number} item
   */
  #nameOf(block, item) {
    return item < 0 ? say("Rest") : this.#found?.session.blocks[block].items[item].name ?? "";
  }

  #draw() {
    const found = this.#found;
    if (!found) return;
    const first = this.#shown < 0;
    this.#shown = this.#stand.at;
    const moment = this.#course[this.#stand.at];
    if (!first) this.#signal(moment.kind === "work" ? "go" : "end");
    const focused = this.#screen.contains(document.activeElement) ? /** @type {HTMLElement} */ (document.activeElement).dataset.act : undefined;
    const body = moment.kind === "begin" ? this.#opening(found) : this.#moment(found, moment);
    this.#screen.dataset.kind = moment.kind;
    this.#screen.dataset.parts = String(moment.items.length);
    this.#screen.replaceChildren(...body, this.#buttons(moment));
    if (focused) /** @type {HTMLElement | null} */ (this.#screen.querySelector(`[data-act='${focused}']`))?.focus();
  }

  /**
   * Before the start: what is on, who should leave it out, when to stop, whom to ask.
   * @param {NonNullable<Awaited<ReturnType<typeof sessionAt>>>} found
   */
  #opening({ page, session, hints }) {
    const stop = copyOf(page.querySelector("#stop-if ~ ul"));
    const notice = copyOf(page.querySelector(".sw-notice"));
    const blocks = session.blocks.map((block, index) => {
      const lines = block.items.flatMap((_, item) => {
        const place = itemAt(page, index, item);
        const said = ["grave", "not-for", "stop", "care", "limits"].flatMap((part) => copyOf(partOf(place, part)) ?? []);
        return said.length ? [make("h3", "", block.items[item].name), ...said] : [];
      });
      return make("section", "", ...lines);
    });
    const inside = [
      make("h2", "", session.session),
      ...hints.map((hint) => make("p", "sw-hint", hint)),
      make("h3", "", say("Stop if")),
      ...(stop ? [stop] : []),
      ...(notice ? [notice] : []),
      make("h3", "", say("Who should take care")),
      ...blocks,
    ];
    const place = make("div", "sw-hall-opening", ...inside);
    place.tabIndex = 0;
    place.setAttribute("role", "region");
    place.setAttribute("aria-label", say("Before the start"));
    return [place];
  }

  /**
   * @param {NonNullable<Awaited<ReturnType<typeof sessionAt>>>} found
   * @param {Moment} moment
   */
  #moment({ page, session }, moment) {
    const block = session.blocks[moment.block];
    const titles = /** @type {Record<string, string>} */ ({
      "warm-up": say("Warm-up"), rest: say("Rest"), change: say("Change over"), block: say("Next block"),
      "cool-down": say("Cool-down"), end: say("Done"),
    });
    const inBlock = moment.items.length > 0;
    const round = moment.round ? `${block.name} · ${say("round %(round)s of %(rounds)s", { round: moment.round, rounds: moment.rounds })}` : block.name;
    const where = make("p", "sw-hall-where", inBlock ? round : session.session);
    const title = titles[moment.kind];
    const parts = moment.items.map((item, part) => {
      const name = make("p", "sw-hall-name", this.#nameOf(moment.block, item));
      if (item < 0) return make("div", "sw-hall-part", name);
      const place = itemAt(page, moment.block, item);
      const amount = make("p", "sw-hall-amount", block.items[item].amount);
      const whose = moment.items.length > 1 ? [make("p", "sw-hall-whose", this.#whose(moment.items.length, part))] : [];
      const working = moment.kind === "work";
      return make("div", "sw-hall-part", ...whose, name, amount, ...(working ? [...this.#loads(place), ...figureOf(place)] : []));
    });
    this.#cue = make("p", "sw-hall-cue");
    this.#cue.setAttribute("aria-live", "polite");
    const next = this.#next(this.#stand.at);
    const lead = make("div", "sw-hall-lead", ...(title ? [make("p", "sw-hall-title", title)] : []), this.#clock);
    const middle = parts.length ? [make("div", "sw-hall-parts", ...parts)] : [];
    return [where, lead, ...middle, this.#cue, ...(next ? [make("p", "sw-hall-next", next)] : [])];
  }

  /**
   * @param {number} parts
   * @param {number} part
   */
  #whose(parts, part) {
    if (parts > 2) return say("Station %(number)s", { number: part + 1 });
    return part ? say("Second half") : say("First half");
  }

  /**
   * Loads as bands, so that each finds their own.
   * @param {HTMLElement} place
   */
  #loads(place) {
    const own = (/** @type {Element} */ part) => !part.closest(".sw-instead, .sw-ramp");
    const bands = [...place.querySelectorAll("dl.sw-bands")].filter(own).flatMap((one) => copyOf(one) ?? []);
    const loads = [...place.querySelectorAll(".sw-load")].filter(own).flatMap((one) => copyOf(one) ?? []);
    return [...loads, ...bands];
  }

  /**
   * @param {number} at
   */
  #next(at) {
    const next = this.#course.slice(at + 1).find((moment) => moment.kind === "work" || moment.kind === "cool-down" || moment.kind === "end");
    if (!next) return "";
    if (next.kind !== "work") return next.kind === "end" ? "" : say("Next: %(what)s", { what: say("Cool-down") });
    const names = next.items.map((item) => this.#nameOf(next.block, item));
    const parted = names.length > 2 && this.#course[at].block === next.block && this.#course[at].kind !== "begin";
    return say("Next: %(what)s", { what: parted ? say("everybody moves on one station") : names.join(" · ") });
  }

  /** @param {Moment} moment */
  #buttons(moment) {
    const act = (/** @type {string} */ text, /** @type {"turn" | "on" | "back" | "longer" | "silent" | "leave" | "divided"} */ what) => {
      const made = button(text, "sw-hall-button", () => this.#do(what));
      made.dataset.act = what;
      return made;
    };
    const bar = [act(say("Start"), "turn")];
    if (moment.kind === "begin") bar.push(act(this.#stand.divided ? say("All together") : say("Halves and stations"), "divided"));
    else bar.push(act(say("Back"), "back"), act(say("Next"), "on"), act(many("+%(num)s s", "+%(num)s s", LONGER_S), "longer"));
    bar.push(act(say("Silent"), "silent"), act(say("Leave"), "leave"));
    return make("div", "sw-hall-buttons", ...bar);
  }
}

if (!customElements.get("sw-hall")) customElements.define("sw-hall", Hall);
