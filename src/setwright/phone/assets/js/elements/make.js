// Making elements: a tag with classes, what it holds, and what a touch does.

/**
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {string} classes
 * @param {...(Node | string)} inside
 * @returns {HTMLElementTagNameMap[T]}
 */
export function make(tag, classes, ...inside) {
  const element = document.createElement(tag);
  if (classes) element.className = classes;
  element.append(...inside);
  return element;
}

/**
 * @param {string} text
 * @param {string} classes
 * @param {() => void} act
 */
export function button(text, classes, act) {
  const element = make("button", classes, text);
  element.type = "button";
  element.addEventListener("click", act);
  return element;
}

/**
 * @param {string} address
 * @param {string} text
 */
export function link(address, text) {
  const element = make("a", "", text);
  element.href = address;
  return element;
}

/**
 * The one element that a selector finds. It is there: the page and this script are made for each other.
 * @template {HTMLElement} [T=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @returns {T}
 */
export function the(root, selector) {
  const found = root.querySelector(selector);
  if (!found) throw new Error(`the page has no ${selector}`);
  return /** @type {T} */ (found);
}

/**
 * Shows the tools of a page that need this script, and hides what stands there for want of it.
 * @param {Element} element
 */
export function revealTools(element) {
  element.closest("[data-hook='tools']")?.removeAttribute("hidden");
  for (const hint of document.querySelectorAll("[data-hook='needs-script']")) hint.setAttribute("hidden", "");
}
