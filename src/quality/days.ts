import { calendarDay, dayNumber, isoDay, momentIn, typedDay } from "../units/index.ts";

const DAY_MS = 86_400_000;

/** The day, 'YYYY-MM-DD', on which a moment (ms) falls where the site is. */
export const dayText = (at: number, zone: string): string => isoDay(momentIn(at, zone));

/** Whole days since 1970-01-01; NaN of what is no day. */
export function dayCount(day: string): number {
  const read = typedDay(day);
  return read === undefined ? Number.NaN : dayNumber(read);
}

/** The day so many days after 1970-01-01. */
export const dayOfCount = (count: number): string => isoDay(calendarDay(count));

/** Noon of a day in UTC, milliseconds: for putting days and instants on one axis. */
export const noonOf = (day: string): number => dayCount(day) * DAY_MS + DAY_MS / 2;

/** 1 to 12. */
export const monthOf = (day: string): number => Number(day.slice(5, 7));
