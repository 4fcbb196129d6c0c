// What members read, in the site's language. A sentence is known by its English form; %(name)s stands for a value.
import { LANGUAGE, plural, SENTENCES } from "./catalogue.js";

export { LANGUAGE };

/** @typedef {Record<string, string | number>} Values */

const PLACE = /%\((\w+)\)s|%%/g;
const POINT = new Intl.NumberFormat(LANGUAGE).formatToParts(1.5).find((part) => part.type === "decimal")?.value ?? ".";

/**
 * @param {string} msgid
 * @param {Values} [values]
 * @returns {string}
 */
export function say(msgid, values = {}) {
  return filled(SENTENCES[msgid]?.[0] ?? msgid, values);
}

/**
 * A sentence that goes with a count, which it may hold as %(num)s.
 * @param {string} one
 * @param {string} other
 * @param {number} count
 * @param {Values} [values]
 */
export function many(one, other, count, values = {}) {
  const forms = SENTENCES[one];
  const form = forms && forms.length > 1 ? forms[plural(count)] : count === 1 ? one : other;
  return filled(form, { num: count, ...values });
}

/**
 * A sentence with elements for some of its values.
 * @param {string} msgid
 * @param {Record<string, string | Node>} values
 * @returns {(string | Node)[]}
 */
export function pieces(msgid, values) {
  const text = SENTENCES[msgid]?.[0] ?? msgid;
  return text.split(/%\((\w+)\)s/).flatMap((part, index) => (index % 2 ? [values[part] ?? ""] : part ? [filled(part, {})] : []));
}

/**
 * A weight as pages carry it, "12.5 kg", in words.
 * @param {string} weight
 */
export function weightSaid(weight) {
  const [number, unit] = weight.split(" ");
  const values = { number: number.replace(".", POINT) };
  return unit === "lb" ? say("%(number)s lb", values) : say("%(number)s kg", values);
}

/**
 * @param {string} text
 * @param {Values} values
 */
function filled(text, values) {
  return text.replace(PLACE, (place, name) => (place === "%%" ? "%" : String(values[name] ?? "")));
}
