import type { Watched } from "../../statistics/index.ts";
import { calendarDay, dayNumber } from "../../units/index.ts";
import { dayCount, dayOfCount, monthOf } from "../days.ts";
import type { JobObserved, PartObserved } from "../observation.ts";

/** A thing that was watched, from a day: until its event, or until today without one. */
export interface WatchedFrom extends Watched {
  readonly from: string;
  /** The same day, counted from 1970. */
  readonly start: number;
}

/** Most days come many times over, those of one job one after another: each is counted once. */
function watching(today: string): (from: string, failed: string | undefined) => WatchedFrom {
  const until = dayCount(today);
  const counts = new Map<string, number>();
  let [last, lastCount] = [today, until];
  const countOf = (day: string): number => {
    if (day === last) return lastCount;
    [last, lastCount] = [day, counts.get(day) ?? dayCount(day)];
    counts.set(day, lastCount);
    return lastCount;
  };
  return (from, failed) => {
    const event = failed !== undefined && failed <= today;
    const start = countOf(from);
    return { from, start, event, time: Math.max(0, (event ? dayCount(failed) : until) - start) };
  };
}

/** Each installed job until its first callback, in days. A company that is called back enters it: no call is no callback. */
export function jobsWatched(jobs: readonly JobObserved[], today: string): readonly (WatchedFrom & { readonly job: JobObserved })[] {
  const watched = watching(today);
  return jobs.flatMap((job) => {
    if (job.installed === undefined || job.installed > today) return [];
    const first = job.callbacks.length === 0 ? undefined : job.callbacks.map(({ day }) => day).sort()[0];
    return [Object.assign(watched(job.installed, first), { job })];
  });
}

/** Each part until it failed, in days. */
export function partsWatched(jobs: readonly JobObserved[], today: string): readonly (WatchedFrom & { readonly part: PartObserved })[] {
  const watched = watching(today);
  return jobs.flatMap(({ parts }) =>
    parts
      .filter(({ from }) => from <= today)
      .map((part) => Object.assign(watched(part.from, part.why === "sold" ? undefined : part.failed), { part })),
  );
}

/** December to March: frost and what it breaks (own; the company's place decides). */
const WINTER_MONTHS: ReadonlySet<number> = new Set([12, 1, 2, 3]);
export const isWinter = (day: string): boolean => WINTER_MONTHS.has(monthOf(day));

/** The first of April after the first whole winter: what is installed in December or later waits for the next one. */
export const endOfFirstWinter = (from: string): string => `${Number(from.slice(0, 4)) + (monthOf(from) === 12 ? 2 : 1)}-04-01`;

/** Days of winter before a day, counted from 1970: for days of winter between two days by a subtraction. */
function winterBefore(count: number): number {
  const { year } = calendarDay(count);
  const of = (month: number): number => dayNumber({ year, month, day: 1 });
  const wholeYears = year - 1970;
  // 31 of December, 31 + 28 + 31 of January to March, and the leap days of those years
  const leapDays = Math.floor((year - 1969) / 4) - (year > 2100 ? 1 : 0);
  const before = wholeYears * 121 + leapDays;
  return before + Math.min(count, of(4)) - of(1) + Math.max(0, count - of(12));
}

/** Of the days that something was watched, those in winter. Most begin and end on days that others do: each is worked out once. */
export function winterCounting(): (one: WatchedFrom) => number {
  const known = new Map<number, number>();
  const before = (count: number): number => {
    const days = known.get(count) ?? winterBefore(count);
    known.set(count, days);
    return days;
  };
  return ({ start, time }) => before(start + time) - before(start);
}

/** The day on which the event came. */
export const eventDay = ({ start, time }: WatchedFrom): string => dayOfCount(start + time);
