// The box behind "Stop": whom to call, the signs to stop at, and the way out. Ending is the first choice in it.
import { button, make } from "./make.js";
import { copyOf, some, under } from "./session-page.js";
import { say } from "../words.js";

/** @typedef {import("./guide.js").Guide} Guide */

/**
 * The box, which opens as soon as it stands in the page.
 * @param {Guide} guide
 */
export function stopBox(guide) {
  const box = make("dialog", "sw-s-stopbox");
  const title = make("h2", "", say("Stop at once if"));
  title.id = "sw-s-stop-title";
  box.setAttribute("aria-labelledby", title.id);
  const act = (/** @type {() => void} */ after) => () => {
    box.close();
    box.remove();
    after();
  };
  const on = button(say("Go on"), "sw-button sw-quiet", act(() => {}));
  on.autofocus = true;
  const end = button(say("End the session"), "sw-button", act(() => guide.finish(true)));
  const look = button(say("Look at the page"), "sw-button sw-quiet", act(() => guide.leave()));
  box.append(...emergency(), title, ...some(under("stop-if")), make("div", "sw-s-ways", end, look, on));
  box.addEventListener("cancel", (event) => {
    event.stopPropagation();
    box.remove();
  });
  queueMicrotask(() => box.showModal());
  return box;
}

/** What a member reads who ended the session early. */
export function getHelp() {
  const said = say("If a sign made you stop, get help now. Do not train it away, and do not wait.");
  return [make("p", "", said), ...emergency()];
}

/** What to do in an emergency, as the page says it. */
function emergency() {
  return some(copyOf(document.querySelector("[data-part='emergency']")));
}
