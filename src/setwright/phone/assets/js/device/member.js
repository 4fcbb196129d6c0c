// The member's settings and log, as this device keeps them.
import { loggedFrom } from "../logic/log.js";
import { settingsFrom } from "../logic/settings.js";
import { keys, read, remove, write } from "./store.js";

/** @typedef {import("../logic/log.js").Logged} Logged */

export function settings() {
  return settingsFrom(read("settings"));
}

/**
 * @param {import("../logic/settings.js").Settings} value
 * @returns {string} nothing, or why it was not saved
 */
export function keepSettings(value) {
  return write("settings", value);
}

/** Every logged session, newest first. */
export function logged() {
  return keys("log/")
    .flatMap((key) => loggedFrom(read(key)) ?? [])
    .reverse();
}

/**
 * Each session has a key of its own: a failure to save one cannot harm another.
 * @param {Logged} session
 */
export function keepLogged(session) {
  return write(`log/${session.id}`, session);
}

/** @param {string} id */
export function forget(id) {
  remove(`log/${id}`);
}

/**
 * Add sessions to the log: all of them, or none where there is no room.
 * @param {unknown[]} values
 * @returns {{added: number, failed: string}}
 */
export function addLogged(values) {
  const sessions = values.flatMap((value) => loggedFrom(value) ?? []);
  const before = sessions.map((one) => /** @type {const} */ ([one.id, read(`log/${one.id}`)]));
  for (const session of sessions) {
    const failed = keepLogged(session);
    if (!failed) continue;
    for (const [id, old] of before) {
      if (old === undefined) forget(id);
      else write(`log/${id}`, old);
    }
    return { added: 0, failed };
  }
  return { added: sessions.length, failed: "" };
}

export function eraseAll() {
  for (const key of keys()) remove(key);
}
