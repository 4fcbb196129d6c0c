// A member's own weeks of a plan: the group or the first day, weeks that were missed, and the dates as a file.
import { demonstrate, now } from "../device/clock.js";
import { fileName, save } from "../device/files.js";
import { logged } from "../device/member.js";
import { keepOwn, ownOf, planAt } from "../device/plans.js";
import { onChange } from "../device/store.js";
import { isDay, localDay } from "../logic/day.js";
import { behind, doneOf, effectOf, eventOf, groupOf, missedBy, standing, wayBack, weeksFor } from "../logic/week.js";
import { many, pieces, say } from "../words.js";
import { dayElement, daySaid, illOrInjured, leftIn, startEasier } from "./days.js";
import { button, link, make, revealTools } from "./make.js";

/** @typedef {import("../logic/week.js").Plan} Plan */
/** @typedef {import("../logic/week.js").Own} Own */
/** @typedef {import("../logic/week.js").Week} Week */

export class MyWeeks extends HTMLElement {
  #until = new AbortController();
  #status = make("p", "sw-status");

  async connectedCallback() {
    this.#status.setAttribute("role", "status");
    const plan = await planAt(this.dataset.days);
    if (!plan?.weeks.length) return;
    demonstrate(this.dataset.demonstration);
    this.#show(plan);
    onChange((key) => (key === "settings" || !key) && this.#show(plan), this.#until.signal);
    revealTools(this);
    // A link that leads here came before there was anything to see.
    if (location.hash === "#my-weeks") document.getElementById("my-weeks")?.scrollIntoView();
  }

  disconnectedCallback() {
    this.#until.abort();
  }

  /** @param {Plan} plan */
  #show(plan) {
    const own = ownOf(plan);
    const weeks = weeksFor(plan, own);
    const parts = [];
    if (plan.groups.length > 1) parts.push(this.#groups(plan, own));
    else if (!plan.groups.length) parts.push(this.#firstDay(plan, own, weeks));
    const left = own.left.flatMap((one) => {
      const said = leftIn(plan, one);
      const undo = button(say("Undo"), "sw-link", () => this.#keep(plan, { ...own, left: own.left.filter((other) => other !== one) }));
      return said ? [make("li", "", `${said} `, undo)] : [];
    });
    if (left.length) parts.push(make("ul", "sw-plain", ...left));
    if (weeks.length) parts.push(this.#span(plan, own, weeks), ...this.#moves(plan, own, weeks), this.#file(plan, weeks));
    const at = this.contains(document.activeElement) ? document.activeElement?.id : "";
    this.replaceChildren(...parts, this.#status);
    if (at) document.getElementById(at)?.focus();
  }

  /**
   * @param {Plan} plan
   * @param {Own} own
   */
  #groups(plan, own) {
    const select = make("select", "");
    select.id = `sw-group-${plan.ident}`;
    const none = new Option(say("not chosen yet"), "");
    select.append(none, ...plan.groups.map(({ name, slug }) => new Option(name, slug)));
    select.value = groupOf(plan, own)?.slug ?? "";
    select.addEventListener("change", () => this.#keep(plan, { ...own, group: select.value, moved: [] }));
    return field(select, say("Your group"), select);
  }

  /**
   * @param {Plan} plan
   * @param {Own} own
   * @param {Week[]} weeks
   */
  #firstDay(plan, own, weeks) {
    const input = make("input", "");
    input.type = "date";
    input.id = `sw-begins-${plan.ident}`;
    input.value = own.begins ?? "";
    input.addEventListener("change", () => {
      if (input.value !== "" && !isDay(input.value)) return;
      this.#keep(plan, { ...own, begins: input.value || null, moved: [] });
    });
    const row = field(input, say("On which day do you begin?"), input);
    if (own.begins) row.append(" ", button(say("Leave it open"), "sw-button sw-quiet", () => this.#keep(plan, { ...own, begins: null, moved: [] })));
    const later = own.begins && weeks.length && weeks[0].starts !== own.begins;
    const said = !own.begins
      ? say("You may leave it open. Then your log is the guide: next is the first session that it does not hold.")
      : later
        ? say("The weeks of this plan start on a Monday: your first one is that of %(day)s.", { day: daySaid(weeks[0].starts) })
        : "";
    return make("div", "", row, make("p", "sw-small", said));
  }

  /**
   * @param {Plan} plan
   * @param {Own} own
   * @param {Week[]} weeks
   */
  #span(plan, own, weeks) {
    const values = { first: dayElement(weeks[0].starts), last: dayElement(weeks[weeks.length - 1].ends) };
    const said = pieces("Your weeks run from %(first)s to %(last)s.", values);
    const stands = standing(weeks, localDay(now()));
    markWeek(stands.state === "during" ? stands.week.number : 0);
    const where = stands.state === "during" ? ` ${say("This is week %(week)s.", { week: stands.week.number })}` : "";
    const event = plan.event?.week && !groupOf(plan, own) ? eventOf(plan, weeks) : undefined;
    const about = event ? [" ", ...pieces("%(event)s: %(day)s.", { event: plan.event?.name ?? "", day: dayElement(event) })] : [];
    return make("p", "", ...said, where, ...about);
  }

  /**
   * Missed weeks: what was moved already, and the way to move more.
   * @param {Plan} plan
   * @param {Own} own
   * @param {Week[]} weeks
   */
  #moves(plan, own, weeks) {
    const today = localDay(now());
    const missed = missedBy(weeks, behind(doneOf(plan, logged()), own), today);
    const from = make("select", "", ...plan.weeks.map(({ number }) => new Option(say("Week %(week)s", { week: number }), String(number))));
    from.id = `sw-from-${plan.ident}`;
    const by = make("select", "", ...Array.from({ length: Math.max(12, missed?.weeks ?? 0) }, (_, index) => new Option(many("%(num)s week", "%(num)s weeks", index + 1), String(index + 1))));
    by.id = `sw-by-${plan.ident}`;
    from.value = String(missed?.week ?? standing(weeks, today).week.number);
    by.value = String(missed?.weeks ?? 1);
    const says = make("div", "sw-effect");
    const preview = () => says.replaceChildren(...this.#effect(plan, own, { week: Number(from.value), weeks: Number(by.value) }));
    for (const select of [from, by]) select.addEventListener("change", preview);
    preview();
    const act = button(say("Carry on where I stopped"), "sw-button", () => {
      this.#keep(plan, effectOf(plan, own, { week: Number(from.value), weeks: Number(by.value) }).moved);
    });
    const box = make(
      "details",
      "sw-missed",
      make("summary", "", say("I missed a week")),
      make("p", "sw-small", say("Only your own weeks move, on this device. The club's dates stay as they are.")),
      field(from, say("The next one for me is"), from),
      field(by, say("It begins later by"), by),
      says,
      make("p", "", act),
    );
    box.open = missed !== undefined;
    const back = own.moved.map((move, index) => {
      const said = many("From week %(week)s on, %(num)s week later. ", "From week %(week)s on, %(num)s weeks later. ", move.weeks, { week: move.week });
      const undo = button(say("Undo"), "sw-link", () => this.#keep(plan, { ...own, moved: own.moved.filter((_, place) => place !== index) }));
      return make("li", "", said, undo);
    });
    return back.length ? [make("ul", "sw-plain", ...back), box] : [box];
  }

  /**
   * What a move does, in words: to the plan's end, the event and the taper, and how to come back after a long gap.
   * @param {Plan} plan
   * @param {Own} own
   * @param {{week: number, weeks: number}} move
   */
  #effect(plan, own, move) {
    const effect = effectOf(plan, own, move);
    const lines = [make("p", "", ...pieces("Your last week then ends on %(day)s.", { day: dayElement(effect.ends) }))];
    if (effect.event && plan.event) {
      const event = { event: plan.event.name, day: daySaid(effect.event) };
      if (effect.late) {
        const late = many(
          "%(num)s week of the plan then begins after %(event)s on %(day)s.",
          "%(num)s weeks of the plan then begin after %(event)s on %(day)s.",
          effect.late,
          event,
        );
        const taper = effect.tapersLate ? ` ${say("The taper, which should come just before it, is among them.")}` : "";
        lines.push(make("p", "sw-hint", `${late}${taper} ${say("Ask the coach which weeks to leave out, or stay with the club's dates.")}`));
      } else if (effect.taper) {
        lines.push(make("p", "", say("Everything still begins before %(event)s on %(day)s.", event), " ", say("Your taper then begins on %(day)s. The closer it ends to the event, the better.", { day: daySaid(effect.taper) })));
      } else lines.push(make("p", "", say("Everything still begins before %(event)s on %(day)s.", event)));
    } else if (plan.event) lines.push(make("p", "", say("%(event)s moves with your weeks, if you may choose its day. If it stays where it is, ask the coach which weeks to leave out.", { event: plan.event.name })));
    if (move.weeks >= plan.long_gap) lines.push(make("p", "sw-hint", ...this.#comingBack(plan, move.week)));
    lines.push(make("p", "sw-small", illOrInjured()));
    return lines;
  }

  /**
   * @param {Plan} plan
   * @param {number} week
   */
  #comingBack(plan, week) {
    const back = wayBack(plan, week);
    const easier = startEasier();
    if (!back) return [easier];
    const there = link((this.dataset.root ?? "") + back.url, say("week %(week)s, a lighter one", { week: back.number }));
    return [`${easier} `, ...pieces("Do %(there)s, before you carry on.", { there })];
  }

  /**
   * @param {Plan} plan
   * @param {Week[]} weeks
   */
  #file(plan, weeks) {
    const act = button(say("Save my dates as a calendar file"), "sw-button sw-quiet", async () => {
      const { calendarOf } = await import("../logic/calendar.js");
      const stamp = `${new Date().toISOString().slice(0, 19).replace(/[-:]/g, "")}Z`;
      const root = new URL(this.dataset.root ?? "./", location.href).href;
      save(`${fileName(plan.plan)}.ics`, "text/calendar;charset=utf-8", calendarOf(plan, weeks, root, stamp));
      this.#tell(say("The file went to your downloads. Open it with your calendar."));
    });
    return make("p", "sw-actions", act);
  }

  /**
   * @param {Plan} plan
   * @param {Own} own
   */
  #keep(plan, own) {
    const trouble = keepOwn(plan, own);
    this.#show(plan);
    this.#tell(trouble || say("Saved on this device."));
  }

  /** @param {string} words */
  #tell(words) {
    this.#status.textContent = words;
  }
}

/**
 * @param {HTMLElement} labelled
 * @param {string} words
 * @param {HTMLElement} inside
 */
function field(labelled, words, inside) {
  const label = make("label", "", words);
  label.htmlFor = labelled.id;
  return make("div", "sw-field", label, " ", inside);
}

/**
 * Mark the member's week among those of the page, in its list and below the bars.
 * @param {number} number none where it is 0
 */
function markWeek(number) {
  for (const old of document.querySelectorAll("[data-week][aria-current]")) {
    old.removeAttribute("aria-current");
    old.querySelector("[data-part='here']")?.remove();
  }
  for (const one of document.querySelectorAll(`:is(tr, li)[data-week='${number}']`)) {
    one.setAttribute("aria-current", "date");
    const here = make("span", "sw-tag", say("you are here"));
    here.dataset.part = "here";
    one.querySelector("[data-part='when']")?.append(" ", here);
  }
}
