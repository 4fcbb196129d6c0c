// A session that this device does not take: said, and its sets as a file, which My log restores from.
import { save } from "../device/files.js";
import { button, make } from "./make.js";
import { say } from "../words.js";

/** @typedef {import("./guide.js").Guide} Guide */

/**
 * @param {Guide} guide
 * @param {string} why
 * @param {() => void} drop
 */
export function rescue(guide, why, drop) {
  const box = make("div", "sw-hint sw-rescue", make("p", "", make("b", "", say("This session is not saved on this device.")), ` ${why}`));
  box.setAttribute("role", "alert");
  const again = button(say("Try again"), "sw-button sw-quiet", () => guide.end());
  const away = button(say("End without saving"), "sw-link", () => {
    if (confirm(say("End this session without saving it on this device?"))) drop();
  });
  box.append(make("p", "sw-actions", button(say("Save the sets as a file"), "sw-button", () => saveFile(guide)), " ", again, " ", away));
  return box;
}

/** @param {Guide} guide */
export function saveFile({ logged }) {
  if (!logged) return;
  save(`session-${logged.id.replaceAll(":", "-")}.json`, "application/json", JSON.stringify({ version: 1, log: [logged] }, null, 1));
}
