// Without signal: what this device keeps of the site, and what to do where a page is not in it.
import { copy, dropCopy, keepAgain, renew } from "../device/pages.js";
import { read } from "../device/store.js";
import { button, make, revealTools } from "./make.js";
import { LANGUAGE, say } from "../words.js";

export class Offline extends HTMLElement {
  #status = make("p", "sw-status");

  async connectedCallback() {
    this.#status.setAttribute("role", "status");
    revealTools(this);
    await this.#show();
  }

  async #show() {
    const kept = await copy();
    const parts = [];
    const wanted = new URLSearchParams(location.search).get("page");
    if (wanted) {
      const why = /\.pdf$/i.test(wanted)
        ? say("PDF sheets are not in the copy. Open one where there is a signal, and save or print it there.")
        : kept?.whole
        ? say("The copy holds every page that was published when it was made, so that page is not published, or it is newer than the copy.")
        : say("This device keeps the pages that you opened before, and that one is not among them.");
      parts.push(
        make(
          "div",
          "sw-hint",
          make("p", "", make("b", "", say("There is no signal, and this page is not kept here:")), ` ${wanted}`),
          make("p", "", why),
          button(say("Try again"), "sw-button", () => location.assign(wanted)),
        ),
      );
    }
    if (kept) parts.push(...this.#kept(kept));
    else parts.push(make("p", "sw-lead", say("This device keeps no copy of these pages.")), this.#again());
    parts.push(this.#status);
    this.replaceChildren(...parts);
  }

  /** @param {import("../device/pages.js").Copy} kept */
  #kept(kept) {
    const megabytes = new Intl.NumberFormat(LANGUAGE, { minimumFractionDigits: 1, maximumFractionDigits: 1, useGrouping: false });
    const size = say("%(number)s MB", { number: megabytes.format(kept.bytes / 1e6) });
    const since = kept.since ? new Date(kept.since).toLocaleString(LANGUAGE, { dateStyle: "long", timeStyle: "short" }) : "";
    const what = kept.whole
      ? say("This device keeps every page with its pictures: %(number)s pages and files, %(size)s, copied %(since)s. PDF sheets are not among them.", { number: kept.kept, size, since })
      : say("This device keeps what you opened so far: %(number)s pages and files, %(size)s.", { number: kept.kept, size });
    const look = button(say("Look for a newer plan"), "sw-button", () => void this.#renew());
    const drop = button(say("Delete the copy"), "sw-button sw-quiet", async () => {
      await dropCopy();
      await this.#show();
      this.#status.textContent = say("Deleted. Your settings and your log are still there.");
    });
    return [make("p", "sw-lead", what), make("p", "sw-actions", look, " ", drop)];
  }

  #again() {
    if (!read("no-copy")) return make("p", "sw-small", say("It is made after the first visit, where the browser allows it."));
    return button(say("Keep a copy again"), "sw-button", async () => {
      await keepAgain();
      this.#status.textContent = say("The copy is being made. It takes a few seconds.");
    });
  }

  async #renew() {
    this.#status.textContent = say("Looking…");
    try {
      await renew();
      this.#status.textContent = say("Looked. If there is a newer plan, a line at the foot of the screen says so.");
    } catch {
      this.#status.textContent = say("No signal at present.");
    }
  }
}
