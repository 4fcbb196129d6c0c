// A limit in shares of body weight, in the member's own kilograms. Without a body weight the share stands alone.
import { settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { exact, inUnit, kilograms, tenthsBelow, times } from "../logic/exact.js";
import { say, weightSaid } from "../words.js";

export class Cap extends HTMLElement {
  /** @type {AbortController | undefined} */
  #until;

  connectedCallback() {
    this.#until = new AbortController();
    onChange((key) => key === "settings" && this.show(), this.#until.signal);
    this.show();
  }

  disconnectedCallback() {
    this.#until?.abort();
  }

  show() {
    const { weight } = settings();
    const base = weight && kilograms(weight.number, weight.unit);
    const share = exact(this.dataset.share ?? "");
    const unit = this.dataset.unit ?? "";
    if (!base || !share) {
      this.textContent = "";
      return;
    }
    const most = weightSaid(`${tenthsBelow(inUnit(times(share, base), unit))} ${unit}`);
    const inHand = this.dataset.hand ? say("%(weight)s in each hand", { weight: most }) : most;
    this.textContent = ` ${say("For you that is %(weight)s at most.", { weight: inHand })}`;
  }
}
