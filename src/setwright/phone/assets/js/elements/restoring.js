// Restoring from a file in two steps: first what it would bring, then, if the member says so, bringing it.
import { open } from "../device/files.js";
import { loggedAt } from "../device/member.js";
import { loggedFrom } from "../logic/log.js";
import { tallied, tallySaid } from "../logic/restoring.js";
import { button, make } from "./make.js";
import { say } from "../words.js";

/**
 * The text of a file that a member picks.
 * @param {string} accept
 * @param {(words: string) => void} tell
 * @returns {Promise<string | undefined>} nothing where none was picked, or an empty one, which is said
 */
export async function pickedFile(accept, tell) {
  const text = await open(accept);
  if (text === "") tell(say("This file is empty. Nothing was changed."));
  return text || undefined;
}

/**
 * The preview of a restore.
 * @param {unknown[]} values sessions of a file, as they stand there
 * @param {HTMLElement[]} more what else is asked
 * @param {() => void} take
 */
export function preview(values, more, take) {
  const sessions = values.flatMap((value) => loggedFrom(value) ?? []);
  const box = make("div", "sw-hint sw-preview", make("p", "", make("b", "", say("In this file:")), ` ${tallySaid(tallied(sessions, loggedAt))}`));
  box.dataset.hook = "preview";
  box.setAttribute("role", "group");
  box.setAttribute("aria-label", say("What the file would bring"));
  const yes = button(say("Take it"), "sw-button", () => {
    box.remove();
    take();
  });
  const no = button(say("Leave it"), "sw-button sw-quiet", () => box.remove());
  box.append(...more, make("p", "sw-actions", yes, " ", no));
  queueMicrotask(() => yes.focus());
  return box;
}
