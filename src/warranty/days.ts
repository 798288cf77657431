import { type CalendarDay, calendarDay, dayNumber, daysInMonth, momentIn } from "../units/index.ts";

/** The day on which a moment (ms) falls where the site is. */
export function dayAt(milliseconds: number, zone: string): CalendarDay {
  const { year, month, day } = momentIn(milliseconds, zone);
  return { year, month, day };
}

/**
 * The last day of a cover of whole months: the day of the same number, or the month's last where it has none
 * (29 February 2024 and a year: 28 February 2025; 31 January and a month: 28 February). Counted from the first day at once,
 * never year by year, so that four years from 29 February 2024 end on 29 February 2028. One rule, used wherever a cover ends.
 */
export function lastDayOfCover({ year, month, day }: CalendarDay, coveredMonths: number): CalendarDay {
  const index = year * 12 + (month - 1) + coveredMonths;
  const endYear = Math.floor(index / 12);
  const endMonth = (index % 12) + 1;
  return { year: endYear, month: endMonth, day: Math.min(day, daysInMonth(endYear, endMonth)) };
}

export const daysLater = (day: CalendarDay, days: number): CalendarDay => calendarDay(dayNumber(day) + days);

/** Days from one day to another; negative where the other comes first. */
export const daysBetween = (from: CalendarDay, to: CalendarDay): number => dayNumber(to) - dayNumber(from);

export const isAfter = (day: CalendarDay, other: CalendarDay): boolean => daysBetween(other, day) > 0;

/** The first of these days; undefined where there is none. */
export const earliest = <T extends { readonly day: CalendarDay }>(found: readonly T[]): T | undefined =>
  found.reduce<T | undefined>((best, one) => (best === undefined || isAfter(best.day, one.day) ? one : best), undefined);
