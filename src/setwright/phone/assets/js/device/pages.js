// The copy of the site for places without signal: the service worker, seen from the page.
import { read, remove, ROOT, write } from "./store.js";

/** @typedef {{kept: number, whole: boolean, since: number | null, bytes: number, build: string}} Copy */

const WORKER = `${ROOT}service-worker.js`;

function able() {
  return "serviceWorker" in navigator && isSecureContext;
}

export function hasCopy() {
  return able() && navigator.serviceWorker.controller !== null;
}

/** Whether the browser tells that each byte may cost the member: mobile data, or a wish to save. */
function isMetered() {
  const { connection } = /** @type {{connection?: {type?: string, saveData?: boolean}}} */ (/** @type {unknown} */ (navigator));
  return connection?.saveData === true || connection?.type === "cellular";
}

/** Whether a first copy would come over a connection that may cost, and the member has not been asked. */
export function asksFirst() {
  return able() && !hasCopy() && isMetered() && !read("no-copy") && read("copy-on-mobile") === undefined;
}

/**
 * @param {boolean} yes
 */
export async function answer(yes) {
  write("copy-on-mobile", yes);
  if (yes) await keepPages();
}

/** Keep the copy, unless the member switched it off. The first one waits for a connection that costs nothing. */
export async function keepPages() {
  if (!able() || read("no-copy")) return;
  if (!hasCopy() && isMetered() && read("copy-on-mobile") !== true) return;
  try {
    await navigator.serviceWorker.register(WORKER, { scope: ROOT, updateViaCache: "none" });
  } catch {
    // Blocked by the browser's settings: the pages work without a copy.
  }
}

/**
 * Hear of a newer copy that took over while this page is open: the page itself is still the one before.
 * @param {(show: () => void) => void} listener
 */
export function onNews(listener) {
  if (!able() || !navigator.serviceWorker.controller) return;
  const show = () => location.reload();
  navigator.serviceWorker.addEventListener("controllerchange", () => listener(show), { once: true });
}

/** Ask for a newer copy now. */
export async function renew() {
  await (await registered())?.update();
}

/** @returns {Promise<Copy | undefined>} what is kept; nothing where there is no copy */
export async function copy() {
  const worker = (await registered())?.active;
  if (!worker) return undefined;
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data);
    worker.postMessage("what is kept", [channel.port2]);
    setTimeout(() => resolve(undefined), 5000);
  });
}

/** Delete the copy and keep none. */
export async function dropCopy() {
  write("no-copy", true);
  const registration = await registered();
  for (const name of await caches.keys()) {
    if (name.startsWith(`setwright ${ROOT} `)) await caches.delete(name);
  }
  await registration?.unregister();
}

export async function keepAgain() {
  remove("no-copy");
  write("copy-on-mobile", true);
  await keepPages();
}

async function registered() {
  return able() ? navigator.serviceWorker.getRegistration(ROOT) : undefined;
}
