/** A day of the proleptic Gregorian calendar. */
export interface CalendarDay {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export const daysInMonth = (year: number, month: number): number => (month === 2 && isLeapYear(year) ? 29 : (monthDays[month - 1] ?? 0));

/** Days from 1970-01-01 to the day, negative before it. Counted in years that begin in March, so that the leap day comes last. */
export function dayNumber({ year, month, day }: CalendarDay): number {
  const marchYear = month > 2 ? year : year - 1;
  const marchMonth = (month + 9) % 12;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return 365 * marchYear + leapDays + Math.floor((153 * marchMonth + 2) / 5) + day - 1 - 719_468;
}

/** Days to the last that a machine's calendar knows, to either side of 1970 (ECMA-262, 21.4.1.1). */
const FARTHEST = 100_000_000;

/** The day that lies `days` days after 1970-01-01; beyond what a calendar knows the farthest that it does. */
export function calendarDay(days: number): CalendarDay {
  // where years are no longer told apart the steps below would never come to an end
  const number = Math.max(-FARTHEST, Math.min(FARTHEST, days)) || 0;
  let year = 1970 + Math.floor(number / 365.2425);
  while (dayNumber({ year, month: 1, day: 1 }) > number) year -= 1;
  while (dayNumber({ year: year + 1, month: 1, day: 1 }) <= number) year += 1;
  let month = 12;
  while (dayNumber({ year, month, day: 1 }) > number) month -= 1;
  return { year, month, day: number - dayNumber({ year, month, day: 1 }) + 1 };
}

/** A typed day, 'YYYY-MM-DD', that exists. It never passes through an instant, so no zone can move it. */
export function typedDay(text: string): CalendarDay | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year = 0, month = 0, day = 0] = match.slice(1).map(Number);
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month) ? { year, month, day } : undefined;
}

/** 'YYYY-MM-DD'. Years 0 to 9999. */
export const isoDay = ({ year, month, day }: CalendarDay): string => `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}`;

const padded = (value: number, width: number): string => value.toString().padStart(width, "0");

/** Milliseconds since 1970-01-01T00:00:00Z as ISO 8601 in UTC; seconds' fractions only where there are any. Years 0 to 9999. */
export function instantText(milliseconds: number): string {
  const days = Math.floor(milliseconds / 86_400_000);
  const rest = milliseconds - days * 86_400_000;
  const { year, month, day } = calendarDay(days);
  const hours = Math.floor(rest / 3_600_000);
  const minutes = Math.floor(rest / 60_000) % 60;
  const seconds = Math.floor(rest / 1_000) % 60;
  const fraction = rest % 1_000 === 0 ? "" : `.${padded(rest % 1_000, 3)}`;
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}T${padded(hours, 2)}:${padded(minutes, 2)}:${padded(seconds, 2)}${fraction}Z`;
}
