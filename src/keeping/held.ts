import type { CalendarDay } from "../units/index.ts";
import { type Cover, isAfter } from "../warranty/index.ts";

/** Why a removal waits. */
export const holdReasons = ["warranty", "dispute"] as const;
export type HoldReason = (typeof holdReasons)[number];

/** The last day of the covers that have not run out on a day; undefined where none has. A cover whose start nobody knows holds nothing. */
export function coveredUntil(covers: readonly Cover[], today: CalendarDay): CalendarDay | undefined {
  let last: CalendarDay | undefined;
  for (const { end, kept } of covers) {
    if (end === undefined || kept !== undefined || isAfter(today, end)) continue;
    if (last === undefined || isAfter(end, last)) last = end;
  }
  return last;
}

/** How long a removal waits and why, as the office says it. */
export interface Hold {
  readonly because: HoldReason;
  /** The last day. */
  readonly until: CalendarDay;
}

/** The hold that still runs on a day, the one that ends last; the day itself belongs to it. */
export function holdOn(holds: readonly Hold[], today: CalendarDay): Hold | undefined {
  return holds
    .filter(({ until }) => !isAfter(today, until))
    .reduce<Hold | undefined>((last, one) => (last === undefined || isAfter(one.until, last.until) ? one : last), undefined);
}
