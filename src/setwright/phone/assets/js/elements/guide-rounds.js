// As many rounds as possible: all exercises of the block at one glance, a running clock, and a tap for each round.
import { clock } from "../logic/run.js";
import { amountOf } from "../logic/steps.js";
import { button, make } from "./make.js";
import { copyOf, inParagraph, partOf, some } from "./session-page.js";
import { many, say } from "../words.js";

/** @typedef {import("./guide.js").Guide} Guide */
/** @typedef {import("../logic/steps.js").Step} Step */
/** @typedef {ReturnType<typeof import("../logic/run.js").clock>} Clock */

/**
 * @param {Guide} guide
 * @param {Step} step
 * @param {HTMLElement} face where the clock is shown
 * @returns {Node[]}
 */
export function roundsOf(guide, step, face) {
  const block = guide.blocks[step.block];
  const count = guide.run?.count ?? 0;
  const counted = make("p", "sw-s-rounds", make("b", "", String(count)), ` ${many("round done", "rounds done", count)}`);
  const back = button(say("One fewer"), "sw-link", () => guide.counted(-1));
  back.hidden = !count;
  counted.append(" ", back);
  const list = make("ol", "sw-s-turns");
  block.items.forEach((item, index) => {
    const turn = { ...step, kind: /** @type {const} */ ("set"), item: index, round: 1 };
    const page = guide.itemOf(turn);
    const words = [amountOf(turn, guide.blocks), guide.loadOf(turn).text].filter(Boolean).join(", ");
    const parts = ["grave", "not-for", "feels", "bound", "height", "note", "stop", "care", "limits"].flatMap((name) => some(copyOf(partOf(page, name))));
    const way = partOf(page, "easier");
    if (way) parts.push(make("details", "sw-s-easier", make("summary", "", say("Too hard?")), ...some(inParagraph(way))));
    list.append(make("li", "", make("p", "sw-s-turn", make("b", "", item.name), ` ${words}`), ...parts));
  });
  return [face, counted, list];
}

/**
 * @param {Guide} guide
 * @param {Clock} at
 */
export function roundsMain(guide, at) {
  if (at.state === "still") return say("Start");
  if (at.state === "lead") return say("Get ready");
  return at.state === "over" || isEnough(guide) ? say("Go on") : say("Round done");
}

/**
 * What the large button does.
 * @param {Guide} guide
 */
export function actOnRounds(guide) {
  const { step, blocks, run } = guide;
  if (!run) return;
  const { state } = clock(step, blocks, run, Date.now());
  if (state === "still") guide.startClock();
  else if (state === "over" || isEnough(guide)) guide.move(1);
  else if (state === "going") guide.counted(1);
}

/** @param {Guide} guide */
function isEnough(guide) {
  const most = guide.blocks[guide.step.block].up_to;
  return most !== undefined && (guide.run?.count ?? 0) >= most;
}
