import type { CalendarDay } from "../units/index.ts";
import type { WarrantyClocks } from "./clocks.ts";
import type { Cover, Registration } from "./covers.ts";
import { isAfter, lastDayOfCover } from "./days.ts";
import { handedOver } from "./handed-over.ts";
import { type ServiceDue, servicesDue } from "./services.ts";
import type { WarrantyTerms } from "./terms.ts";

/** What a calendar of one job holds. */
export interface WarrantyPlan {
  readonly services: readonly ServiceDue[];
  /** `place`: of the term among the company's, counted from 0. */
  readonly registrations: readonly (Registration & { readonly part: string; readonly place: number })[];
  readonly ends: readonly { readonly part: string; readonly place: number; readonly day: CalendarDay }[];
}

/** So far services are planned where no cover runs longer, months after handing over (own). */
const LEAST_MONTHS = 24;

/**
 * What is still to come on `today`: services that are planned and not done, as long as any cover runs, parts to be registered, and
 * last days of cover. Services are counted from handing over, else from the first running; without either there are none.
 */
export function warrantyPlan(clocks: WarrantyClocks, terms: WarrantyTerms, covers: readonly Cover[], today: CalendarDay): WarrantyPlan {
  const from = (handedOver(clocks, terms) ?? clocks.firstRunning)?.day;
  const ends = covers.flatMap(({ part, end }, place) => (end === undefined ? [] : [{ part, place, day: end }]));
  const last = (start: CalendarDay): CalendarDay =>
    ends.reduce((latest, { day }) => (isAfter(day, latest) ? day : latest), lastDayOfCover(start, LEAST_MONTHS));
  const due = from === undefined ? [] : terms.services.flatMap((plan) => servicesDue(plan, clocks.services, from, last(from)));
  return {
    services: due
      .filter(({ done, until }) => done === undefined && !isAfter(today, until))
      .sort((a, b) => (isAfter(a.day, b.day) ? 1 : isAfter(b.day, a.day) ? -1 : 0)),
    registrations: covers.flatMap(({ part, registration }, place) =>
      registration === undefined || registration.done !== undefined ? [] : [{ ...registration, part, place }],
    ),
    ends: ends.filter(({ day }) => !isAfter(today, day)),
  };
}
