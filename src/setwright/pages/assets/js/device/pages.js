// The copy of the site for places without signal: the service worker, seen from the page.
import { read, remove, ROOT, write } from "./store.js";

/** @typedef {{kept: number, whole: boolean, since: number | null, bytes: number, build: string}} Copy */

const WORKER = `${ROOT}service-worker.js`;

function able() {
  return "serviceWorker" in navigator && isSecureContext;
}

/** Keep the copy, unless the member switched it off. */
export async function keepPages() {
  if (!able() || read("no-copy")) return;
  try {
    const registration = await navigator.serviceWorker.register(WORKER, { scope: ROOT, updateViaCache: "none" });
    // A newer copy that was ready before this page was opened takes over now, before anything is touched.
    if (registration.waiting && registration.active && !read("now")) takeOver(registration.waiting);
  } catch {
    // Blocked by the browser's settings: the pages work without a copy.
  }
}

/** @param {ServiceWorker} worker */
function takeOver(worker) {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  worker.postMessage("take over");
}

/**
 * Hear of a newer copy that became ready while this page is open. The listener gets what shows it.
 * @param {(show: () => void) => void} listener
 */
export function onNews(listener) {
  if (!able()) return;
  void navigator.serviceWorker.ready.then((registration) => {
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker?.addEventListener("statechange", () => {
        if (worker.state === "installed" && registration.active) listener(() => takeOver(worker));
      });
    });
  });
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
