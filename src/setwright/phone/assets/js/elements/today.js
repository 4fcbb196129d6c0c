// Shows today and this week of a plan. Without it the page lists the plan's phases, so nothing is lost.
import { localDay, standing } from "../logic/week.js";
import { pieces, say } from "../words.js";

export class Today extends HTMLElement {
  async connectedCallback() {
    if (this.childElementCount) return;
    const address = this.dataset.days;
    if (!address) return;
    try {
      const answer = await fetch(address);
      if (answer.ok) this.show(await answer.json());
      else this.hidden = true;
    } catch {
      this.hidden = true;
      // No connection and nothing kept: the list of phases below is still there.
    }
  }

  /** @param {{weeks: import("../logic/week.js").Week[]}} plan */
  show(plan) {
    if (!plan.weeks.length) return;
    const now = standing(plan.weeks, localDay(new Date()));
    const box = document.createElement("div");
    box.className = "sw-today-list";
    const line = document.createElement("p");
    const list = document.createElement("ul");
    if (now.state === "after") {
      line.append(say("This plan has ended."));
    } else if (now.state === "before") {
      const day = this.time(plan.weeks[0].starts, plan.weeks[0].said);
      line.append(...pieces("Starts on %(day)s. First week:", { day }));
    } else if (now.today) {
      line.append(say("Today:"));
    } else {
      line.append(say("No session today. This week:"));
    }
    if (now.state !== "after") {
      const days = now.today ? [now.today] : now.week.days;
      for (const day of days) list.append(this.day(day));
      const week = document.createElement("li");
      week.append(this.link(now.week.url, say("All of week %(week)s", { week: now.week.number })));
      list.append(week);
    }
    box.append(line, list);
    this.append(box);
  }

  /** @param {import("../logic/week.js").Day} day */
  day(day) {
    const item = document.createElement("li");
    item.append(this.link(day.url, day.name), " ", this.time(day.date, day.said), `, ${day.time}`);
    return item;
  }

  /**
   * @param {string} url
   * @param {string} text
   */
  link(url, text) {
    const link = document.createElement("a");
    link.href = (this.dataset.root ?? "") + url;
    link.textContent = text;
    return link;
  }

  /**
   * @param {string} date
   * @param {string} said
   */
  time(date, said) {
    const time = document.createElement("time");
    time.dateTime = date;
    time.textContent = said;
    return time;
  }
}
