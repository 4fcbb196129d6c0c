// One session of the log, opened: its sums, and each set to be put right or deleted.
import { forget, keepChanged, keepLogged } from "../device/member.js";
import { said, sessionLoad } from "../logic/log.js";
import { effortSelect } from "./effort.js";
import { button, make } from "./make.js";
import { many, say } from "../words.js";

/** @typedef {import("../logic/log.js").Logged} Logged */
/** @typedef {import("../logic/log.js").Entry} Entry */

/**
 * @param {Logged} one
 * @param {(words: string) => void} tell
 * @param {() => void} redraw where the session is gone, or its sums changed
 * @returns {HTMLElement[]}
 */
export function insideOf(one, tell, redraw) {
  const sum = make("p", "sw-muted", sumOf(one));
  const list = make("ul", "sw-plain sw-log-sets");
  const rows = () => list.replaceChildren(...one.sets.map((set) => setRow(one, set, tell, rows, sum, redraw)));
  rows();
  const effort = effortSelect(one.effort);
  effort.addEventListener("change", () => {
    one.effort = effort.value === "" ? null : Number(effort.value);
    const { session, failed } = keepLogged(one, (what) => what === "effort");
    tell(failed || say("Saved on this device."));
    sum.textContent = sumOf(session);
    redraw();
  });
  const drop = button(say("Delete this session"), "sw-link", () => {
    if (!confirm(say("Delete this session from the log?"))) return;
    forget(one.id);
    redraw();
  });
  const next = one.next?.length ? [make("ul", "sw-plain", ...one.next.map((line) => make("li", "", line)))] : [];
  return [sum, list, ...next, make("p", "", make("label", "", `${say("Effort of the whole session")} `, effort)), drop];
}

/**
 * @param {Logged} one
 * @param {Entry} set
 * @param {(words: string) => void} tell
 * @param {() => void} redraw
 * @param {HTMLElement} sum
 * @param {() => void} changed for what stands outside
 */
function setRow(one, set, tell, redraw, sum, changed) {
  const words = [said(set), set.load, set.effort === null ? "" : say("effort %(effort)s", { effort: set.effort })].filter(Boolean).join(", ");
  const row = make("li", "", make("span", "", `${set.set}. ${set.name}: ${words}`));
  const edit = button(say("Change"), "sw-link", () => row.replaceChildren(...form(one, set, tell, redraw, sum, changed)));
  edit.setAttribute("aria-label", say("Change %(exercise)s, set %(number)s", { exercise: set.name, number: set.set }));
  row.append(" ", edit);
  return row;
}

/**
 * @param {Logged} one
 * @param {Entry} set
 * @param {(words: string) => void} tell
 * @param {() => void} redraw
 * @param {HTMLElement} sum
 * @param {() => void} changed for what stands outside
 */
function form(one, set, tell, redraw, sum, changed) {
  const amount = field(String(set.measure === "distance" ? set.amount / 100 : set.amount), 8);
  amount.inputMode = "decimal";
  const load = field(set.load, 40);
  const effort = effortSelect(set.effort);
  const keep = (/** @type {Entry[]} */ sets) => {
    const failed = keepChanged({ ...one, sets });
    if (!failed) one.sets = sets;
    tell(failed || say("Saved on this device."));
    sum.textContent = sumOf(one);
    redraw();
    changed();
  };
  const save = button(say("Save"), "sw-button", () => {
    const number = Number(amount.value.trim().replace(",", "."));
    if (amount.value.trim() === "" || !(number >= 0)) {
      amount.setAttribute("aria-invalid", "true");
      tell(say("A number from 0, please. Nothing was changed."));
      return;
    }
    const counted = set.measure === "distance" ? Math.round(number * 100) : number;
    const changed = { ...set, amount: counted, load: load.value.trim(), effort: effort.value === "" ? null : Number(effort.value) };
    keep(one.sets.map((other) => (other === set ? changed : other)));
  });
  const drop = button(say("Delete this set"), "sw-link", () => {
    if (confirm(say("Delete this set from the log?"))) keep(one.sets.filter((other) => other !== set));
  });
  const what = { reps: say("Repetitions"), hold: say("Seconds"), work: say("Seconds"), distance: say("Metres") }[set.measure] ?? "";
  queueMicrotask(() => amount.focus());
  return [
    make("p", "", make("b", "", `${set.set}. ${set.name}`)),
    make("label", "sw-field", what, amount),
    make("label", "sw-field", say("Load"), load),
    make("label", "sw-field", say("Effort"), effort),
    make("p", "sw-actions", save, " ", button(say("As it was"), "sw-button sw-quiet", redraw), " ", drop),
  ];
}

/**
 * @param {string} value
 * @param {number} most
 */
function field(value, most) {
  const input = make("input", "");
  input.value = value;
  input.maxLength = most;
  return input;
}

/** @param {Logged} one */
function sumOf(one) {
  const parts = [
    say("Week %(week)s of %(plan)s", { week: one.week, plan: one.plan }),
    many("%(num)s set", "%(num)s sets", one.sets.length),
    say("%(minutes)s min", { minutes: one.minutes }),
  ];
  if (one.effort !== null) {
    parts.push(say("session effort %(effort)s", { effort: one.effort }), say("session load %(load)s", { load: sessionLoad(one) }));
  }
  return parts.join(", ");
}
