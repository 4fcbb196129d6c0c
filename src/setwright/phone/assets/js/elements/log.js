// My log: session load by week and one exercise over time as charts, and every session by month.
import { fileName, isWanted, save } from "../device/files.js";
import { addLogged, eraseUnreadable, logged, unreadable } from "../device/member.js";
import { csvOf, sessionsIn } from "../logic/csv.js";
import { localTime, restored, sessionLoad } from "../logic/log.js";
import { object } from "../logic/settings.js";
import { exerciseChart, loadChart } from "./log-charts.js";
import { insideOf } from "./log-session.js";
import { button, make, revealTools } from "./make.js";
import { pickedFile, preview } from "./restoring.js";
import { LANGUAGE, many, say } from "../words.js";

/** @typedef {import("../logic/log.js").Logged} Logged */

export class Log extends HTMLElement {
  #status = make("p", "sw-status");
  #charts = make("div", "sw-charts");

  connectedCallback() {
    this.#status.setAttribute("role", "status");
    this.#show();
    revealTools(this);
  }

  #show() {
    const sessions = logged();
    this.#draw(sessions);
    this.replaceChildren(this.#charts, ...this.#months(sessions), this.#actions(sessions.length > 0), this.#status, ...this.#unreadable());
  }

  /** @param {Logged[]} sessions */
  #draw(sessions) {
    const none = make("p", "", say("Nothing yet. The guided session on a session's page fills this page."));
    const chosen = this.querySelector("select")?.value;
    const one = sessions.some(({ sets }) => sets.length) ? [exerciseChart(sessions)] : [];
    this.#charts.replaceChildren(...(sessions.length ? [loadChart(sessions), ...one] : [none]));
    const pick = this.#charts.querySelector("select");
    if (!pick || !chosen) return;
    pick.value = chosen;
    pick.dispatchEvent(new Event("change"));
  }

  /**
   * The sessions by month, the newest one open. What a fold holds is drawn when it is opened: a log may hold years.
   * @param {Logged[]} sessions
   */
  #months(sessions) {
    /** @type {Map<string, Logged[]>} */
    const found = new Map();
    for (const one of sessions) found.set(one.id.slice(0, 7), [...(found.get(one.id.slice(0, 7)) ?? []), one]);
    return [...found.values()].map((month, index) => {
      const name = new Date(month[0].id).toLocaleDateString(LANGUAGE, { month: "long", year: "numeric" });
      const load = month.reduce((sum, one) => sum + sessionLoad(one), 0);
      const count = many("%(num)s session", "%(num)s sessions", month.length);
      const sum = make("span", "sw-muted", `${count}, ${say("session load %(load)s", { load })}`);
      const box = make("details", "sw-month", make("summary", "", make("b", "", name), " ", sum));
      box.addEventListener("toggle", () => box.append(...month.map((one) => this.#session(one))), { once: true });
      box.open = index === 0;
      return box;
    });
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
    const text = await pickedFile(".csv,.json,text/csv,application/json", (words) => this.#tell(words));
    if (text === undefined) return;
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
    this.querySelector("[data-hook='preview']")?.remove();
    this.#status.before(preview(found.sessions, [], () => this.#take(found)));
  }

  /** @param {{sessions: unknown[], skipped: number}} found */
  #take(found) {
    const tally = addLogged(found.sessions);
    this.#show();
    const sets = restored({ ...tally, skipped: tally.skipped + found.skipped });
    const done = say("Restored: %(sessions)s", { sessions: sets });
    this.#tell(tally.failed || `${done} ${say("Others in the log are as they were.")}`);
  }

  /** @param {Logged} one */
  #session(one) {
    const when = new Date(one.id);
    const day = when.toLocaleDateString(LANGUAGE, { weekday: "long", day: "numeric", month: "long" });
    const box = make("details", "sw-logged", make("summary", "", make("b", "", one.session), ` ${day}`));
    box.addEventListener("toggle", () => box.append(...insideOf(one, (words) => this.#tell(words), () => this.#changed(box, one))), { once: true });
    return box;
  }

  /**
   * @param {HTMLElement} box
   * @param {Logged} one
   */
  #changed(box, one) {
    const sessions = logged();
    if (!sessions.some(({ id }) => id === one.id)) box.remove();
    this.#draw(sessions);
  }

  /** @param {string} words */
  #tell(words) {
    this.#status.textContent = words;
  }
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
