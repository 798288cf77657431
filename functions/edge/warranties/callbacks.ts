import type { CallbackList } from "#core/wire/index.ts";
import type { Services } from "../services.ts";
import { afterWorkOfAll } from "./after-work.ts";

type Line = CallbackList["callbacks"][number];

/** Open ones first, the longest open on top; then the closed ones, the newest on top. */
function openFirst(a: Line, b: Line): number {
  if (a.closed !== b.closed) return a.closed ? 1 : -1;
  return a.closed ? b.at - a.at : a.at - b.at;
}

/** Every callback of a company's jobs. */
export async function callbackListOf(services: Services, company: string): Promise<CallbackList> {
  const callbacks: Line[] = [];
  for (const { job, title, ownNumber, callbacks: own } of await afterWorkOfAll(services, company)) {
    callbacks.push(
      ...own.map(({ entry, symptom, at, closed }) => ({
        job,
        title,
        ...(ownNumber === undefined ? {} : { ownNumber }),
        entry,
        symptom,
        at: Math.round(at),
        closed: closed !== undefined,
        ...(closed === undefined ? {} : { confirmed: closed.confirmed }),
      })),
    );
  }
  return { callbacks: callbacks.sort(openFirst) };
}
