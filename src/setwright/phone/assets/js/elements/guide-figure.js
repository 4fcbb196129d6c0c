// The figure of a set, moving and large. It lies on the exercise's own page, and the small one stands in until it is here.
import { make } from "./make.js";
import { copyOf, partOf } from "./session-page.js";

/** @type {Map<string, Promise<Element | undefined>>} by address of the exercise's page */
const found = new Map();

/**
 * The place of the figure, where the exercise has one.
 * @param {HTMLElement} item what stands on the session's page about the exercise
 */
export function figureOf(item) {
  const small = copyOf(partOf(item, "head")?.querySelector("svg") ?? null);
  const page = partOf(item, "page")?.querySelector("a")?.href;
  if (!small || !page) return [];
  const place = make("div", "sw-s-figure", small);
  void moving(page).then((figure) => {
    if (figure) place.replaceChildren(/** @type {Element} */ (document.importNode(figure, true)));
  });
  return [place];
}

/** @param {string} page */
function moving(page) {
  const known = found.get(page) ?? fetched(page);
  found.set(page, known);
  return known;
}

/**
 * @param {string} page
 * @returns {Promise<Element | undefined>} nothing without signal and without a kept copy: the small one stays
 */
async function fetched(page) {
  try {
    const [answer, { Figure }] = await Promise.all([fetch(page), import("./figure.js")]);
    if (!answer.ok) return undefined;
    if (!customElements.get("sw-figure")) customElements.define("sw-figure", Figure);
    const figure = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("sw-figure");
    return figure ?? undefined;
  } catch {
    found.delete(page);
    return undefined;
  }
}
