// Print: the page as it stands here, with the member's own weights, and with its address on the paper.
import { settings } from "../device/member.js";
import { button, make } from "./make.js";
import { say } from "../words.js";

export class Print extends HTMLElement {
  connectedCallback() {
    if (this.childElementCount) return;
    // A sheet is made for all, before anyone says where they train.
    if (settings().place === "home") this.append(make("p", "sw-small sw-screen", say("The PDF is for the club's kit. This print is for yours at home.")));
    this.append(
      button(say("Print this page"), "sw-link", () => window.print()),
      make("p", "sw-address", location.href.split("#")[0] ?? ""),
    );
  }
}
