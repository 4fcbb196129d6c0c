// Print: the page as it stands here, with the member's own weights, and with its address on the paper.
import { button, make } from "./make.js";
import { say } from "../words.js";

export class Print extends HTMLElement {
  connectedCallback() {
    if (this.childElementCount) return;
    this.append(
      button(say("Print this page"), "sw-link", () => window.print()),
      make("p", "sw-address", location.href.split("#")[0] ?? ""),
    );
  }
}
