// The members' page of a session, fetched for the hall's screen: its data, and what it says of each exercise.
import { sessionFrom } from "../logic/steps.js";

const PLACE = /^plans\/[a-z0-9-]+\/week-\d\d+\/[a-z0-9-]+\/$/;

/**
 * @param {string} root the address of the site
 * @param {string | null} place the session's page, as plans/relay/week-01/tuesday/
 */
export async function sessionAt(root, place) {
  if (!place || !PLACE.test(place)) return undefined;
  const page = await pageAt(new URL(place, root).href);
  const session = sessionFrom(page?.querySelector("#session")?.textContent);
  if (!page || !session) return undefined;
  const sheet = await pageAt(new URL(place.replace("plans/", "group/"), root).href);
  const hints = [...(sheet?.querySelectorAll("[data-part='sharing']") ?? [])].map((hint) => hint.textContent ?? "");
  return { page, session, hints };
}

/**
 * A page of this site, with addresses that hold on any other; nothing without signal and without a copy.
 * @param {string} address
 */
async function pageAt(address) {
  try {
    const answer = await fetch(address);
    if (!answer.ok) return undefined;
    const found = new DOMParser().parseFromString(await answer.text(), "text/html");
    for (const one of found.querySelectorAll("[href]")) one.setAttribute("href", new URL(one.getAttribute("href") ?? "", address).href);
    return found.querySelector("article") ?? undefined;
  } catch {
    return undefined;
  }
}
