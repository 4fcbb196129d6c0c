// The copy of the site for places without signal. Pages come from the network first, so nobody is stuck with an old plan.
// A copy holds one build, whole, and each file is checked by its digest: old and new pages are never mixed.

/** @typedef {{build: string, bytes: number, files: Record<string, string>}} Kept by file, the first half of its SHA-256 */

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

/** The files of this build. Written here after the build; where it is not, what was opened is kept instead. */
const KEPT = /** @type {Kept | null} */ (null);

const ROOT = new URL("./", worker.location.href);
const FAMILY = `setwright ${ROOT.pathname} `;
const OWN = FAMILY + (KEPT ? KEPT.build : "visited");
const DIGEST = "setwright-digest";
const MADE = new URL("copied-at", ROOT).href;
const PATIENCE_MS = 4000;
const AT_ONCE = 6;
const WORTH_KEEPING = new Set(["document", "style", "script", "image", "font", "manifest"]);

/** How each open page was served: all of it from the copy, or all of it live. */
/** @type {Map<string, "kept" | "live">} */
const served = new Map();

worker.addEventListener("install", (event) => {
  // Whole, it takes over at once: pages that are open say that there is a newer plan, and go on until they are left.
  event.waitUntil((KEPT ? keepAll(KEPT) : keepLittle()).then(() => void worker.skipWaiting()));
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) if (name.startsWith(FAMILY) && name !== OWN) await caches.delete(name);
      await worker.clients.claim();
    })(),
  );
});

worker.addEventListener("message", (event) => {
  if (event.data === "what is kept") event.waitUntil(kept().then((copy) => event.ports[0].postMessage(copy)));
});

worker.addEventListener("fetch", (event) => {
  const { method, mode, url, headers } = event.request;
  if (method !== "GET" || !url.startsWith(ROOT.href) || headers.has("range")) return;
  event.respondWith(mode === "navigate" ? page(event) : part(event));
});

/** Without a list, at least the way home and the page that explains. */
async function keepLittle() {
  const cache = await caches.open(OWN);
  await cache.addAll([ROOT.href, new URL("offline/", ROOT).href]);
}

/** @param {Kept} build */
async function keepAll(build) {
  const cache = await caches.open(OWN);
  const names = (await caches.keys()).filter((name) => name.startsWith(FAMILY));
  const before = await Promise.all(names.map((name) => caches.open(name)));
  const waiting = Object.entries(build.files);
  const work = async () => {
    for (let next = waiting.pop(); next; next = waiting.pop()) await keep(cache, before, next[0], next[1]);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  await cache.put(MADE, new Response(String(Date.now())));
}

/**
 * Keep one file: from a copy that has the same bytes, or else from the network.
 * @param {Cache} cache
 * @param {Cache[]} before
 * @param {string} name
 * @param {string} digest
 */
async function keep(cache, before, name, digest) {
  const address = addressOf(name);
  for (const one of before) {
    const known = await one.match(address);
    if (known?.headers.get(DIGEST) === digest) {
      if (one !== cache) await cache.put(address, known);
      return;
    }
  }
  const answer = await fetch(address, { cache: "no-cache" });
  const body = await answer.arrayBuffer();
  // A server that is half way through a new plan: keep the old copy, try again later.
  if (!answer.ok || (await digestOf(body)) !== digest) throw new Error(`${name} is not the published one`);
  const type = answer.headers.get("content-type") ?? "";
  await cache.put(address, new Response(body, { headers: { "content-type": type, [DIGEST]: digest } }));
}

/** @param {FetchEvent} event */
async function page(event) {
  const address = plain(event.request.url);
  const copy = await stored(address);
  const network = fresh(event.request);
  const answer = await (copy ? Promise.race([network, patience()]) : network);
  if (!answer || answer.status >= 500) {
    if (copy) return remember(event, "kept", copy);
    return answer ?? Response.redirect(new URL(`offline/?page=${encodeURIComponent(address)}`, ROOT).href);
  }
  if (!answer.ok || answer.type !== "basic") return remember(event, "live", answer);
  if (!KEPT) return await visited(event, answer);
  const same = (await digestOf(await answer.clone().arrayBuffer())) === KEPT.files[nameOf(address)];
  if (!same) event.waitUntil(worker.registration.update().catch(() => undefined));
  return remember(event, same ? "kept" : "live", answer);
}

/** @param {FetchEvent} event */
async function part(event) {
  const { request, clientId } = event;
  const how = served.get(clientId);
  const copy = how === "live" ? undefined : await stored(plain(request.url));
  if (how === "kept" && copy) return copy;
  const answer = await fresh(request);
  if (!answer) return copy ?? Response.error();
  return KEPT ? answer : await visited(event, answer);
}

/**
 * The network's answer, asked for anew: a browser's own cache may hold a file of the plan before.
 * @param {Request} request
 */
function fresh(request) {
  return fetch(request, { cache: "no-cache" }).catch(() => undefined);
}

/**
 * Keep what was opened, where there is no list of files.
 * @param {FetchEvent} event
 * @param {Response} answer
 */
async function visited(event, answer) {
  const { destination, url } = event.request;
  const worth = WORTH_KEEPING.has(destination) || plain(url).endsWith(".json");
  if (answer.ok && answer.type === "basic" && worth) {
    const cache = await caches.open(OWN);
    event.waitUntil(cache.put(plain(url), answer.clone()));
  }
  return answer;
}

/**
 * @param {FetchEvent} event
 * @param {"kept" | "live"} how
 * @param {Response} answer
 */
function remember(event, how, answer) {
  if (served.size > 50) served.clear();
  served.set(event.resultingClientId, how);
  return answer;
}

/** @param {string} address */
async function stored(address) {
  return (await caches.open(OWN)).match(address);
}

/** What the page "Without signal" tells. */
async function kept() {
  const cache = await caches.open(OWN);
  const requests = (await cache.keys()).filter((one) => one.url !== MADE);
  const made = await (await cache.match(MADE))?.text();
  const copy = { kept: requests.length, whole: KEPT !== null, since: made ? Number(made) : null, build: OWN };
  if (KEPT) return { ...copy, bytes: KEPT.bytes };
  const sizes = await Promise.all(requests.map(async (one) => (await (await cache.match(one))?.blob())?.size ?? 0));
  return { ...copy, bytes: sizes.reduce((sum, size) => sum + size, 0) };
}

/** @returns {Promise<undefined>} */
function patience() {
  return new Promise((resolve) => setTimeout(() => resolve(undefined), PATIENCE_MS));
}

/** @param {ArrayBuffer} body */
async function digestOf(body) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return [...bytes.slice(0, 16)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** @param {string} url */
function plain(url) {
  return url.split(/[?#]/)[0];
}

/**
 * The address of a file: a page is asked for by its folder.
 * @param {string} name
 */
function addressOf(name) {
  return new URL(name.replace(/(^|\/)index\.html$/, "$1"), ROOT).href;
}

/** @param {string} address */
function nameOf(address) {
  const name = decodeURIComponent(address.slice(ROOT.href.length));
  return name === "" || name.endsWith("/") ? `${name}index.html` : name;
}
