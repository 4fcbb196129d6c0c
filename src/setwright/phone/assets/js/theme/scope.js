// What the theme's own script keeps of a member, the choice of colours, lies under the site's own path.
// The theme writes this into every page; as a file it needs no exception in the pages' content security policy.
// It is no module: the theme's script looks for these names, and they must be there before the page is drawn.

/** @typedef {{getItem(key: string): string | null, setItem(key: string, value: string): void}} Store */

Object.assign(window, {
  __md_scope: new URL("../../../", /** @type {HTMLScriptElement} */ (document.currentScript).src),
  /** @param {string} text */
  __md_hash: (text) => [...text].reduce((sum, letter) => (sum << 5) - sum + letter.charCodeAt(0), 0),
  /**
   * @param {string} key
   * @param {Store} store
   * @param {URL} scope
   */
  __md_get(key, store = localStorage, scope = /** @type {any} */ (window).__md_scope) {
    try {
      return JSON.parse(store.getItem(`${scope.pathname}.${key}`) ?? "null");
    } catch {
      return null;
    }
  },
  /**
   * @param {string} key
   * @param {unknown} value
   * @param {Store} store
   * @param {URL} scope
   */
  __md_set(key, value, store = localStorage, scope = /** @type {any} */ (window).__md_scope) {
    try {
      store.setItem(`${scope.pathname}.${key}`, JSON.stringify(value));
    } catch {
      // A device that keeps nothing: the choice holds for this page.
    }
  },
});

document.documentElement.setAttribute("data-platform", navigator.platform);
