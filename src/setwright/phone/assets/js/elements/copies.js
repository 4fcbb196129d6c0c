// Everything that this device keeps of a member: saved as a file, restored from one, erased.
import { fileName, open, save } from "../device/files.js";
import { addLogged, eraseAll, keepSettings, logged, settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { localTime } from "../logic/log.js";
import { object, settingsFrom } from "../logic/settings.js";
import { revealTools, the } from "./make.js";
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
    the(this, ".sw-count").textContent = many(
      "Kept now: your settings, and %(num)s session in the log.",
      "Kept now: your settings, and %(num)s sessions in the log.",
      sessions,
    );
  }

  #save() {
    const at = localTime(Date.now());
    const content = { of: this.dataset.club, version: VERSION, saved: at, settings: settings(), log: logged() };
    save(`${fileName(this.dataset.club ?? "")}-${at.slice(0, 10)}.json`, "application/json", JSON.stringify(content, null, 1));
    this.#tell(say("A copy went to your downloads."));
  }

  async #restore() {
    const text = await open("application/json,.json");
    if (!text) return;
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
    const { added, failed } = addLogged(content.log);
    const trouble = failed || keepSettings(settingsFrom(content.settings));
    this.#tell(
      trouble || many("Restored: your settings and %(num)s session.", "Restored: your settings and %(num)s sessions.", added),
    );
  }

  #erase() {
    const question = say("Erase your settings and your whole log from this device? A saved copy is the only way back.");
    if (!confirm(question)) return;
    eraseAll();
    this.#tell(say("Erased."));
  }

  /** @param {string} words */
  #tell(words) {
    the(this, ".sw-status").textContent = words;
  }
}
