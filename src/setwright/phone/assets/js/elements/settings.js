// My settings: every change is kept at once, on this device.
import { keepSettings, settings } from "../device/member.js";
import { onChange } from "../device/store.js";
import { inOtherUnit } from "../logic/exact.js";
import { estimate, isWeight } from "../logic/settings.js";
import { isLiftable, meantIn, weightsIn, weightTyped } from "../logic/typed.js";
import { button, make, revealTools, the } from "./make.js";
import { say, weightSaid } from "../words.js";

/** @typedef {import("../logic/settings.js").Settings} Settings */

export class SettingsForm extends HTMLElement {
  #mine = settings();
  #status = /** @type {HTMLElement} */ (this);
  #form = document.createElement("form");
  #until = new AbortController();
  #saving = false;
  #unsaved = false;

  connectedCallback() {
    this.#form = the(this, "form");
    this.#status = the(this, "[data-hook='status']");
    this.#fill();
    const { signal } = this.#until;
    onChange((key) => {
      if (key !== "settings" || this.#saving) return;
      this.#mine = settings();
      this.#fill();
    }, signal);
    this.#form.addEventListener("submit", (event) => event.preventDefault());
    this.#form.addEventListener("change", (event) => this.#changed(/** @type {HTMLInputElement} */ (event.target)));
    this.querySelector("[data-do='add-lift']")?.addEventListener("click", () => this.#addLift());
    for (const name of ["lift", "lift-reps", "lift-weight"]) {
      this.querySelector(`[name='${name}']`)?.addEventListener("input", () => this.#sayEstimate());
    }
    revealTools(this);
  }

  disconnectedCallback() {
    this.#until.abort();
  }

  /** @param {string} name */
  #value(name) {
    const field = this.#form.elements.namedItem(name);
    return field && "value" in field ? field.value : "";
  }

  #fill() {
    const mine = this.#mine;
    /** @type {HTMLInputElement} */ (the(this, "[name='weight']")).value = mine.weight?.number ?? "";
    this.#pick("unit", mine.unit ?? this.dataset.unit ?? "kg");
    this.#pick("place", mine.place);
    this.#pick("text", mine.text);
    this.#tick("sound", mine.sound);
    this.#tick("vibration", mine.vibration);
    for (const one of this.querySelectorAll("[name='choice']")) {
      const box = /** @type {HTMLInputElement} */ (one);
      box.checked = mine.choices.includes(box.value);
    }
    for (const box of this.querySelectorAll("[name='kit']")) {
      const { value } = /** @type {HTMLInputElement} */ (box);
      /** @type {HTMLInputElement} */ (box).checked = value in mine.kit;
    }
    for (const field of this.querySelectorAll("[name='weights']")) {
      const input = /** @type {HTMLInputElement} */ (field);
      input.value = (mine.kit[input.dataset.kit ?? ""] ?? []).join(", ");
    }
    this.#sayWeight();
    this.#askInUnit();
    this.#listLifts();
    this.#sayPlace();
  }

  /**
   * @param {string} name
   * @param {string} value
   */
  #pick(name, value) {
    for (const one of this.querySelectorAll(`[name='${name}']`)) {
      const radio = /** @type {HTMLInputElement} */ (one);
      radio.checked = radio.value === value;
    }
  }

  /**
   * @param {string} name
   * @param {boolean} on
   */
  #tick(name, on) {
    /** @type {HTMLInputElement} */ (the(this, `[name='${name}']`)).checked = on;
  }

  /** @param {HTMLInputElement} field */
  #changed(field) {
    this.#renew();
    const mine = this.#mine;
    if (field.name === "weight" || field.name === "unit") {
      if (!this.#weigh()) return;
    } else if (field.name === "place") mine.place = field.value === "home" ? "home" : "club";
    else if (field.name === "text") mine.text = /** @type {Settings["text"]} */ (field.value);
    else if (field.name === "sound") mine.sound = field.checked;
    else if (field.name === "vibration") mine.vibration = field.checked;
    else if (field.name === "choice") {
      mine.choices = mine.choices.filter((one) => one !== field.value);
      if (field.checked) mine.choices.push(field.value);
    } else if (field.name === "kit") {
      if (field.checked) mine.kit[field.value] = this.#weightsOf(field.value);
      else delete mine.kit[field.value];
    } else if (field.name === "weights") {
      const kit = field.dataset.kit ?? "";
      mine.kit[kit] = weightsIn(field.value);
      field.value = mine.kit[kit].join(", ");
      this.#fill();
    } else return;
    this.#sayPlace();
    this.#askInUnit();
    this.#keep();
  }

  /** @param {string} kit */
  #weightsOf(kit) {
    const field = this.querySelector(`[name='weights'][data-kit='${kit}']`);
    return field ? weightsIn(/** @type {HTMLInputElement} */ (field).value) : [];
  }

  /** Take the body weight as it was typed; false where it can't be one. */
  #weigh() {
    const typed = this.#value("weight").trim();
    const number = weightTyped(typed) ?? "";
    const unit = this.#unit();
    this.#mine.unit = unit;
    if (typed === "") {
      this.#mine.weight = null;
      this.#sayWeight();
      return true;
    }
    const field = the(this, "[name='weight']");
    const wrong = !isWeight(number, unit);
    field.setAttribute("aria-invalid", String(wrong));
    if (wrong) {
      const kg = say("A body weight from 20 to 300 kg, please. Nothing was changed.");
      this.#tell(unit === "kg" ? kg : say("A body weight from 45 to 661 lb, please. Nothing was changed."));
      return false;
    }
    this.#mine.weight = { number, unit };
    this.#sayWeight();
    return true;
  }

  #sayWeight() {
    const { weight } = this.#mine;
    const line = the(this, "#sw-weight-says");
    line.dataset.table ??= line.textContent ?? "";
    const other = weight ? `${say("That is %(weight)s.", { weight: weightSaid(inOtherUnit(weight.number, weight.unit)) })} ` : "";
    line.textContent = other + line.dataset.table;
    this.#askUnit();
  }

  /** A number that is a weight of the club's tables in the other unit alone was perhaps meant in that one. */
  #askUnit() {
    const { weight } = this.#mine;
    this.querySelector("[data-hook='meant']")?.remove();
    const meant = weight && meantIn(weight.number, weight.unit, this.dataset.from ?? "", this.dataset.to ?? "");
    if (!weight || !meant) return;
    const said = weightSaid(`${weight.number} ${weight.unit}`);
    const take = button(say("It is %(weight)s", { weight: weightSaid(`${weight.number} ${meant}`) }), "sw-button", () => {
      this.#renew();
      this.#mine.weight = { ...weight, unit: meant };
      this.#mine.unit = meant;
      this.#fill();
      this.#keep();
    });
    const words = say("%(weight)s is outside the club's tables. Did you mean the other unit?", { weight: said });
    const box = make("div", "sw-hint sw-meant", make("p", "", words), take);
    box.dataset.hook = "meant";
    box.setAttribute("role", "alert");
    the(this, "#sw-weight-says").after(box);
  }

  #sayPlace() {
    the(this, "[data-hook='home-kit']").hidden = this.#mine.place !== "home";
  }

  #unit() {
    return this.#value("unit") === "lb" ? /** @type {const} */ ("lb") : /** @type {const} */ ("kg");
  }

  /** A best lift is asked for in the member's own unit. */
  #askInUnit() {
    const label = this.querySelector("label[for='sw-lift-weight']");
    if (label) label.textContent = this.#unit() === "lb" ? say("Weight, lb") : say("Weight, kg");
  }

  #lift() {
    const number = weightTyped(this.#value("lift-weight")) ?? "";
    const unit = this.#unit();
    if (!isLiftable(number, unit)) return undefined;
    const reps = Number(this.#value("lift-reps"));
    const span = estimate(this.dataset.multiples ?? "", number, reps);
    return span ? { number, unit, reps, ...span } : undefined;
  }

  #sayEstimate() {
    const lift = this.#lift();
    const line = the(this, "#sw-lift-says");
    if (!lift) line.textContent = "";
    else if (lift.reps === 1) line.textContent = say("1RM: %(weight)s.", { weight: weightSaid(`${lift.number} ${lift.unit}`) });
    else {
      const high = weightSaid(`${lift.high} ${lift.unit}`);
      line.textContent = say("1RM: between %(low)s and %(high)s. Pages use the lower one.", { low: lift.low, high });
    }
  }

  #addLift() {
    const lift = this.#lift();
    if (!lift) {
      const lb = this.#unit() === "lb";
      const words = lb ? say("A weight above 0, up to 1,300 lb, please. Nothing was changed.") : say("A weight above 0, up to 600 kg, please. Nothing was changed.");
      this.#tell(words);
      return;
    }
    this.#renew();
    this.#mine.lifts[this.#value("lift")] = lift;
    this.#listLifts();
    this.#keep();
  }

  #listLifts() {
    const list = this.querySelector("[data-hook='lifts']");
    if (!list) return;
    list.replaceChildren(
      ...Object.entries(this.#mine.lifts).map(([exercise, lift]) => {
        const name = this.querySelector(`option[value='${CSS.escape(exercise)}']`)?.textContent ?? exercise;
        const high = weightSaid(`${lift.high} ${lift.unit}`);
        const span = { reps: lift.reps, low: lift.low, high };
        const set = lift.reps === 1 ? say("1RM") : say("%(reps)s reps, 1RM %(low)s to %(high)s", span);
        const drop = button(say("Remove"), "sw-link", () => {
          this.#renew();
          delete this.#mine.lifts[exercise];
          this.#listLifts();
          this.#keep();
        });
        drop.setAttribute("aria-label", say("Remove %(exercise)s", { exercise: name }));
        return make("li", "", `${name}: ${weightSaid(`${lift.number} ${lift.unit}`)}, ${set} `, drop);
      }),
    );
  }

  /** A change goes on top of what is kept now: another window may have changed something else. */
  #renew() {
    if (!this.#unsaved) this.#mine = settings();
  }

  #keep() {
    this.#saving = true;
    const trouble = keepSettings(this.#mine);
    this.#saving = false;
    this.#unsaved = trouble !== "";
    this.#tell(trouble || say("Saved on this device."));
  }

  /** @param {string} words */
  #tell(words) {
    this.#status.textContent = words;
  }
}
