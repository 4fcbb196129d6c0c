// My body weight, asked once where its loads are: kept on this device, as the settings keep it.
import { keepSettings, settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { isWeight } from "../logic/settings.js";
import { link, make } from "./make.js";
import { pieces, say, weightSaid } from "../words.js";

export class OwnWeight extends HTMLElement {
  #until = new AbortController();

  connectedCallback() {
    this.#until = new AbortController();
    onChange((key) => key === "settings" && this.#show(), this.#until.signal);
    this.#show();
  }

  disconnectedCallback() {
    this.#until.abort();
  }

  #show() {
    const { weight } = settings();
    const change = link(this.dataset.settings ?? "", weight ? say("Change") : say("What it is for"));
    if (!weight) {
      if (!this.querySelector("form")) this.replaceChildren(this.#form(change));
      return;
    }
    const said = make("b", "", weightSaid(`${weight.number} ${weight.unit}`));
    this.replaceChildren(make("p", "sw-small", ...pieces("Weights for %(weight)s of body weight.", { weight: said }), " ", change));
  }

  /** @param {HTMLElement} more */
  #form(more) {
    const unit = this.dataset.unit === "lb" ? "lb" : "kg";
    const field = make("input", "");
    field.inputMode = "decimal";
    field.autocomplete = "off";
    field.size = 5;
    const keep = make("button", "sw-button", say("Show my weights"));
    const told = make("p", "sw-small");
    told.setAttribute("role", "status");
    const label = make("label", "", `${say("Your body weight")} `, field, ` ${unit}`);
    const form = make("form", "sw-form", label, " ", keep, told, make("p", "sw-small", say("It stays on this device."), " ", more));
    form.noValidate = true;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const number = field.value.trim().replace(",", ".");
      const wrong = !isWeight(number, unit);
      field.setAttribute("aria-invalid", String(wrong));
      const failed = wrong
        ? say("A body weight from 20 to 300 kg, please. Nothing was changed.")
        : keepSettings({ ...settings(), weight: { number, unit } });
      told.textContent = failed;
      if (!failed) this.#show();
    });
    return form;
  }
}
