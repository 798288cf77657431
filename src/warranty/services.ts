import { type CalendarDay, daysInMonth } from "../units/index.ts";
import type { OnDay, WarrantyClocks } from "./clocks.ts";
import { daysBetween, daysLater, isAfter, lastDayOfCover } from "./days.ts";
import type { PlannedService, ServiceKind } from "./terms.ts";

/** One occasion of a service. */
export interface ServiceDue {
  readonly kind: ServiceKind;
  readonly day: CalendarDay;
  /** The last day on which it still counts. */
  readonly until: CalendarDay;
  readonly done?: OnDay;
}

/** Years that a plan looks ahead at most. */
const MOST_YEARS = 100;

function occasions({ kind, daysAfter, month, day = 1 }: PlannedService, from: CalendarDay, to: CalendarDay): readonly CalendarDay[] {
  if (month === undefined && daysAfter !== undefined) return [daysLater(from, daysAfter)];
  if (month === undefined && kind === "return visit") return [];
  const years = Array.from({ length: Math.min(to.year - from.year, MOST_YEARS) + 1 }, (_, index) => index);
  return years.map((year) =>
    month === undefined
      ? lastDayOfCover(from, 12 * (year + 1))
      : { year: from.year + year, month, day: Math.min(day, daysInMonth(from.year + year, month)) },
  );
}

const plain = (text: string): string => text.trim().toLowerCase();

/**
 * The occasions of a planned service after `from` and not after `to`, each with the entry that shows it done: one of that
 * kind, within the plan's days of it. One entry serves one occasion, the nearest.
 */
export function servicesDue(
  plan: PlannedService,
  services: WarrantyClocks["services"],
  from: CalendarDay,
  to: CalendarDay,
): readonly ServiceDue[] {
  const own = services.filter(({ service }) => plain(service) === plan.kind);
  const days = occasions(plan, from, to).filter((day) => isAfter(day, from) && !isAfter(day, to));
  const nearest = (of: CalendarDay, among: readonly CalendarDay[]): CalendarDay | undefined =>
    [...among].sort((a, b) => Math.abs(daysBetween(of, a)) - Math.abs(daysBetween(of, b)))[0];
  return days.map((day) => {
    const done = own.find((one) => nearest(one.day, days) === day && Math.abs(daysBetween(day, one.day)) <= plan.within);
    return { kind: plan.kind, day, until: daysLater(day, plan.within), ...(done === undefined ? {} : { done }) };
  });
}
