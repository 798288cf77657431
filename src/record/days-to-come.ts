import type { CalendarDay } from "../units/index.ts";
import { coversOf, dayAt, isAfter, type WarrantyClocks, type WarrantyTerms, warrantyPlan } from "../warranty/index.ts";
import { makeWarrantySayer } from "./say-warranty.ts";
import type { Language } from "./when.ts";

export interface DayToCome {
  readonly day: CalendarDay;
  readonly says: string;
}

export const soonestFirst = (a: DayToCome, b: DayToCome): number => (isAfter(a.day, b.day) ? 1 : isAfter(b.day, a.day) ? -1 : 0);

/**
 * Days of a job's warranty that are still to come where the site is, the nearest first: services, what is to be registered, last days of
 * cover. `job`: how the job is called in them, empty where they stand under its name. `at`: milliseconds.
 */
export function daysToCome(
  clocks: WarrantyClocks,
  terms: WarrantyTerms,
  language: Language,
  job: string,
  at: number,
): readonly DayToCome[] {
  const say = makeWarrantySayer(language);
  const today = dayAt(at, clocks.zone);
  const { services, registrations, ends } = warrantyPlan(clocks, terms, coversOf(clocks, terms), today);
  const lines = [
    ...services.map(({ kind, day }) => ({ day, says: `${say.serviceName(kind)}: ${job}` })),
    ...registrations.map(({ part, by, with: whom }) => ({ day: by, says: say.text("calendar-register", { part, whom, job }) })),
    ...ends.map(({ part, day }) => ({ day, says: say.text("calendar-ends", { part, job }) })),
  ];
  return lines
    .filter(({ day }) => !isAfter(today, day))
    .map(({ day, says }) => ({ day, says: says.replace(/[\s,:;·]+$/u, "") }))
    .sort(soonestFirst);
}
