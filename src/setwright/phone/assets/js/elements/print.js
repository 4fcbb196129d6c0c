// Print: the page as it stands here, with the member's own weights, and with its address on the paper.
import { settings } from "../device/member.js";
import { button, make } from "./make.js";
import { say } from "../words.js";

export class Print extends HTMLElement {
  #until = new AbortController();

  connectedCallback() {
    this.#until = new AbortController();
    const { signal } = this.#until;
    // Browsers that cannot unfold by style print only what is open.
    addEventListener("beforeprint", unfold, { signal });
    addEventListener("afterprint", fold, { signal });
    if (this.childElementCount) return;
    // A sheet is made for all, before anyone says where they train.
    if (settings().place === "home") this.append(make("p", "sw-small sw-screen", say("The PDF is for the club's kit. This print is for yours at home.")));
    this.append(
      button(say("Print this page"), "sw-link", () => window.print()),
      make("p", "sw-address", location.href.split("#")[0] ?? ""),
    );
  }

  disconnectedCallback() {
    this.#until.abort();
  }
}

function unfold() {
  for (const part of document.querySelectorAll("[data-hook='fold']:not([open])")) {
    part.toggleAttribute("open", true);
    part.toggleAttribute("data-was-shut", true);
  }
}

function fold() {
  for (const part of document.querySelectorAll("[data-was-shut]")) {
    part.removeAttribute("open");
    part.removeAttribute("data-was-shut");
  }
}
