// The easier way of an exercise, as its place on a session's page names it.
import { pieces, say } from "../words.js";

/**
 * The name of the exercise, or the words for the same one done easier; nothing where the page gives no way.
 * @param {ParentNode | null} item
 */
export function easierWay(item) {
  const way = part(item);
  return (way?.querySelector("a")?.textContent ?? way?.textContent ?? "").trim().replace(/\.$/, "");
}

/**
 * What a member does who may take no weight of those there are.
 * @param {ParentNode | null} item
 */
export function easierOption(item) {
  const way = easierWay(item);
  return way ? say("the easier option (%(way)s)", { way }) : say("the easier option");
}

/**
 * What a member does at home who lacks the kit of an exercise without a home option, with the link that the page has.
 * @param {ParentNode} item
 * @returns {(string | Node)[]}
 */
export function easierAtHome(item) {
  const way = part(item)?.querySelector("a")?.cloneNode(true) ?? easierWay(item);
  if (!way) return [say("there is no home option. Leave it out.")];
  return pieces("there is no home option. Do the easier one (%(way)s), or leave it out.", { way });
}

/**
 * Its own, not that of what members with a choice do in its place.
 * @param {ParentNode | null} item
 */
function part(item) {
  const parts = [...(item?.querySelectorAll("[data-part='easier']") ?? [])];
  return parts.find((one) => one.closest("[data-hook='inside'], [data-item]") === item) ?? null;
}
