import type { CallbackList } from "#core/wire/index.ts";
import { clocksOf } from "../jobs/view.ts";
import type { Services } from "../services.ts";

type Line = CallbackList["callbacks"][number];

/** Open ones first, the longest open on top; then the closed ones, the newest on top. */
function openFirst(a: Line, b: Line): number {
  if (a.closed !== b.closed) return a.closed ? 1 : -1;
  return a.closed ? b.at - a.at : a.at - b.at;
}

/** Every callback of a company's jobs. */
export async function callbackListOf(services: Services, company: string): Promise<CallbackList> {
  const callbacks: Line[] = [];
  for (const row of await services.jobs.jobs(company)) {
    const { title, ownNumber, callbacks: own } = await clocksOf(services, { company, job: row.job }, row);
    callbacks.push(
      ...own.map(({ entry, symptom, at, closed }) => ({
        job: row.job,
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
