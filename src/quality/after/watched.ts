import type { Watched } from "../../statistics/index.ts";
import { dayCount, dayOfCount, monthOf } from "../days.ts";
import type { JobObserved, PartObserved } from "../observation.ts";

/** A thing that was watched, from a day: until its event, or until today without one. */
export interface WatchedFrom extends Watched {
  readonly from: string;
}

function watchedFrom(from: string, failed: string | undefined, today: string): WatchedFrom {
  const event = failed !== undefined && failed <= today;
  return { from, event, time: Math.max(0, dayCount(event ? failed : today) - dayCount(from)) };
}

/** Each installed job until its first callback, in days. A company that is called back enters it: no call is no callback. */
export const jobsWatched = (jobs: readonly JobObserved[], today: string): readonly (WatchedFrom & { readonly job: JobObserved })[] =>
  jobs.flatMap((job) => {
    if (job.installed === undefined || job.installed > today) return [];
    const first = job.callbacks.map(({ day }) => day).sort()[0];
    return [{ ...watchedFrom(job.installed, first, today), job }];
  });

/** Each part until it failed, in days. */
export const partsWatched = (jobs: readonly JobObserved[], today: string): readonly (WatchedFrom & { readonly part: PartObserved })[] =>
  jobs.flatMap(({ parts }) =>
    parts
      .filter(({ from }) => from <= today)
      .map((part) => ({ ...watchedFrom(part.from, part.why === "sold" ? undefined : part.failed, today), part })),
  );

/** December to March: frost and what it breaks (own; the company's place decides). */
const WINTER_MONTHS: ReadonlySet<number> = new Set([12, 1, 2, 3]);
export const isWinter = (day: string): boolean => WINTER_MONTHS.has(monthOf(day));

/** The first of April after the first whole winter: what is installed in December or later waits for the next one. */
export const endOfFirstWinter = (from: string): string => `${Number(from.slice(0, 4)) + (monthOf(from) === 12 ? 2 : 1)}-04-01`;

const daysToYear = (day: string): number => dayCount(day) - dayCount(`${day.slice(0, 4)}-01-01`);

/** Days of winter before a day, counted from 1970: for days of winter between two days by a subtraction. */
function winterBefore(count: number): number {
  const day = dayOfCount(count);
  const year = Number(day.slice(0, 4));
  const wholeYears = year - 1970;
  // 31 of December, 31 + 28 + 31 of January to March, and the leap days of those years
  const leapDays = Math.floor((year - 1969) / 4) - (year > 2100 ? 1 : 0);
  const before = wholeYears * 121 + leapDays;
  const own = daysToYear(day);
  const spring = dayCount(`${day.slice(0, 4)}-04-01`) - dayCount(`${day.slice(0, 4)}-01-01`);
  const december = dayCount(`${day.slice(0, 4)}-12-01`) - dayCount(`${day.slice(0, 4)}-01-01`);
  return before + Math.min(own, spring) + Math.max(0, own - december);
}

/** Of the days that something was watched, those in winter. */
export function winterDays({ from, time }: WatchedFrom): number {
  const start = dayCount(from);
  return winterBefore(start + time) - winterBefore(start);
}

/** The day on which the event came. */
export const eventDay = ({ from, time }: WatchedFrom): string => dayOfCount(dayCount(from) + time);
