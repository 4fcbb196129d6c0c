// The one thing to do today: a session, the event, or a rest and what comes after it. Without it the plans are a list.
import { demonstrate, isDemonstrated, now, untilMidnight } from "../device/clock.js";
import { keepSettings, logged, settings } from "../device/member.js";
import { keepOwn, ownOf } from "../device/plans.js";
import { onChange } from "../device/store.js";
import { agendaOf, asLived, doneIn, isOver, nextPlans, planOf } from "../logic/agenda.js";
import { localDay } from "../logic/day.js";
import { behind, doneOf } from "../logic/week.js";
import { demonstration, dayCard, planPicker, weekList } from "./home-view.js";
import { make } from "./make.js";
import { say } from "../words.js";

/** @typedef {import("../logic/agenda.js").Plan} Plan */

export class Home extends HTMLElement {
  #until = new AbortController();
  /** @type {import("../logic/week.js").Plan[]} */
  #published = [];
  /** @type {number | undefined} */
  #timer;

  async connectedCallback() {
    const files = (this.dataset.plans ?? "").split(" ").filter(Boolean);
    const { signal } = this.#until;
    try {
      const answers = await Promise.all(files.map((file) => fetch(file, { signal })));
      this.#published = await Promise.all(answers.map((answer) => answer.json()));
    } catch {
      // No connection and nothing kept: the list of plans below is still there.
      this.hidden = true;
      return;
    }
    if (!this.#published.length) return;
    demonstrate(this.dataset.demonstration);
    onChange(() => this.#show(), signal);
    addEventListener("pageshow", () => this.#show(), { signal });
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.#show(), { signal });
    this.#show();
    this.#foldPlans();
  }

  /** The plans as they fall for this member today. */
  get #plans() {
    const log = logged();
    return this.#published.map((plan) => asLived(plan, ownOf(plan), behind(doneOf(plan, log), ownOf(plan))));
  }

  disconnectedCallback() {
    this.#until.abort();
    clearTimeout(this.#timer);
  }

  #show() {
    const focused = this.contains(document.activeElement);
    const today = localDay(now());
    const plan = planOf(this.#plans, { picked: settings().plan, logged: logged()[0]?.plan }, today);
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
    const own = ownOf(plan.of);
    const done = doneOf(plan.of, logged());
    const held = behind(done, own);
    const root = this.dataset.root ?? "";
    const mine = settings();
    const ticked = agenda.week ? doneIn(agenda.week, done) : new Set();
    const passed = agenda.week ? doneIn(agenda.week, held) : new Set();
    const leave = (/** @type {string[]} */ left) => {
      keepOwn(plan.of, { ...own, left });
      this.querySelector("a")?.focus();
    };
    this.#offerOthers(plan, today);
    const last = logged().find((one) => one.plan === plan.plan)?.id.slice(0, 10);
    const next = nextPlans(plan, this.#plans, today);
    const day = { plan, agenda, done: ticked, passed, held, left: own.left, leave, root, mine, settingsPage: this.dataset.settings ?? "", today, follows: next.follows, last };
    const parts = [dayCard(day)];
    if (agenda.state === "after" && next.plans.length) {
      const title = next.follows ? say("It goes on in") : say("Other plans");
      parts.push(planPicker(next.plans, (id) => this.#pick(id), { title }));
    } else if (agenda.week) parts.push(weekList(plan, agenda.week, ticked, passed, root, today));
    return parts;
  }

  /** @param {string} today */
  #going(today) {
    return this.#plans.filter((plan) => !isOver(plan, today));
  }

  /** @param {string} id */
  #pick(id) {
    keepSettings({ ...settings(), plan: id });
    this.#show();
    this.querySelector("a")?.focus();
  }

  /** The list of plans is there for all; with this script it folds, and plans that have ended fold once more. */
  #foldPlans() {
    const list = document.querySelector("[data-hook='plans']");
    const today = localDay(now());
    const ended = this.#plans.filter((plan) => isOver(plan, today));
    const cards = ended.flatMap(({ ident }) => [...(list?.querySelectorAll(`[data-plan='${CSS.escape(ident)}']`) ?? [])]);
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
    const title = say("My plan");
    document.querySelector("[data-hook='pick-plan']")?.remove();
    if (!going.some(({ ident }) => ident !== mine.ident) || isOver(mine, today)) return;
    document.querySelector("[data-hook='plans']")?.firstElementChild?.after(planPicker(going, (id) => this.#pick(id), { title, mine: mine.ident }));
  }
}
