// How hard a set or a session was, to be picked.
import { make } from "./make.js";
import { say } from "../words.js";

/**
 * @param {number | null} chosen
 * @param {string[]} words
 */
export function effortSelect(chosen, words = []) {
  const select = make("select", "");
  select.append(new Option(say("not noted"), "", false, chosen === null));
  for (let value = 0; value <= 10; value += 1) {
    select.append(new Option(words[value] ? `${value}: ${words[value]}` : String(value), String(value), false, value === chosen));
  }
  return select;
}
