// A plan's list of days from the site, and what this device keeps of the member's own weeks of it.
import { nothingChosen } from "../logic/week.js";
import { keepSettings, settings } from "./member.js";

/** @typedef {import("../logic/week.js").Plan} Plan */
/** @typedef {import("../logic/week.js").Own} Own */

/**
 * @param {string | undefined} address
 * @returns {Promise<Plan | undefined>} undefined without signal and without a kept copy
 */
export async function planAt(address) {
  if (!address) return undefined;
  try {
    const answer = await fetch(address);
    return answer.ok ? await answer.json() : undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {Plan} plan
 * @returns {Own}
 */
export function ownOf(plan) {
  return settings().plans[plan.ident] ?? nothingChosen();
}

/**
 * @param {Plan} plan
 * @param {Own} own
 * @returns {string} nothing, or why it was not saved
 */
export function keepOwn(plan, own) {
  const mine = settings();
  return keepSettings({ ...mine, plans: { ...mine.plans, [plan.ident]: own } });
}
