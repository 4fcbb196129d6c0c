// What the guided session shows: the step in large type, its clock, and three buttons within the thumb's reach.
import { beatAt, nameOf, paceOf } from "../logic/beat.js";
import { clock, isTimed, justDone, nextSet } from "../logic/run.js";
import { amountOf, closesSet, placeAmong, setOf } from "../logic/steps.js";
import { summary } from "./guide-end.js";
import { figureOf } from "./guide-figure.js";
import { correctSets, countField } from "./guide-forms.js";
import { actOnRounds, roundsMain, roundsOf } from "./guide-rounds.js";
import { button, link, make, the } from "./make.js";
import { saveFile } from "./rescue.js";
import { copyOf, inParagraph, partOf, some, under } from "./session-page.js";
import { getHelp, stopBox } from "./stop-box.js";
import { say } from "../words.js";

/** @typedef {import("./guide.js").Guide} Guide */
/** @typedef {import("../logic/steps.js").Step} Step */
/** @typedef {ReturnType<typeof import("../logic/run.js").clock>} Clock */

const LONGER_S = 30;
/** Two taps closer than this are one that slipped: the second would skip what the first one led to. */
const SLIP_MS = 400;
const TITLES = {
  "warm-up": say("Warm up"),
  rest: say("Rest"),
  change: say("Change over"),
  "cool-down": say("Cool down"),
  finish: say("All done"),
  block: "",
  set: "",
  rounds: "",
};

export class GuideView {
  #shown = "";
  /** @type {string[]} what a screen reader hears besides the title */
  #heardAlso = [];
  #warned = "";
  /** @type {HTMLInputElement | undefined} where a member writes how many an open-ended set came to */
  #asked;
  #acted = 0;
  #title = make("h2", "sw-s-title");
  #where = make("p", "sw-s-where");
  #progress = make("progress", "sw-s-progress");
  #body = make("div", "sw-s-body");
  #clock = make("div", "sw-s-clock");
  #warning = make("p", "sw-s-warning");
  #heard = make("p", "sw-s-heard");
  #back = button(say("Back"), "sw-button sw-quiet", () => this.guide.move(-1));
  #main = button("", "sw-button sw-s-main", () => this.#act());
  #side = button("", "sw-button sw-quiet", () => this.#aside());
  #stop = button(say("Stop"), "sw-button sw-s-stop", () => this.dialog.append(stopBox(this.guide)));
  dialog = make("dialog", "sw-session");

  /** @param {Guide} guide */
  constructor(guide) {
    this.guide = guide;
    this.#title.id = "sw-s-title";
    this.#progress.setAttribute("aria-label", say("How far the session is"));
    this.#progress.max = guide.steps.length - 1;
    this.#heard.setAttribute("role", "status");
    this.#warning.setAttribute("role", "alert");
    this.#clock.setAttribute("role", "timer");
    const top = make("div", "sw-s-top", this.#where, this.#stop, this.#progress);
    const buttons = make("div", "sw-s-buttons", this.#back, this.#main, this.#side);
    this.#body.tabIndex = 0;
    this.#body.setAttribute("role", "group");
    this.#body.setAttribute("aria-labelledby", "sw-s-title");
    this.dialog.append(top, this.#body, this.#warning, buttons, this.#heard);
    this.dialog.setAttribute("aria-labelledby", "sw-s-title");
    this.#main.autofocus = true;
    this.dialog.addEventListener("cancel", (event) => {
      event.preventDefault();
      this.guide.leave();
    });
    // The theme's keyboard shortcuts would leave the page.
    this.dialog.addEventListener("keydown", (event) => event.stopPropagation());
  }

  /**
   * Called several times a second: draws a new step, or just moves the clock.
   * @param {Clock} at
   */
  show(at) {
    const key = `${this.guide.run?.at}`;
    if (key !== this.#shown) {
      this.#shown = key;
      this.draw();
      this.#tell(this.#spoken());
    }
    this.#label(at);
    this.#move(at);
  }

  /**
   * @param {string} trouble
   * @param {boolean} unsaved whether sets are in danger, and not only the place in the session
   */
  warn(trouble, unsaved) {
    const now = `${trouble}${unsaved}`;
    if (this.#warned === now) return;
    this.#warned = now;
    this.#warning.replaceChildren(trouble);
    if (!unsaved) return;
    const keep = button(say("Save the sets as a file"), "sw-button", () => saveFile(this.guide));
    this.#warning.append(` ${say("The sets of this session are on this page only.")} `, keep);
  }

  draw() {
    const { step, blocks } = this.guide;
    const block = blocks[step.block];
    this.#progress.value = this.guide.run?.at ?? 0;
    this.dialog.dataset.step = step.kind;
    const round = step.kind === "set" ? this.#place(step) : "";
    const around = step.kind === "warm-up" || step.kind === "cool-down" || step.kind === "finish";
    this.#where.textContent = around ? (this.guide.session.session) : [block.name, round].filter(Boolean).join(" · ");
    const ended = step.kind === "finish" && this.guide.stopped;
    this.#title.textContent = ended ? say("Session ended") : TITLES[step.kind] || block.name;
    this.#clock.replaceChildren();
    this.#clock.hidden = false;
    delete this.#clock.dataset.drawn;
    this.#heardAlso = [];
    this.#asked = undefined;
    this.#body.replaceChildren(this.#title, ...this.#inside(step));
    this.#body.scrollTop = 0;
    this.#back.hidden = this.guide.run?.at === 0;
  }

  /** @param {Step} step */
  #place(step) {
    const { ramp, ...place } = placeAmong(step, this.guide.blocks);
    if (ramp) return say("Warm-up set %(number)s of %(all)s", place);
    if (this.guide.blocks[step.block].kind === "straight") return say("Set %(number)s of %(all)s", place);
    return say("Round %(number)s of %(all)s", place);
  }

  /**
   * @param {Step} step
   * @returns {Node[]}
   */
  #inside(step) {
    switch (step.kind) {
      case "set":
        return this.#set(step);
      case "rounds":
        return roundsOf(this.guide, step, this.#clock);
      case "warm-up":
      case "cool-down":
        return [make("p", "", say("Pick one. Its page opens here; this session waits for you.")), ...some(under(step.kind))];
      case "finish":
        return [...(this.guide.stopped ? getHelp() : []), summary(this.guide)];
      default:
        return this.#pause(step);
    }
  }

  /** @param {Step} step */
  #set(step) {
    const item = this.guide.itemOf(step);
    const other = this.guide.insteadOf(step);
    const { name } = this.guide.blocks[step.block].items[step.item];
    this.#title.textContent = other || name;
    const load = this.guide.loadOf(step);
    const side = step.side ? (step.side === 1 ? say("First side") : say("Other side")) : "";
    const weight = load.text && (other ? say("Less load, or none") : load.text);
    this.#heardAlso = [side, amountOf(step, this.guide.blocks), weight];
    const parts = [];
    if (other && !other.startsWith(name)) parts.push(make("p", "sw-s-instead", say("Instead of %(exercise)s", { exercise: name })));
    if (side) parts.push(make("p", "sw-s-side", side));
    const elsewhere = other && ownPage(item);
    parts.push(...partsOf(item, "choice", "clinician"), ...this.#optional(step, item));
    if (elsewhere) parts.push(elsewhere);
    else if (step.round === 1) parts.push(...partsOf(item, "grave", "not-for"));
    parts.push(...some(copyOf(partOf(item, "home-first"))));
    parts.push(...this.#amount(step, item));
    if (weight) parts.push(make("p", "sw-s-load", weight));
    if (!other) parts.push(...(load.table ?? []));
    if (load.advice && !other) parts.push(make("p", "sw-hint", load.advice));
    if (!other) parts.push(...some(copyOf(partOf(item, "feels"))));
    if (!elsewhere) parts.push(...partsOf(item, "bound", "height"));
    parts.push(this.#clock);
    if (setOf(step, this.guide.blocks).leave !== undefined && closesSet(step)) parts.push(this.#ask(step));
    if (!other) parts.push(...figureOf(item), ...partsOf(item, "cues"));
    if (!other) parts.push(...some(copyOf(partOf(item, "note"))));
    if (!elsewhere) parts.push(...(step.round === 1 ? partsOf(item, "stop", "care", "limits") : careOf(item)));
    parts.push(...this.#easier(step, item, name));
    return parts;
  }

  /**
   * What is to do: as the page shows it, or this set's own part where sets differ.
   * @param {Step} step
   * @param {HTMLElement} item
   */
  #amount(step, item) {
    const own = setOf(step, this.guide.blocks).amount;
    if (!own) return some(copyOf(partOf(item, "amount")));
    if (setOf(step, this.guide.blocks).leave !== undefined) return [make("p", "sw-amount sw-amount-small", make("b", "", own))];
    const [number, ...rest] = own.split(" ");
    return [make("p", "sw-amount", make("b", "", number), ` ${rest.join(" ")}`)];
  }

  /**
   * How many it were, where the plan cannot know it.
   * @param {Step} step
   */
  #ask(step) {
    const asked = countField(this.guide.entryOf(step)?.amount);
    this.#asked = asked;
    return make("label", "sw-s-ask", `${step.side ? say("Reps done, on the side with fewer") : say("Reps done")} `, asked);
  }

  /**
   * @param {Step} step
   * @param {HTMLElement} item
   * @param {string} name
   */
  #easier(step, item, name) {
    const way = partOf(item, "easier");
    if (this.guide.insteadOf(step)) {
      const back = button(say("Back to %(exercise)s", { exercise: name }), "sw-button sw-quiet", () => this.guide.instead(step, ""));
      return [...some(way ? inParagraph(way) : undefined), back];
    }
    if (!way) return [];
    const other = way.querySelector("a")?.textContent ?? say("%(exercise)s, easier", { exercise: name });
    const box = make("details", "sw-s-easier", make("summary", "", say("Too hard?")), ...some(inParagraph(way)));
    box.append(button(say("Do this instead"), "sw-button", () => this.guide.instead(step, other)));
    return [box];
  }

  /**
   * What may be left out says so, with a way on.
   * @param {Step} step
   * @param {HTMLElement} item
   */
  #optional(step, item) {
    const block = this.guide.blocks[step.block];
    if (block.optional) return [button(say("Leave this block out"), "sw-button sw-quiet", () => this.guide.leaveOut())];
    if (!block.items[step.item].optional) return [];
    return [...partsOf(item, "optional"), button(say("Leave this exercise out"), "sw-button sw-quiet", () => this.guide.leaveOut())];
  }

  /** @param {Step} step */
  #pause(step) {
    const { guide } = this;
    /** @type {Node[]} */
    const parts = [this.#clock];
    const next = guide.run && nextSet(guide.steps, guide.run.at);
    if (next) {
      const item = guide.blocks[next.block].items[next.item];
      const other = guide.insteadOf(next);
      const words = [other || item.name, amountOf(next, guide.blocks)].filter(Boolean).join(", ");
      const weight = other ? "" : guide.loadOf(next).text;
      parts.push(make("p", "sw-s-next", make("span", "sw-key", say("Next")), ` ${words}`));
      // The weight to fetch stands in the rest before it.
      if (weight) parts.push(make("p", "sw-s-load", weight));
      this.#heardAlso = [[`${say("Next")} ${words}`, weight].filter(Boolean).join(", ")];
      if (next.round === 1 && !(other && ownPage(guide.itemOf(next)))) parts.push(...careOf(guide.itemOf(next)));
    }
    if (step.kind !== "change" && guide.run) parts.push(correctSets(guide, justDone(guide.steps, guide.run.at)));
    return parts;
  }

  /** @param {Clock} at */
  #label(at) {
    const { step, blocks } = this.guide;
    const timed = isTimed(step, blocks);
    const going = at.state === "going" || at.state === "lead";
    let main = say("Go on");
    let side = "";
    if (step.kind === "rounds") {
      main = roundsMain(this.guide, at);
      side = at.state === "still" ? say("Skip") : at.state === "going" ? say("End now") : at.state === "over" ? say("One more round") : "";
    } else if (step.kind === "set" && this.#waits()) {
      main = at.state === "lead" ? say("Get ready") : say("Start");
      side = say("Skip");
    } else if (step.kind === "set") {
      main = timed ? (going ? say("Stop here") : say("Start")) : say("Done");
      side = say("Skip");
    } else if (step.kind === "finish") {
      main = say("Save");
    } else if (step.kind === "warm-up" || step.kind === "cool-down") {
      main = say("Done");
    } else {
      if (at.state !== "over" && step.kind === "rest") main = say("Skip rest");
      if (!(step.kind === "rest" && blocks[step.block].every)) side = say("+%(seconds)s s", { seconds: LONGER_S });
    }
    if (this.#main.textContent !== main) this.#main.textContent = main;
    if (this.#side.textContent !== side) this.#side.textContent = side;
    this.#side.hidden = !side;
  }

  /** Whether a block by the clock waits for a member to start it. */
  #waits() {
    const { step, blocks, run } = this.guide;
    return blocks[step.block].every !== undefined && (run?.zero === null || (run?.zero ?? 0) > Date.now());
  }

  #act() {
    const { step, blocks, run } = this.guide;
    const now = Date.now();
    if (Math.abs(now - this.#acted) < SLIP_MS) return;
    this.#acted = now;
    if (step.kind === "finish") this.guide.end();
    else if (step.kind === "rounds") actOnRounds(this.guide);
    else if (step.kind === "set" && this.#waits()) {
      if (run?.zero === null) this.guide.startClock();
    }
    else if (step.kind !== "set") this.guide.move(1);
    else if (isTimed(step, blocks) && run?.begun === null) this.guide.startClock();
    else if (this.#asked) this.#answered(this.#asked);
    else this.guide.done();
  }

  /** @param {HTMLInputElement} asked */
  #answered(asked) {
    const number = asked.value.trim() === "" ? NaN : Number(asked.value);
    if (Number.isInteger(number) && number >= 0 && number <= 1000) {
      this.guide.done(number);
      return;
    }
    asked.setAttribute("aria-invalid", "true");
    asked.focus();
    this.#tell(say("Write how many you did, or skip the set."));
  }

  #aside() {
    const { step, blocks, run } = this.guide;
    const over = step.kind === "rounds" && run && clock(step, blocks, run, Date.now()).state === "over";
    if (over) this.guide.counted(1);
    else if (step.kind === "set" || step.kind === "rounds") this.guide.move(1);
    else this.guide.longer(LONGER_S);
  }

  /** @param {Clock} at */
  #move(at) {
    const { step, blocks, run } = this.guide;
    this.#clock.dataset.state = at.state;
    const byTheClock = blocks[step.block].every !== undefined && step.kind === "set";
    if (byTheClock && !isTimed(step, blocks)) {
      const words = at.state === "lead" ? say("get ready") : say("until the next start");
      if (at.state === "over") this.#face("0", say("the next start is now: finish, and wait for the one after it"), 1);
      else this.#face(at.whole ? (at.state === "lead" ? String(at.left) : minutes(at.left)) : "", words, share(at));
      return;
    }
    if (step.kind === "set" && !isTimed(step, blocks)) {
      this.#beat(at, run?.begun !== null);
      return;
    }
    if (!at.whole) {
      this.#face("", "", 0);
      return;
    }
    if (at.state === "over") this.#face("0", say("over for %(time)s", { time: minutes(-at.left) }), 1);
    else this.#face(at.state === "lead" ? String(at.left) : minutes(at.left), at.state === "lead" ? say("get ready") : "", share(at));
    if (step.kind !== "change" && at.state === "going" && at.left === 10 && at.whole > 20) this.#tell(say("10 seconds left"));
    if (step.kind !== "set" && at.state === "over") this.#tell(say("%(pause)s is over", { pause: TITLES[step.kind] || say("Pause") }));
  }

  /**
   * @param {Clock} at
   * @param {boolean} running
   */
  #beat(at, running) {
    const { step, blocks } = this.guide;
    const { high, tempo, leave, up_to: end } = setOf(step, blocks);
    const most = leave === undefined ? high : (end ?? Infinity);
    const phases = tempo === undefined ? [] : blocks[step.block].items[step.item].tempos[tempo];
    if (phases.length < 2) return;
    if (!running) {
      if (this.#clock.dataset.drawn === "beat") return;
      this.#clock.dataset.drawn = "beat";
      const words = phases.map((phase) => paceOf(phase)).join(" · ");
      this.#clock.replaceChildren(
        make("p", "sw-s-tempo", words),
        button(say("Show the beat"), "sw-button sw-quiet", () => this.guide.startClock()),
      );
      return;
    }
    if (at.state === "lead") {
      this.#face(String(at.left), say("get ready"), share(at));
      return;
    }
    const beat = beatAt(phases, at.passed);
    if (beat.rep > most) this.#face("✓", say("%(number)s done", { number: most }), 1);
    else {
      const where = { phase: nameOf(phases[beat.index]), number: beat.rep, all: most };
      const words = leave === undefined ? say("%(phase)s · %(number)s of %(all)s", where) : say("%(phase)s · %(number)s", where);
      this.#face(String(beat.left), words, beat.share);
    }
  }

  /**
   * @param {string} big
   * @param {string} small
   * @param {number} filled 0 to 1
   */
  #face(big, small, filled) {
    if (this.#clock.dataset.drawn !== "face" || !this.#clock.childElementCount) {
      this.#clock.dataset.drawn = "face";
      const bar = make("div", "sw-s-bar", make("span", ""));
      this.#clock.replaceChildren(make("b", "sw-s-big"), make("span", "sw-s-small"), bar);
    }
    this.#clock.hidden = !big;
    const [number, words, bar] = this.#clock.children;
    if (number.textContent !== big) number.textContent = big;
    if (words.textContent !== small) words.textContent = small;
    the(bar, "span").style.setProperty("--sw-filled", String(Math.min(1, Math.max(0, filled))));
  }

  /** What a screen reader hears when a step begins: one sentence. */
  #spoken() {
    const { step } = this.guide;
    const lasts = step.kind === "rest" || step.kind === "block" ? say("%(number)s seconds", { number: step.seconds }) : "";
    return [this.#title.textContent, lasts, ...this.#heardAlso].filter(Boolean).join(", ");
  }

  /** @param {string} words */
  #tell(words) {
    if (this.#heard.textContent !== words) this.#heard.textContent = words;
  }
}

/**
 * Whom an exercise is not for, when to stop and who takes care, as the page says it.
 * @param {HTMLElement} item
 */
function careOf(item) {
  return partsOf(item, "grave", "not-for", "stop", "care", "limits");
}

/**
 * Copies of parts of an exercise on the page, those that are there.
 * @param {HTMLElement} item
 * @param {...string} names
 */
function partsOf(item, ...names) {
  return names.flatMap((name) => some(copyOf(partOf(item, name))));
}

/**
 * The way to the page of another exercise that is done instead: what stands here is said of the first one. Nothing where
 * the easier way is the same exercise, of which all of it still holds.
 * @param {HTMLElement} item
 */
function ownPage(item) {
  const way = partOf(item, "easier")?.querySelector("a");
  return way && make("p", "", link(way.href, say("Its own page says whom it is not for, and when to stop.")));
}

/** @param {Clock} at */
function share(at) {
  if (at.state === "lead") return 0;
  return at.whole ? at.passed / at.whole : 0;
}

/** @param {number} seconds */
function minutes(seconds) {
  return seconds < 60 ? String(seconds) : `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
