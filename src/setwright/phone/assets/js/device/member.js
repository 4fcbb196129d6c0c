// The member's settings and log, as this device keeps them.
import { loggedFrom, merged } from "../logic/log.js";
import { settingsFrom } from "../logic/settings.js";
import { keys, raw, read, remove, write, writeRaw } from "./store.js";

/** @typedef {import("../logic/log.js").Logged} Logged */

const LOG = "log/";
/** Where something that can't be read lies once its place is needed. */
const ASIDE = "aside/";

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

/** Every logged session that can be read, newest first. */
export function logged() {
  return keys(LOG)
    .flatMap((key) => loggedFrom(read(key)) ?? [])
    .reverse();
}

/**
 * One session of the log.
 * @param {string} id
 */
export function loggedAt(id) {
  return loggedFrom(read(LOG + id));
}

/**
 * What lies in the log and is no session, by its key and as it stands there. It stays until the member deletes it.
 * @returns {Record<string, string>}
 */
export function unreadable() {
  const bad = keys(LOG).filter((key) => !loggedFrom(read(key)));
  return Object.fromEntries([...bad, ...keys(ASIDE)].map((key) => [key, raw(key) ?? ""]));
}

export function eraseUnreadable() {
  for (const key of Object.keys(unreadable())) remove(key);
}

/**
 * Each session has a key of its own: a failure to save one cannot harm another. What another window saved of the same
 * session stays.
 * @param {Logged} session
 * @param {(what: string) => boolean} changed what was changed here: a set by its place, "effort" or "minutes"
 * @returns {{session: Logged, failed: string}} the session with what the other window knows, and why it was not saved
 */
export function keepLogged(session, changed) {
  const stored = loggedAt(session.id);
  const whole = stored ? merged(stored, session, changed) : session;
  return { session: whole, failed: (stored ? "" : setAside(LOG + session.id)) || write(LOG + session.id, whole) };
}

/**
 * Keep what can't be read where a session needs its place.
 * @param {string} key
 */
function setAside(key) {
  const text = raw(key);
  return text === undefined ? "" : writeRaw(ASIDE + key + Date.now(), text);
}

/**
 * A session of the log as the member put it right, sets that were deleted included.
 * @param {Logged} session
 * @returns {string} nothing, or why it was not saved
 */
export function keepChanged(session) {
  return write(LOG + session.id, session);
}

/** @param {string} id */
export function forget(id) {
  remove(LOG + id);
}

/**
 * Add sessions to the log: all of them, or none where there is no room. What the log has stays as it is; what it lacks
 * is taken.
 * @param {unknown[]} values
 * @returns {{added: number, skipped: number, mended: number, failed: string}} skipped: what is no session
 */
export function addLogged(values) {
  const mended = { count: 0 };
  const sessions = values.flatMap((value) => loggedFrom(value, mended) ?? []);
  const skipped = values.length - sessions.length;
  /** @type {[string, string | undefined][]} */
  const before = [];
  for (const session of sessions) {
    before.unshift([LOG + session.id, raw(LOG + session.id)]);
    const { failed } = keepLogged(session, () => false);
    if (!failed) continue;
    for (const [key, text] of before) {
      if (text === undefined) remove(key);
      else writeRaw(key, text);
    }
    return { added: 0, skipped, mended: mended.count, failed };
  }
  return { added: sessions.length, skipped, mended: mended.count, failed: "" };
}

export function eraseAll() {
  for (const key of keys()) remove(key);
}
