// Shows today and this week of a plan. Without it the page lists the plan's phases, so nothing is lost.
import { logged } from "../device/member.js";
import { ownOf, planAt } from "../device/plans.js";
import { onChange } from "../device/store.js";
import { localDay } from "../logic/day.js";
import { doneOf, groupOf, missedBy, nextOf, standing, weeksFor } from "../logic/week.js";
import { many, pieces, say } from "../words.js";
import { dayElement, placeSaid } from "./days.js";
import { link, make } from "./make.js";

/** @typedef {import("../logic/week.js").Plan} Plan */
/** @typedef {import("../logic/week.js").PlannedDay & {date?: string | null}} Day */

export class Today extends HTMLElement {
  #until = new AbortController();

  async connectedCallback() {
    if (this.childElementCount) return;
    const plan = await planAt(this.dataset.days);
    // No connection and nothing kept: the list of phases below is still there.
    this.hidden = !plan;
    if (!plan?.weeks.length) return;
    this.show(plan);
    onChange(() => this.show(plan), this.#until.signal);
  }

  disconnectedCallback() {
    this.#until.abort();
  }

  /** @param {Plan} plan */
  show(plan) {
    const own = ownOf(plan);
    const weeks = weeksFor(plan, own);
    const done = doneOf(plan, logged());
    const box = make("div", "sw-today-list");
    if (weeks.length) box.append(...this.#dated(plan, weeks, done));
    else if (plan.groups.length) box.append(make("p", "", this.#choose(plan, say("Choose your group, and your days stand here."))));
    else box.append(...this.#undated(plan, done));
    const group = plan.groups.length > 1 ? groupOf(plan, own) : undefined;
    if (group) box.prepend(make("p", "sw-small", say("Your group: %(group)s.", { group: group.name })));
    this.replaceChildren(box);
  }

  /**
   * @param {Plan} plan
   * @param {import("../logic/week.js").Week[]} weeks
   * @param {Set<string>} done
   */
  #dated(plan, weeks, done) {
    const today = localDay(new Date());
    const now = standing(weeks, today);
    const line = make("p", "");
    const list = make("ul", "");
    const missed = missedBy(weeks, done, today);
    const parts = [line, list];
    if (missed) parts.push(make("p", "sw-hint", this.#missedSaid(missed.weeks), " ", this.#choose(plan, say("Carry on where you stopped"))));
    if (now.state === "after") {
      line.append(say("This plan has ended."));
      list.remove();
      return parts.filter((part) => part !== list);
    }
    if (now.state === "before") line.append(...pieces("Starts on %(day)s. First week:", { day: dayElement(now.week.starts) }));
    else if (now.state === "between") {
      const closed = plan.breaks.find(({ from, to }) => from <= today && today <= to);
      line.append(...pieces("A break. It goes on on %(day)s:", { day: dayElement(now.week.starts) }));
      if (closed) parts.unshift(make("p", "sw-small", closed.why));
    } else if (now.today.length) line.append(say("Today:"));
    else if (now.week.days.some(({ date }) => date === null)) line.append(say("This week, in this order, on days that suit you:"));
    else line.append(say("No session today. This week:"));
    for (const day of now.today.length ? now.today : now.week.days) list.append(this.#day(day, done.has(`${now.week.number} ${day.place}`)));
    list.append(make("li", "", link(this.#at(now.week.url), say("All of week %(week)s", { week: now.week.number }))));
    return parts;
  }

  /**
   * @param {Plan} plan
   * @param {Set<string>} done
   */
  #undated(plan, done) {
    const next = nextOf(plan, done);
    if (!next) return [make("p", "", say("Your log holds every session of this plan."))];
    const said = done.size ? say("Next, by your log, in week %(week)s:", { week: next.week.number }) : say("Begin when you like:");
    const day = this.#choose(plan, say("Choose your first day, and dates stand here"));
    return [make("p", "", said), make("ul", "", this.#day(next.day, false), make("li", "", day))];
  }

  /** @param {number} weeks */
  #missedSaid(weeks) {
    return many("Your log holds nothing of the last week.", "Your log holds nothing of the last %(num)s weeks.", weeks);
  }

  /**
   * @param {Day} day
   * @param {boolean} done
   */
  #day(day, done) {
    const when = day.date ? [dayElement(day.date)] : [placeSaid(day)];
    const at = day.at ? `, ${day.at}` : "";
    const item = make("li", "", link(this.#at(day.url), day.name), " ", ...when, `${at}, ${day.time}`);
    if (done) item.append(" ", make("span", "sw-tag", say("done")));
    return item;
  }

  /**
   * @param {Plan} plan
   * @param {string} words
   */
  #choose(plan, words) {
    return link(`${this.#at(plan.url)}#my-weeks`, words);
  }

  /** @param {string} url */
  #at(url) {
    return (this.dataset.root ?? "") + url;
  }
}
