// My log: session load by week as a chart, and every session with its sets.
import { fileName, isWanted, open, save } from "../device/files.js";
import { addLogged, eraseUnreadable, forget, keepLogged, logged, unreadable } from "../device/member.js";
import { csvOf, sessionsIn } from "../logic/csv.js";
import { localTime, restored, said, sessionLoad, untilWeekOf, weeksOf } from "../logic/log.js";
import { object } from "../logic/settings.js";
import { effortSelect } from "./guide-forms.js";
import { button, make, revealTools } from "./make.js";
import { LANGUAGE, many, say } from "../words.js";

/** @typedef {import("../logic/log.js").Logged} Logged */

const WEEKS_SHOWN = 16;
const SESSIONS_SHOWN = 200;
const SVG = "http://www.w3.org/2000/svg";

export class Log extends HTMLElement {
  #status = make("p", "sw-status");

  connectedCallback() {
    this.#status.setAttribute("role", "status");
    this.#show();
    revealTools(this);
  }

  #show() {
    const sessions = logged();
    const parts = [];
    if (sessions.length) parts.push(chart(sessions));
    else parts.push(make("p", "", say("Nothing yet. The guided session on a session's page fills this page.")));
    parts.push(this.#actions(sessions.length > 0), this.#status, ...this.#unreadable());
    this.replaceChildren(...parts);
    this.#list(sessions, 0);
  }

  /**
   * The sessions from one on, and a button for the older ones.
   * @param {Logged[]} sessions
   * @param {number} from
   */
  #list(sessions, from) {
    const to = from + SESSIONS_SHOWN;
    this.append(...sessions.slice(from, to).map((one) => this.#session(one)));
    if (to >= sessions.length) return;
    const more = button(say("Show older sessions (%(count)s)", { count: sessions.length - to }), "sw-button sw-quiet", () => {
      more.remove();
      this.#list(sessions, to);
    });
    this.append(more);
  }

  /** @param {boolean} any */
  #actions(any) {
    const row = make("p", "sw-actions");
    const table = button(say("Save as a table (CSV)"), "sw-button", () => {
      save(this.#name("log", "csv"), "text/csv;charset=utf-8", csvOf(logged(), this.dataset.club ?? ""));
      this.#tell(say("The table went to your downloads."));
    });
    table.disabled = !any;
    row.append(table, " ", button(say("Restore from a file"), "sw-button sw-quiet", () => void this.#restore()));
    return row;
  }

  /** What lies in the log and cannot be read: said, kept, and the member's to save or delete. */
  #unreadable() {
    const bad = unreadable();
    const count = Object.keys(bad).length;
    if (!count) return [];
    const words = many(
      "%(num)s entry cannot be read and is not shown.",
      "%(num)s entries cannot be read and are not shown.",
      count,
    );
    const keep = button(say("Save what cannot be read"), "sw-button sw-quiet", () => {
      save(this.#name("unreadable", "json"), "application/json", JSON.stringify(bad, null, 1));
      this.#tell(say("It went to your downloads, as it stands in the storage."));
    });
    const drop = button(say("Delete what cannot be read"), "sw-link", () => {
      if (!confirm(say("Delete what cannot be read from this device?"))) return;
      eraseUnreadable();
      this.#show();
    });
    return [make("div", "sw-hint sw-unreadable", make("p", "", `${words} ${say("Nothing was deleted.")}`), make("p", "sw-actions", keep, " ", drop))];
  }

  /**
   * @param {string} what
   * @param {string} ending
   */
  #name(what, ending) {
    return `${fileName(this.dataset.club ?? "")}-${what}-${localTime(Date.now()).slice(0, 10)}.${ending}`;
  }

  async #restore() {
    const text = await open(".csv,.json,text/csv,application/json");
    if (!text) return;
    const here = this.dataset.club ?? "";
    const found = sessionsIn(text, here) ?? saved(text);
    if (!found) {
      this.#tell(say("This is neither a table nor a copy that these pages saved. Nothing was changed."));
      return;
    }
    if (!isWanted(found.of, here)) {
      this.#tell(say("Nothing was changed."));
      return;
    }
    const tally = addLogged(found.sessions);
    this.#show();
    const sets = restored({ ...tally, skipped: tally.skipped + found.skipped });
    const done = say("Restored: %(sessions)s", { sessions: sets });
    this.#tell(tally.failed || `${done} ${say("Others in the log are as they were.")}`);
  }

  /** @param {Logged} one */
  #session(one) {
    const when = new Date(one.id);
    const day = when.toLocaleDateString(LANGUAGE, { weekday: "long", day: "numeric", month: "long", year: "numeric" });
    const box = make("details", "sw-logged", make("summary", "", make("b", "", one.session), ` ${day}`));
    // Its sets are only drawn once they are looked at: a log may hold years.
    box.addEventListener("toggle", () => box.append(...this.#inside(one)), { once: true });
    return box;
  }

  /** @param {Logged} one */
  #inside(one) {
    const list = make("ul", "sw-plain");
    for (const set of one.sets) {
      const words = [said(set), set.load, set.effort === null ? "" : say("effort %(effort)s", { effort: set.effort })].filter(Boolean).join(", ");
      list.append(make("li", "", `${set.set}. ${set.name}: ${words}`));
    }
    const sum = make("p", "sw-muted", sumOf(one));
    const effort = effortSelect(one.effort);
    effort.addEventListener("change", () => {
      one.effort = effort.value === "" ? null : Number(effort.value);
      const { session, failed } = keepLogged(one, (what) => what === "effort");
      this.#tell(failed || say("Saved on this device."));
      sum.textContent = sumOf(session);
      this.querySelector("figure")?.replaceWith(chart(logged()));
    });
    const drop = button(say("Delete this session"), "sw-link", () => {
      if (!confirm(say("Delete this session from the log?"))) return;
      forget(one.id);
      this.#show();
    });
    return [sum, list, ...(one.next?.length ? [make("ul", "sw-plain", ...one.next.map((line) => make("li", "", line)))] : []), make("p", "", make("label", "", `${say("Effort of the whole session")} `, effort)), drop];
  }

  /** @param {string} words */
  #tell(words) {
    this.#status.textContent = words;
  }
}

/** @param {Logged} one */
function sumOf(one) {
  const parts = [
    say("Week %(week)s of %(plan)s", { week: one.week, plan: one.plan }),
    many("%(num)s set", "%(num)s sets", one.sets.length),
    say("%(minutes)s min", { minutes: one.minutes }),
  ];
  if (one.effort !== null) {
    parts.push(say("session effort %(effort)s", { effort: one.effort }), say("session load %(load)s", { load: sessionLoad(one) }));
  }
  return parts.join(", ");
}

/**
 * The log in a copy that "My settings" saved.
 * @param {string} text
 */
function saved(text) {
  try {
    const { log, of } = object(JSON.parse(text));
    return Array.isArray(log) ? { sessions: /** @type {unknown[]} */ (log), skipped: 0, of } : undefined;
  } catch {
    return undefined;
  }
}

/** @param {Logged[]} sessions */
function chart(sessions) {
  const { until, later } = untilWeekOf(sessions, localTime(Date.now()));
  const weeks = weeksOf(until, WEEKS_SHOWN);
  const highest = Math.max(0, ...weeks.map((week) => week.load));
  const most = Math.max(1, highest);
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", "sw-chart sw-log-chart");
  svg.setAttribute("viewBox", `0 -2 ${Math.max(8, weeks.length) * 12} 64`);
  svg.setAttribute("preserveAspectRatio", "none");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", say("Session load in each week; the numbers follow as a list"));
  weeks.forEach((week, index) => {
    const bar = document.createElementNS(SVG, "rect");
    const height = Math.round((week.load / most) * 600) / 10;
    const at = { x: index * 12, y: 60 - height, width: 9, height };
    for (const [name, value] of Object.entries(at)) bar.setAttribute(name, String(value));
    bar.setAttribute("class", "sw-bar");
    svg.append(bar);
  });
  const rows = weeks.map((week) => {
    const sessions = many("%(num)s session", "%(num)s sessions", week.sessions);
    return make("li", "", `${dayOf(week.monday)}: `, make("b", "", String(week.load)), `, ${sessions}`);
  });
  const list = make("details", "sw-how", make("summary", "", say("The numbers")), make("ul", "sw-plain", ...rows.reverse()));
  const words = say("Session load by week, %(first)s to %(last)s. Highest: %(highest)s.", {
    first: dayOf(weeks[0].monday),
    last: dayOf(weeks[weeks.length - 1].monday),
    highest,
  });
  const left = many(
    "%(num)s session is dated later than this week, and is not in the chart.",
    "%(num)s sessions are dated later than this week, and are not in the chart.",
    later,
  );
  return make("figure", "sw-chart-box", svg, make("figcaption", "", later ? `${words} ${left}` : words), list);
}

/** @param {string} monday */
function dayOf(monday) {
  return new Date(`${monday}T12:00:00`).toLocaleDateString(LANGUAGE, { day: "numeric", month: "short" });
}
