// A second session while one is under way: asked, never pushed out.
import { button, link, make } from "./make.js";
import { say } from "../words.js";

/**
 * The question, which opens as soon as it stands in the page.
 * @param {{page: string, session: string}} first
 * @param {() => void} begin the second one
 */
export function askFirst({ page, session }, begin) {
  const box = make("dialog", "sw-s-stopbox sw-s-second");
  const title = make("h2", "", session ? say("%(session)s is under way", { session }) : say("Another session is under way"));
  title.id = "sw-s-second-title";
  box.setAttribute("aria-labelledby", title.id);
  const back = link(page, say("Back to it"));
  back.className = "sw-button";
  const close = () => {
    box.close();
    box.remove();
  };
  const end = button(say("End it and start this one"), "sw-button sw-quiet", () => {
    close();
    begin();
  });
  const neither = button(say("Neither"), "sw-button sw-quiet", close);
  const ways = make("div", "sw-s-ways", back, neither, end);
  box.append(title, make("p", "", say("Its sets are in the log and stay there. Its place is lost when you start another session.")), ways);
  box.addEventListener("cancel", () => box.remove());
  queueMicrotask(() => box.showModal());
  return box;
}
