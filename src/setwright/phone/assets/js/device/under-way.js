// The session that is under way on this device, whichever page it runs on. A second one does not push it out unasked.
import { localTime } from "../logic/log.js";
import { loggedAt } from "./member.js";
import { read, ROOT } from "./store.js";

const HALF_DAY_MS = 12 * 3600 * 1000;

/**
 * A session that was left open on another page of this site.
 * @returns {{page: string, session: string} | undefined} session: its name, where a set of it is in the log
 */
export function underWay() {
  const run = /** @type {{page?: unknown, since?: unknown, started?: unknown} | undefined} */ (read("now"));
  if (typeof run?.page !== "string" || typeof run.since !== "number") return undefined;
  const old = Date.now() - run.since > HALF_DAY_MS;
  if (old || run.page === location.pathname || !run.page.startsWith(ROOT)) return undefined;
  const logged = typeof run.started === "number" ? loggedAt(localTime(run.started)) : undefined;
  return { page: run.page, session: logged?.session ?? "" };
}
