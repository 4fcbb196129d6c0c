// The dates of a member's own weeks, on the page of a week or a session. Nothing where the page says the same already.
import { ownOf, planAt } from "../device/plans.js";
import { onChange } from "../device/store.js";
import { weeksFor } from "../logic/week.js";
import { pieces } from "../words.js";
import { dayElement } from "./days.js";
import { make } from "./make.js";

export class OwnDates extends HTMLElement {
  #until = new AbortController();

  async connectedCallback() {
    const plan = await planAt(this.dataset.days);
    if (!plan) return;
    this.#show(plan);
    onChange(() => this.#show(plan), this.#until.signal);
  }

  disconnectedCallback() {
    this.#until.abort();
  }

  /** @param {import("../logic/week.js").Plan} plan */
  #show(plan) {
    const own = ownOf(plan);
    const published = plan.groups.length === 1 && !own.moved.length;
    const week = published ? undefined : weeksFor(plan, own)[Number(this.dataset.week) - 1];
    const date = week?.days.find(({ place }) => place === this.dataset.place)?.date;
    this.replaceChildren();
    if (!week) return;
    const days = { first: dayElement(week.starts), last: dayElement(week.ends) };
    const said = date ? pieces("For you: %(day)s.", { day: dayElement(date) }) : pieces("For you: %(first)s to %(last)s.", days);
    this.append(make("p", "sw-hint", ...said));
  }
}
