// Everything that this device keeps of a member: saved as a file, restored from one, erased.
import { fileName, isWanted, save } from "../device/files.js";
import { addLogged, eraseAll, keepSettings, logged, settings, unreadable } from "../device/member.js";
import { onChange } from "../device/store.js";
import { localTime, restored } from "../logic/log.js";
import { object, settingsFrom, usual } from "../logic/settings.js";
import { make, revealTools, the } from "./make.js";
import { pickedFile, preview } from "./restoring.js";
import { many, say } from "../words.js";

const VERSION = 1;

export class Copies extends HTMLElement {
  #until = new AbortController();

  connectedCallback() {
    this.#on("save", () => this.#save());
    this.#on("restore", () => void this.#restore());
    this.#on("erase", () => this.#erase());
    onChange(() => this.#count(), this.#until.signal);
    this.#count();
    revealTools(this);
  }

  disconnectedCallback() {
    this.#until.abort();
  }

  /**
   * @param {string} what
   * @param {() => void} act
   */
  #on(what, act) {
    the(this, `[data-do='${what}']`).addEventListener("click", act, { signal: this.#until.signal });
  }

  #count() {
    const sessions = logged().length;
    const bad = Object.keys(unreadable()).length;
    const kept = many(
      "Kept now: your settings, and %(num)s session in the log.",
      "Kept now: your settings, and %(num)s sessions in the log.",
      sessions,
    );
    const more = bad ? ` ${say("%(count)s more cannot be read: see My log.", { count: bad })}` : "";
    the(this, "[data-hook='count']").textContent = kept + more;
  }

  #save() {
    const at = localTime(Date.now());
    const bad = unreadable();
    const content = { of: this.dataset.club, version: VERSION, saved: at, settings: settings(), log: logged(), unreadable: bad };
    save(`${fileName(this.dataset.club ?? "")}-${at.slice(0, 10)}.json`, "application/json", JSON.stringify(content, null, 1));
    const count = Object.keys(bad).length;
    const beside = count
      ? ` ${say("What cannot be read of the log (%(count)s) is in it as it stands, and is not restored from it.", { count })}`
      : "";
    this.#tell(say("A copy went to your downloads.") + beside);
  }

  async #restore() {
    const text = await pickedFile("application/json,.json", (words) => this.#tell(words));
    if (text === undefined) return;
    /** @type {Record<string, unknown>} */
    let content = {};
    try {
      content = object(JSON.parse(text));
    } catch {
      // Told below, like any other file that is none of ours.
    }
    if (content.version !== VERSION || !Array.isArray(content.log)) {
      this.#tell(say("This is not a copy that these pages saved. Nothing was changed."));
      return;
    }
    if (!isWanted(content.of, this.dataset.club ?? "")) {
      this.#tell(say("Nothing was changed."));
      return;
    }
    const has = Object.keys(object(content.settings)).length > 0;
    const box = make("input", "");
    box.type = "checkbox";
    // Settings that are none yet are taken; a member's own stay unless that is wanted.
    box.checked = JSON.stringify(settings()) === JSON.stringify(usual());
    const also = has ? [make("p", "", make("label", "sw-choice", box, say("Take its settings in place of mine")))] : [];
    this.querySelector("[data-hook='preview']")?.remove();
    const log = content.log;
    the(this, "[data-hook='actions']").after(preview(log, also, () => this.#take(log, has && box.checked, content.settings)));
  }

  /**
   * @param {unknown[]} log
   * @param {boolean} has whether settings are taken too
   * @param {unknown} given
   */
  #take(log, has, given) {
    const tally = addLogged(log);
    const mine = { count: 0 };
    const trouble = tally.failed || (has && keepSettings(settingsFrom(given, mine)));
    const sets = restored({ ...tally, mended: tally.mended + mine.count });
    const what = has ? say("Restored: your settings and %(sessions)s", { sessions: sets }) : say("Restored: %(sessions)s", { sessions: sets });
    this.#tell(trouble || what);
  }

  #erase() {
    const question = say("Erase your settings and your whole log from this device? A saved copy is the only way back.");
    if (!confirm(question)) return;
    eraseAll();
    this.#tell(say("Erased."));
  }

  /** @param {string} words */
  #tell(words) {
    the(this, "[data-hook='status']").textContent = words;
  }
}
