// The browser's storage on this device. A value is written whole or not at all; nothing else is touched by a failure.
import { say } from "../words.js";

/** The site's own path: two clubs on one address keep apart. */
export const ROOT = new URL("../../../", import.meta.url).pathname;
const PREFIX = `setwright:${ROOT}:`;

export const FULL = say("This device has no room left for it. What was saved before is still there. Make room, then try again.");
export const OFF = say(
  "This browser keeps nothing for this site: perhaps a private window, or storage is switched off. What you see here is lost when you close it.",
);

/**
 * @param {string} key
 * @returns {unknown} undefined where there is nothing, or nothing readable
 */
export function read(key) {
  try {
    const text = localStorage.getItem(PREFIX + key);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/**
 * What is stored as it stands there, readable or not.
 * @param {string} key
 * @returns {string | undefined}
 */
export function raw(key) {
  try {
    return localStorage.getItem(PREFIX + key) ?? undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {string} key
 * @param {unknown} value
 * @returns {string} nothing where it was saved, or what to tell the member
 */
export function write(key, value) {
  return writeRaw(key, JSON.stringify(value));
}

/**
 * @param {string} key
 * @param {string} text
 * @returns {string} nothing where it was saved, or what to tell the member
 */
export function writeRaw(key, text) {
  const trouble = attempt(key, text);
  if (!trouble) dispatchEvent(new CustomEvent("sw-kept", { detail: key }));
  return trouble;
}

/** Try whether a session would find room; nothing stays of it. */
export function ready() {
  const trouble = attempt("try", "x".repeat(SESSION_LETTERS));
  if (!trouble) localStorage.removeItem(`${PREFIX}try`);
  return trouble;
}

/** A long session with its place takes less. */
const SESSION_LETTERS = 20_000;

/**
 * @param {string} key
 * @param {string} text
 */
function attempt(key, text) {
  try {
    localStorage.setItem(PREFIX + key, text);
    return "";
  } catch (error) {
    // Some browsers say "full" where they keep nothing at all.
    return error instanceof DOMException && error.name === "QuotaExceededError" && localStorage.length > 0 ? FULL : OFF;
  }
}

/** @param {string} key */
export function remove(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    return;
  }
  dispatchEvent(new CustomEvent("sw-kept", { detail: key }));
}

/**
 * Keys that start with some letters, in order.
 * @param {string} start
 */
export function keys(start = "") {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(PREFIX + start))
      .map((key) => key.slice(PREFIX.length))
      .sort();
  } catch {
    return [];
  }
}

/**
 * Hear of every change, made here or in another window.
 * @param {(key: string) => void} listener
 * @param {AbortSignal} signal
 */
export function onChange(listener, signal) {
  addEventListener("sw-kept", (event) => listener(/** @type {CustomEvent} */ (event).detail), { signal });
  addEventListener(
    "storage",
    (event) => {
      if (event.key === null || event.key.startsWith(PREFIX)) listener(event.key?.slice(PREFIX.length) ?? "");
    },
    { signal },
  );
}
