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

/** Keep the copy, unless the member switched it off. */
export async function keepPages() {
  if (!able() || read("no-copy")) return;
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
  await keepPages();
}

async function registered() {
  return able() ? navigator.serviceWorker.getRegistration(ROOT) : undefined;
}
