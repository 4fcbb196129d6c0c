// On every page: the text size, the copy for places without signal, and a line at the foot when there is news.
import { settings } from "../device/member.js";
import { answer, asksFirst, hasCopy, keepPages, onNews } from "../device/pages.js";
import { onChange } from "../device/store.js";
import { underWay } from "../device/under-way.js";
import { button, link, make } from "./make.js";
import { say } from "../words.js";

const QUIET_MS = 6000;

export function start() {
  const size = () => document.documentElement.setAttribute("data-sw-text", settings().text);
  size();
  onChange((key) => key === "settings" && size(), new AbortController().signal);
  sayUnderWay();
  onNews((show) => line(say("A newer plan is here."), button(say("Show it"), "sw-button", show)));
  if (document.readyState === "complete") whenQuiet();
  else addEventListener("load", whenQuiet, { once: true });
}

/** Making the copy takes a slow phone's breath away: not before the first touch, or a few seconds on the page. */
function whenQuiet() {
  const stop = new AbortController();
  const keep = () => {
    if (stop.signal.aborted) return;
    stop.abort();
    if (asksFirst()) askForCopy();
    else void keepPages();
  };
  addEventListener("pointerdown", keep, { signal: stop.signal, passive: true });
  setTimeout(keep, hasCopy() ? 0 : QUIET_MS);
}

/** On mobile data nothing large begins unasked. */
function askForCopy() {
  const news = line(
    say("Keep these pages for places without signal? A few MB of mobile data."),
    button(say("Keep them"), "sw-button", () => reply(true)),
    button(say("Not now"), "sw-button", () => reply(false)),
  );
  const reply = (/** @type {boolean} */ yes) => {
    news.remove();
    void answer(yes);
  };
}

/** A session that was left open on another page. */
function sayUnderWay() {
  const run = underWay();
  if (run) line(say("A session is under way."), link(run.page, say("Back to it")));
}

/**
 * @param {string} words
 * @param {...HTMLElement} acts
 */
function line(words, ...acts) {
  let lines = document.querySelector("[data-hook='lines']");
  if (!lines) {
    lines = make("aside", "sw-lines");
    lines.setAttribute("data-hook", "lines");
    lines.setAttribute("aria-label", say("News"));
    document.body.append(lines);
  }
  const news = make("p", "", make("span", "", words), " ", ...acts);
  news.setAttribute("role", "status");
  lines.append(news);
  return news;
}
