// The copy of the site for places without signal. Pages come from the network first, so nobody is stuck with an old plan.
// A copy holds one build, whole, and each file is checked by its digest: old and new pages are never mixed.

/** @typedef {{build: string, bytes: number, files: Record<string, string>}} Kept by file, the first half of its SHA-256 */

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

/** The files of this build. Written here after the build; where it is not, what was opened is kept instead. */
const KEPT = /** @type {Kept | null} */ (null);

const ROOT = new URL("./", worker.location.href);
const FAMILY = `setwright ${ROOT.pathname} `;
const VISITED = "visited";
const OWN = FAMILY + (KEPT ? KEPT.build : VISITED);
const DIGEST = "setwright-digest";
const MADE = new URL("copied-at", ROOT).href;
const PATIENCE_MS = 4000;
const AT_ONCE = 6;
const LIVE = "live";
/** What is written down of open pages lies beside the copy, below this address. */
const NOTES = new URL("served-as/", ROOT).href;
/** A page that is still on its way is in no list of open pages yet. */
const ON_ITS_WAY_MS = 60_000;
/** What a page cannot do without. */
const RUNS = new Set(["script", "style"]);
const WORTH_KEEPING = new Set(["document", "style", "script", "image", "font", "manifest"]);

/** How each open page was served: the copy that all of it comes from, or all of it live. Also written down: the browser
 * puts a worker to sleep between two touches, and a new worker takes over pages that the one before has served. */
/** @type {Map<string, string>} */
const served = new Map();
let tidied = false;
/** When a new page turned out to lack a part: the server is half way through a new plan. */
let halfSince = 0;

worker.addEventListener("install", (event) => {
  // Whole, it takes over at once: pages that are open say that there is a newer plan, and go on until they are left.
  event.waitUntil((KEPT ? keepAll(KEPT) : keepLittle()).then(() => void worker.skipWaiting()));
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(tidy(true).then(() => worker.clients.claim()));
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
  const before = await family();
  const waiting = Object.entries(build.files);
  const work = async () => {
    for (let next = waiting.pop(); next; next = waiting.pop()) await keep(cache, before, next[0], next[1]);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  await cache.put(MADE, new Response(String(Date.now())));
  if (!(await isWhole())) throw new Error("the copy was deleted while it was made");
}

/**
 * Keep one file: from a copy that has the same bytes, or else from the network.
 * @param {Cache} cache
 * @param {string[]} before names of the copies that are here
 * @param {string} name
 * @param {string} digest
 */
async function keep(cache, before, name, digest) {
  const address = addressOf(name);
  for (const one of before) {
    const known = await stored(address, one);
    if (known?.headers.get(DIGEST) === digest) {
      if (one !== OWN) await cache.put(address, known);
      return;
    }
  }
  // A server that tells files apart by their times alone may call a new one unchanged: then all of it is asked for.
  const found = (await published(address, digest, "no-cache")) ?? (await published(address, digest, "reload"));
  // A server that is half way through a new plan: keep the old copy, try again later.
  if (!found) throw new Error(`${name} is not the published one`);
  await cache.put(address, found);
}

/**
 * @param {string} address
 * @param {string} digest
 * @param {RequestCache} how
 */
async function published(address, digest, how) {
  const answer = await fetch(address, { cache: how });
  const body = await answer.arrayBuffer();
  if (!answer.ok || (await digestOf(body)) !== digest) return undefined;
  const type = answer.headers.get("content-type") ?? "";
  return new Response(body, { headers: { "content-type": type, [DIGEST]: digest } });
}

/** Whether the copy of this build is here with all of its files. */
async function isWhole() {
  if (!KEPT || !(await caches.has(OWN))) return false;
  const kept = new Set((await (await caches.open(OWN)).keys()).map((one) => one.url));
  return Object.keys(KEPT.files).every((name) => kept.has(addressOf(name)));
}

/**
 * Delete the copies that no open page comes from, and what was written down of pages that are closed.
 * @param {boolean} all also copies that were never finished: of use to the next attempt, until one has succeeded
 */
async function tidy(all) {
  const open = new Set((await worker.clients.matchAll({ includeUncontrolled: true, type: "all" })).map(({ id }) => id));
  for (const name of await family()) {
    const cache = await caches.open(name);
    let used = name === OWN;
    for (const { url } of await cache.keys()) {
      if (!url.startsWith(NOTES)) continue;
      const note = await (await cache.match(url))?.json();
      const here = open.has(url.slice(NOTES.length)) || Date.now() - note?.at < ON_ITS_WAY_MS;
      if (!here) await cache.delete(url);
      else if (note.how === name) used = true;
    }
    const done = all || name === FAMILY + VISITED || (await cache.match(MADE)) !== undefined;
    // A newer copy that is being made, or waits for its turn, is not this worker's to delete.
    const { installing, waiting } = worker.registration;
    if (!used && done && !installing && !waiting) await caches.delete(name);
  }
}

async function family() {
  return (await caches.keys()).filter((name) => name.startsWith(FAMILY));
}

/** @param {FetchEvent} event */
async function page(event) {
  if (!tidied) event.waitUntil(tidy(false).catch(() => undefined));
  tidied = true;
  const { request, resultingClientId } = event;
  const address = plain(request.url);
  const copy = await stored(address, OWN);
  const half = copy && Date.now() - halfSince < ON_ITS_WAY_MS;
  const answer = half ? undefined : await fresh(request, copy !== undefined);
  // A page that the whole copy has and the server does not: it is half way through, or its plan is over. Either way the
  // worker that is asked for anew tells.
  const lost = answer?.status === 404 && copy !== undefined;
  if (lost) event.waitUntil(worker.registration.update().catch(() => undefined));
  if (!answer || busy(answer) || lost) {
    const folder = copy || answer ? undefined : await stored(`${address}/`, OWN);
    if (folder) return Response.redirect(`${address}/`);
    if (!copy) return answer ?? Response.redirect(new URL(`offline/?page=${encodeURIComponent(address)}`, ROOT).href);
    remember(event, resultingClientId, OWN);
    return copy;
  }
  if (answer.ok && !KEPT) return await visited(event, answer);
  const same = answer.ok && (await digestOf(await answer.clone().arrayBuffer())) === KEPT?.files[nameOf(address)];
  if (answer.ok && !same) event.waitUntil(worker.registration.update().catch(() => undefined));
  remember(event, resultingClientId, same ? OWN : LIVE);
  return answer;
}

/** @param {FetchEvent} event */
async function part(event) {
  const { request, clientId, resultingClientId } = event;
  const address = plain(request.url);
  const how = await howServed(clientId);
  // What a page's own worker asks for belongs to the page.
  if (how) remember(event, resultingClientId, how);
  const own = how && how !== LIVE ? await stored(address, how) : undefined;
  if (own) return own;
  const copy = how ? undefined : await stored(address, OWN);
  const answer = await fresh(request, copy !== undefined);
  if (copy && (!answer || busy(answer))) {
    // The rest of this page need not wait for a silent net again.
    remember(event, clientId, OWN);
    return copy;
  }
  if (!answer) return Response.error();
  if (how === LIVE && answer.status === 404 && RUNS.has(request.destination)) event.waitUntil(backToCopy(clientId));
  return KEPT ? answer : await visited(event, answer);
}

/**
 * A page whose script or style is not there yet shows less than the copy could: once, the copy is shown in its place.
 * @param {string} client
 */
async function backToCopy(client) {
  const page = await worker.clients.get(client);
  if (!(page instanceof WindowClient) || !(await stored(plain(page.url), OWN))) return;
  halfSince = Date.now();
  await page.navigate(page.url).catch(() => undefined);
}

/**
 * Whether a host cannot serve now, though it may soon: it fails, asks to wait, or the request came too slowly.
 * @param {Response} answer
 */
function busy(answer) {
  return answer.status >= 500 || answer.status === 429 || answer.status === 408;
}

/**
 * The network's answer, asked for anew: a browser's own cache may hold a file of the plan before. Nothing where there is
 * none. With a copy at hand, a net that is silent for a while, before its answer or within it, counts as none.
 * @param {Request} request
 * @param {boolean} copied
 */
async function fresh(request, copied) {
  if (!copied) return fetch(request, { cache: "no-cache" }).catch(() => undefined);
  const stop = new AbortController();
  let timer = 0;
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(() => stop.abort(), PATIENCE_MS);
  };
  try {
    wait();
    const answer = await fetch(request, { cache: "no-cache", signal: stop.signal });
    const reader = answer.ok ? answer.body?.getReader() : undefined;
    if (!reader) return answer;
    const pieces = [];
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      pieces.push(next.value);
      wait();
    }
    const { status, statusText, headers } = answer;
    return new Response(new Blob(pieces), { status, statusText, headers });
  } catch {
    return undefined;
  } finally {
    clearTimeout(timer);
  }
}

/**
 * Keep what was opened, where there is no list of files.
 * @param {FetchEvent} event
 * @param {Response} answer
 */
async function visited(event, answer) {
  const { destination, url } = event.request;
  const worth = WORTH_KEEPING.has(destination) || plain(url).endsWith(".json");
  if (answer.ok && worth) event.waitUntil(write(plain(url), answer.clone()));
  return answer;
}

/**
 * @param {FetchEvent} event
 * @param {string} client
 * @param {string} how
 */
function remember(event, client, how) {
  if (!client || served.get(client) === how) return;
  if (served.size > 50) served.clear();
  served.set(client, how);
  event.waitUntil(write(NOTES + client, new Response(JSON.stringify({ how, at: Date.now() }))));
}

/**
 * The copy that a page comes from, or that it came live; undefined where nobody knows.
 * @param {string} client
 */
async function howServed(client) {
  const known = served.get(client);
  if (known || !client) return known;
  for (const name of await family()) {
    const note = await (await stored(NOTES + client, name))?.json();
    // What was newer than another copy may be this one by now.
    if (!note || (note.how === LIVE && name !== OWN)) continue;
    served.set(client, note.how);
    return /** @type {string} */ (note.how);
  }
  return undefined;
}

/**
 * Looking never makes a copy that is not there, as opening would: a deleted one stays deleted.
 * @param {string} address
 * @param {string} name of the copy
 */
function stored(address, name) {
  return caches.match(address, { cacheName: name });
}

/**
 * @param {string} address
 * @param {Response} answer
 */
async function write(address, answer) {
  if (await caches.has(OWN)) await (await caches.open(OWN)).put(address, answer);
}

/** What the page "Without signal" tells. */
async function kept() {
  const cache = (await caches.has(OWN)) ? await caches.open(OWN) : undefined;
  if (!cache) return undefined;
  const requests = (await cache.keys()).filter(({ url }) => url !== MADE && !url.startsWith(NOTES));
  const made = await (await cache.match(MADE))?.text();
  const copy = { kept: requests.length, whole: await isWhole(), since: made ? Number(made) : null, build: OWN };
  if (KEPT) return { ...copy, bytes: KEPT.bytes };
  const sizes = await Promise.all(requests.map(async (one) => (await (await cache.match(one))?.blob())?.size ?? 0));
  return { ...copy, bytes: sizes.reduce((sum, size) => sum + size, 0) };
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
