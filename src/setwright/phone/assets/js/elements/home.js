// The one thing to do today: a session, the event, or a rest and what comes after it. Without it the plans are a list.
import { demonstrate, isDemonstrated, now, untilMidnight } from "../device/clock.js";
import { keepSettings, logged, settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { agendaOf, doneOf, lastDay, planOf } from "../logic/agenda.js";
import { localDay } from "../logic/week.js";
import { demonstration, dayCard, planPicker, weekList } from "./home-view.js";
import { make } from "./make.js";
import { say } from "../words.js";

/** @typedef {import("../logic/agenda.js").Plan} Plan */

export class Home extends HTMLElement {
  #until = new AbortController();
  /** @type {Plan[]} */
  #plans = [];
  /** @type {number | undefined} */
  #timer;

  async connectedCallback() {
    const files = (this.dataset.plans ?? "").split(" ").filter(Boolean);
    const { signal } = this.#until;
    try {
      const answers = await Promise.all(files.map((file) => fetch(file, { signal })));
      this.#plans = await Promise.all(answers.map((answer) => answer.json()));
    } catch {
      // No connection and nothing kept: the list of plans below is still there.
      this.hidden = true;
      return;
    }
    if (!this.#plans.length) return;
    demonstrate(this.dataset.demonstration);
    onChange(() => this.#show(), signal);
    addEventListener("pageshow", () => this.#show(), { signal });
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.#show(), { signal });
    this.#show();
    this.#foldPlans();
  }

  disconnectedCallback() {
    this.#until.abort();
    clearTimeout(this.#timer);
  }

  #show() {
    const focused = this.contains(document.activeElement);
    const today = localDay(now());
    const plan = planOf(this.#plans, settings().plan, today);
    /** @type {HTMLElement[]} */
    const parts = isDemonstrated() ? [demonstration(now())] : [];
    if (plan) parts.push(...this.#ofPlan(plan, today));
    else parts.push(planPicker(this.#going(today), (id) => this.#pick(id)));
    this.replaceChildren(...parts);
    if (focused) this.querySelector("a")?.focus();
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#show(), untilMidnight());
  }

  /**
   * @param {Plan} plan
   * @param {string} today
   */
  #ofPlan(plan, today) {
    const agenda = agendaOf(plan, today);
    const log = logged();
    const root = this.dataset.root ?? "";
    const mine = settings();
    const done = agenda.week ? doneOf(plan, agenda.week, log) : new Set();
    this.#offerOthers(plan, today);
    const parts = [dayCard({ plan, agenda, done, root, mine, settingsPage: this.dataset.settings ?? "", today })];
    if (agenda.week) parts.push(weekList(plan, agenda.week, done, root, today));
    return parts;
  }

  /** @param {string} today */
  #going(today) {
    return this.#plans.filter((plan) => lastDay(plan) >= today);
  }

  /** @param {string} id */
  #pick(id) {
    keepSettings({ ...settings(), plan: id });
    this.#show();
    this.querySelector("a")?.focus();
  }

  /** The list of plans is there for all; with this script it folds, and plans that have ended fold once more. */
  #foldPlans() {
    const list = document.querySelector(".sw-plans");
    const today = localDay(now());
    const ended = this.#plans.filter((plan) => lastDay(plan) < today);
    const cards = ended.flatMap(({ id }) => [...(list?.querySelectorAll(`[data-plan='${CSS.escape(id)}']`) ?? [])]);
    list?.removeAttribute("open");
    if (cards.length) list?.append(make("details", "sw-ended", make("summary", "", say("Plans that have ended")), ...cards));
  }

  /**
   * The other plans that a member may follow, among the list of plans.
   * @param {Plan} mine
   * @param {string} today
   */
  #offerOthers(mine, today) {
    const going = this.#going(today);
    document.querySelector(".sw-plans > .sw-pick-plan")?.remove();
    if (going.length < 2) return;
    document.querySelector(".sw-plans")?.firstElementChild?.after(planPicker(going, (id) => this.#pick(id), mine.id));
  }
}
