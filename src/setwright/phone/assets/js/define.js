// One line an element: its module is fetched only where a page holds the tag. Naming a tag twice is harmless.
import { settings } from "./device/member.js";
import { start } from "./elements/everywhere.js";

/** @type {Record<string, () => Promise<CustomElementConstructor>>} */
const elements = {
  "sw-home": async () => (await import("./elements/home.js")).Home,
  "sw-my-weeks": async () => (await import("./elements/my-weeks.js")).MyWeeks,
  "sw-own-dates": async () => (await import("./elements/own-dates.js")).OwnDates,
  "sw-print": async () => (await import("./elements/print.js")).Print,
  "sw-load": async () => (await import("./elements/load.js")).Load,
  "sw-own-weight": async () => (await import("./elements/own-weight.js")).OwnWeight,
  "sw-cap": async () => (await import("./elements/cap.js")).Cap,
  "sw-guide": async () => (await import("./elements/guide.js")).Guide,
  "sw-settings": async () => (await import("./elements/settings.js")).SettingsForm,
  "sw-copies": async () => (await import("./elements/copies.js")).Copies,
  "sw-log": async () => (await import("./elements/log.js")).Log,
  "sw-figure": async () => (await import("./elements/figure.js")).Figure,
  "sw-offline": async () => (await import("./elements/offline.js")).Offline,
  "sw-review": async () => (await import("./elements/review.js")).Review,
};

/**
 * @param {string} name
 * @param {() => Promise<CustomElementConstructor>} load
 */
async function define(name, load) {
  const element = await load();
  if (!customElements.get(name)) customElements.define(name, element);
}

/** Where a member chose nothing, pages say all that there is to say of dates, and its modules stay where they are. */
const idle = (/** @type {string} */ name) => name === "sw-own-dates" && !Object.keys(settings().plans).length;

function defineAll() {
  for (const [name, load] of Object.entries(elements)) {
    if (idle(name)) continue;
    if (!customElements.get(name) && document.querySelector(name)) void define(name, load);
  }
}

defineAll();
start();

// The theme changes pages without a reload where its instant loading is on, and says so on this stream.
const { document$ } = /** @type {{document$?: {subscribe(next: () => void): void}}} */ (/** @type {unknown} */ (window));
document$?.subscribe(defineAll);
