// The guided session: one step at a time. It keeps where it stands after every touch, and reads the time from the clock.
import { keepLogged, loggedAt, settings } from "../device/member.js";
import { Awake, readySound, signal } from "../device/signals.js";
import { onChange, read, ready, remove, write } from "../device/store.js";
import { underWay } from "../device/under-way.js";
import { localTime } from "../logic/log.js";
import { begin, caughtUp, clock, fingerprint, goTo, isTimed, LEAD_S, resumed, runningOn } from "../logic/run.js";
import { secondsOf, sideCount, sidesWith } from "../logic/sides.js";
import { after, placeAmong, sessionFrom, setOf } from "../logic/steps.js";
import { button, link, make } from "./make.js";
import { besideWeights, frontChosen, glanceChosen, homeFirst, itemAt, loadOf, openFromGlance } from "./session-page.js";
import { say } from "../words.js";

/** @typedef {import("../logic/steps.js").Step} Step */
/** @typedef {import("../logic/run.js").Run} Run */
/** @typedef {import("../logic/log.js").Logged} Logged */

const TICK_MS = 200;
/** How long a page is read before it fetches what no one has asked for yet. */
const QUIET_MS = 4000;

function viewLoaded() {
  return import("./guide-view.js");
}

export class Guide extends HTMLElement {
  /** @type {AbortController | undefined} */
  #until;
  /** @type {number | undefined} */
  #ticking;
  /** @type {import("./guide-view.js").GuideView | undefined} */
  #view;
  #awake = new Awake();
  #said = "";
  page = /** @type {ParentNode} */ (document);
  session = /** @type {import("../logic/steps.js").Session} */ ({});
  /** @type {Run | undefined} */
  run;
  /** Whether a member ended it at the stop box, perhaps for a sign to stop. */
  stopped = false;
  /** @type {Logged | undefined} */
  logged;
  /** Why the log is not saved on this device, and why the place is not; nothing where they are. */
  #unsaved = "";
  #astray = "";
  /** What was changed here and is not saved: sets by their place, "effort", "minutes". */
  /** @type {Set<string>} */
  #changed = new Set();

  connectedCallback() {
    this.page = this.closest("article") ?? document;
    const running = runningOn(read("now"), location.pathname);
    if (!this.#choose(running ?? settings().choices)) return;
    const until = new AbortController();
    this.#until = until;
    onChange((key) => {
      if (key === "settings") this.#choose(this.run?.choices ?? settings().choices);
      else if (key === "now" || key === "") this.#follow();
      else if (key === `log/${this.logged?.id}` && !document.hasFocus()) this.#reread();
    }, until.signal);
    document.addEventListener("click", openFromGlance, { signal: until.signal });
    document.addEventListener("visibilitychange", () => this.#seen(), { signal: until.signal });
    this.run = resumed(read("now"), location.pathname, fingerprint(this.blocks), Date.now(), this.steps.length);
    if (!this.run && running) this.#choose(settings().choices);
    if (!this.run) this.#offer();
    if (!this.run && location.hash !== "#go") return;
    // The way from the home page: once, and not again when the page is loaded anew.
    history.replaceState(history.state, "", location.pathname + location.search);
    this.open();
  }

  disconnectedCallback() {
    this.#until?.abort();
    this.#close();
  }

  /**
   * The session and its page as a member with some choices does it; false where the page has none.
   * @param {string[]} choices
   */
  #choose(choices) {
    const session = sessionFrom(this.page.querySelector("script#session")?.textContent, choices);
    if (!session) return false;
    this.session = session;
    frontChosen(this.page, choices);
    glanceChosen(this.page, choices);
    besideWeights(this.page);
    homeFirst(this.page, this.blocks, session.kit_names);
    return true;
  }

  /** The button on the page that starts a session, or goes on with it. */
  #offer() {
    const text = this.run ? say("Go on with the session") : say("Start the guided session");
    this.replaceChildren(button(text, "sw-button sw-start", () => this.open()));
    const trouble = this.#unsaved ? "" : ready();
    if (trouble) this.prepend(make("p", "sw-hint", `${trouble} ${UNKEPT}`));
    // What the session looks like comes with the first touch, or while the page is read, so that no signal is needed later.
    addEventListener("pointerdown", () => void viewLoaded().catch(() => undefined), { once: true, passive: true, signal: this.#until?.signal });
    window.setTimeout(() => void viewLoaded().catch(() => undefined), QUIET_MS);
  }

  open() {
    const other = this.run ? undefined : underWay();
    if (other) void import("./second-session.js").then(({ askFirst }) => this.append(askFirst(other, () => void this.#begin())));
    else void this.#begin();
  }

  async #begin() {
    readySound();
    this.run ??= begin(location.pathname, fingerprint(this.blocks), Date.now(), settings().choices);
    this.logged ??= loggedAt(localTime(this.run.started));
    try {
      const { GuideView } = await viewLoaded();
      if (!this.run || this.#view || !this.isConnected) return;
      this.#view = new GuideView(this);
    } catch {
      this.append(make("p", "sw-hint", say("The guided session could not be loaded. Try again where there is a signal.")));
      return;
    }
    this.replaceChildren(this.#view.dialog);
    this.#view.dialog.showModal();
    this.#ticking = window.setInterval(() => this.tick(), TICK_MS);
    void this.#awake.on();
    this.#keep();
    this.tick();
  }

  /** Another window put a set right. */
  #reread() {
    if (!this.logged || this.#unsaved) return;
    this.logged = loggedAt(this.logged.id) ?? this.logged;
    this.#view?.draw();
    this.tick();
  }

  /** Another window went on with this session, ended it or began another: it is the same one here. */
  #follow() {
    const now = read("now");
    if (!this.run || JSON.stringify(now) === JSON.stringify(this.run)) return;
    this.#choose(runningOn(now, location.pathname) ?? settings().choices);
    this.run = resumed(now, location.pathname, fingerprint(this.blocks), Date.now(), this.steps.length);
    if (!this.#unsaved) this.logged = this.run && loggedAt(localTime(this.run.started));
    if (this.run) this.tick();
    else if (!this.#unsaved) {
      this.#close();
      this.#offer();
    }
  }

  /** Back to the page; the session waits, and its clock goes on. */
  leave() {
    this.#close();
    this.#offer();
    this.querySelector("button")?.focus();
  }

  /** End the session for good; one that could not be saved stays until the member says otherwise. */
  end() {
    // There may be room by now.
    if (this.#unsaved) this.keepLog();
    if (this.#unsaved) {
      this.leave();
      const why = this.#unsaved;
      void import("./rescue.js").then(({ rescue }) => this.append(rescue(this, why, () => this.#drop())));
      return;
    }
    const kept = this.logged !== undefined;
    this.#drop();
    if (!kept) return;
    this.append(make("p", "sw-saved", `${say("Session saved on this device.")} `, link(this.dataset.log ?? "", say("My log"))));
  }

  #drop() {
    this.run = undefined;
    this.logged = undefined;
    this.#changed.clear();
    this.#unsaved = "";
    this.#tell();
    remove("now");
    this.#choose(settings().choices);
    this.leave();
  }

  #close() {
    window.clearInterval(this.#ticking);
    this.#awake.off();
    this.#view?.dialog.close();
    this.#view = undefined;
  }

  #seen() {
    if (!this.#view || document.visibilityState !== "visible") return;
    void this.#awake.on();
    this.tick();
  }

  get blocks() {
    return this.session.blocks;
  }

  get steps() {
    return this.session.steps;
  }

  get step() {
    return this.steps[this.run?.at ?? 0];
  }

  /** @param {Step} step what stands on the page about its exercise */
  itemOf(step) {
    return itemAt(this.page, step.block, step.item);
  }

  /** @param {Step} step how heavy, for this member */
  loadOf(step) {
    return loadOf(this.blocks[step.block].items[step.item], setOf(step, this.blocks), this.itemOf(step));
  }

  tick() {
    if (!this.run) return;
    const now = Date.now();
    const after = caughtUp(this.steps, this.blocks, this.run, now);
    if (after.done) {
      const { since } = after.run;
      this.run = after.run;
      this.#record(after.done, setOf(after.done, this.blocks).high);
      this.#keep();
      // Something that ended long ago, while the page was away, is not rung for.
      if (now - since < 2000) signal("end");
    } else if (after.run !== this.run) {
      this.run = after.run;
      this.#keep();
      if (now - after.run.since < 2000) signal("go");
    }
    const at = clock(this.step, this.blocks, this.run, now);
    this.#count(at);
    this.#view?.show(at);
  }

  /**
   * 3-2-1 and the end, each once.
   * @param {ReturnType<typeof clock>} at
   */
  #count(at) {
    if (!this.run) return;
    const counts = at.state === "lead" || (at.state === "going" && at.left <= 3 && at.left > 0);
    const now = `${this.run.at} ${at.state} ${counts ? at.left : ""}`;
    if (now === this.#said) return;
    const before = this.#said;
    this.#said = now;
    if (counts) signal("count");
    else if (at.state === "going" && before.startsWith(`${this.run.at} lead`)) signal("go");
    else if (at.state === "over" && before.startsWith(`${this.run.at} going`)) signal("end");
  }

  /** Start the clock of a hold or work time, or the beat of a tempo. */
  startClock() {
    if (!this.run) return;
    readySound();
    const now = Date.now();
    const zero = this.blocks[this.step.block].every ? now + LEAD_S * 1000 : null;
    this.run = { ...this.run, begun: now, zero, since: zero ?? this.run.since };
    this.#keep();
    this.tick();
  }

  /**
   * Count a round of as many as possible, or take one back.
   * @param {number} by
   */
  counted(by) {
    if (!this.run) return;
    this.run = { ...this.run, count: Math.max(0, this.run.count + by) };
    this.#keep();
    this.#view?.draw();
    this.tick();
  }

  /** The rounds that were counted go into the log, each exercise of each round. */
  #recordRounds() {
    const { step, run } = this;
    if (!run || step.kind !== "rounds") return;
    for (let round = 1; round <= run.count; round += 1) {
      this.blocks[step.block].items.forEach((_, item) => this.#record({ ...step, kind: "set", item, round }, undefined));
    }
  }

  /**
   * A set is done: note it and go on. A timed set that was stopped early keeps the seconds it lasted.
   * @param {number} [counted] how many a member did, where no plan could say it
   */
  done(counted) {
    if (!this.run) return;
    const at = clock(this.step, this.blocks, this.run, Date.now());
    const stopped = isTimed(this.step, this.blocks) && at.state !== "still";
    this.#record(this.step, counted ?? (stopped ? Math.max(0, Math.floor(at.passed)) : undefined));
    this.move(1);
  }

  /**
   * @param {number} by
   * @param {boolean} stopped whether that is because a member stopped early
   */
  move(by, stopped = false) {
    if (!this.run) return;
    this.stopped = stopped;
    this.#recordRounds();
    const left = by < 0 ? this.run.left : null;
    const at = left ?? Math.min(Math.max(this.run.at + by, 0), this.steps.length - 1);
    this.run = goTo(this.run, at, Date.now(), this.steps);
    this.#keep();
    this.tick();
  }

  /** Go on without what may be left out: the rest of an exercise, or of the whole block. */
  leaveOut() {
    if (!this.run) return;
    const { at } = this.run;
    this.move(after(this.steps, at, this.blocks[this.step.block].optional === true) - at);
  }

  /**
   * Straight to the end: what was done stays in the log.
   * @param {boolean} stopped whether a member stopped before the end, perhaps for a sign to stop
   */
  finish(stopped = false) {
    const left = this.run?.at ?? null;
    this.move(this.steps.length, stopped);
    // Ended by mistake: the way back leads to where it was.
    if (this.run) this.run = { ...this.run, left };
    this.#keep();
  }

  /** @param {number} seconds */
  longer(seconds) {
    if (!this.run) return;
    const over = clock(this.step, this.blocks, this.run, Date.now()).state === "over";
    const spent = over ? (Date.now() - this.run.since) / 1000 - this.step.seconds : this.run.more;
    this.run = { ...this.run, more: spent + seconds };
    this.#keep();
    this.tick();
  }

  /**
   * @param {Step} step
   * @param {string} name what is done instead; nothing to go back to the exercise itself
   */
  instead(step, name) {
    if (!this.run) return;
    const { [placeOf(step)]: _, ...others } = this.run.instead;
    this.run = { ...this.run, instead: name ? { ...others, [placeOf(step)]: name } : others };
    this.#keep();
    this.#view?.draw();
    this.tick();
  }

  /** @param {Step} step */
  insteadOf(step) {
    return this.run?.instead[placeOf(step)] ?? "";
  }

  /**
   * The log's entry of a set, if it was noted.
   * @param {Step} step
   */
  entryOf(step) {
    return this.logged?.sets.find((one) => one.place === noteOf(step));
  }

  /**
   * Put a noted set right.
   * @param {Step} step
   * @param {Partial<import("../logic/log.js").Entry>} values
   */
  correct(step, values) {
    const entry = this.entryOf(step);
    if (!entry) return;
    Object.assign(entry, values);
    this.keepLog(entry.place);
  }

  /**
   * Effort or minutes of the whole session, or what to take next time.
   * @param {{effort: number | null} | {minutes: number} | {next: string[]}} values
   */
  sum(values) {
    if (!this.logged || !this.run) return;
    Object.assign(this.logged, values);
    if ("minutes" in values) this.run = { ...this.run, minutes: values.minutes };
    this.keepLog(...Object.keys(values));
    this.#keep();
  }

  /**
   * @param {Step} step
   * @param {number | undefined} amount where it was not the whole amount
   */
  #record(step, amount) {
    if (!this.run || step.kind !== "set" || setOf(step, this.blocks).ramp) return;
    const block = this.blocks[step.block];
    const item = block.items[step.item];
    const load = this.loadOf(step);
    const other = this.insteadOf(step);
    const old = this.entryOf(step);
    const before = old ? (this.run.sides[noteOf(step)] ?? "") : "";
    const sides = sidesWith(before, step.side);
    if (sides) this.run = { ...this.run, sides: { ...this.run.sides, [noteOf(step)]: sides } };
    const lasted = amount === undefined ? undefined : secondsOf(before, step.side, old?.amount, amount);
    const entry = {
      exercise: item.exercise,
      name: other || item.name,
      block: block.name,
      set: placeAmong(step, this.blocks).number,
      measure: item.measure,
      amount: lasted ?? old?.amount ?? setOf(step, this.blocks).high,
      sides: sideCount(item.sides, sides),
      load: old?.load ?? (other ? "" : load.kept),
      effort: old?.effort ?? null,
      place: noteOf(step),
    };
    this.logged ??= {
      id: localTime(this.run.started),
      plan: this.session.plan,
      session: this.session.session,
      week: this.session.week,
      sets: [],
      effort: null,
      minutes: 0,
    };
    if (old) Object.assign(old, entry);
    else this.logged.sets.push(entry);
    if (this.logged.effort === null) this.logged.minutes = this.run.minutes || this.minutes;
    this.keepLog(entry.place, "minutes");
  }

  /** How long the session has lasted, in whole minutes. */
  get minutes() {
    return this.run ? Math.min(1440, Math.max(1, Math.round((Date.now() - this.run.started) / 60000))) : 0;
  }

  /**
   * Save the session, with what another window saved of it. Where that fails, it stays here and goes with the next one.
   * @param {...string} changed a set by its place, "effort" or "minutes"
   */
  keepLog(...changed) {
    if (!this.logged) return;
    for (const what of changed) this.#changed.add(what);
    const { session, failed } = keepLogged(this.logged, (what) => this.#changed.has(what));
    this.logged = session;
    this.#unsaved = failed;
    if (!failed) this.#changed.clear();
    this.#tell();
  }

  #keep() {
    this.#astray = write("now", this.run);
    this.#tell();
  }

  #tell() {
    this.#view?.warn(this.#unsaved || this.#astray, this.#unsaved !== "");
    // Nobody leaves the page with sets that are nowhere else, unasked.
    window.onbeforeunload = this.#unsaved ? (event) => event.preventDefault() : null;
  }
}

const UNKEPT = say(
  "A session can go on without it: its sets then stay on this page only, and at its end you can save them as a file.",
);

/** @param {Step} step */
function placeOf(step) {
  return `${step.block}.${step.item}`;
}

/** @param {Step} step */
function noteOf(step) {
  return `${placeOf(step)}.${step.round}`;
}
