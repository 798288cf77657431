import { message } from "../job/index.ts";
import {
  binomialAtLeast,
  binomialAtMost,
  type Limits,
  poissonAtLeast,
  poissonAtMost,
  rateLimits,
  shareLimits,
} from "../statistics/index.ts";
import { grouped, label } from "./answering.ts";
import { noonOf } from "./days.ts";
import type { Event } from "./events.ts";
import type { Taught } from "./observation.ts";
import type { ControlPicture, Label } from "./question.ts";

/** Chance of a point beyond one limit of three sigma, where nothing is. */
const BEYOND = 0.0013499;

/**
 * Whether a month lies outside: beyond its limits, and so rare that chance hardly brings it. Three sigma of one or two jobs are no
 * measure of that, since a normal curve does not fit so few.
 */
function isOutside(chart: "p" | "u", { hits, n }: Month, { centre, lower, upper }: Limits): boolean {
  const value = hits / n;
  if (value <= upper && value >= lower) return false;
  const least = chart === "p" ? binomialAtLeast(hits, n, centre) : poissonAtLeast(hits, centre * n);
  const most = chart === "p" ? binomialAtMost(hits, n, centre) : poissonAtMost(hits, centre * n);
  return Math.min(least, most) <= BEYOND;
}

/** One month: so many hits out of so many. */
export interface Month {
  /** 'YYYY-MM'. */
  readonly month: string;
  readonly hits: number;
  readonly n: number;
}

/** Events by the month in which their job was installed, in the order of time: how many went right, too close to call left out. */
export const rightByMonth = (events: readonly Event[]): readonly Month[] =>
  [...grouped(events, ({ job }) => job.installed?.slice(0, 7))]
    .map(([month, own]) => {
      const counted = own.filter(({ state }) => state !== "too close to call");
      return { month, hits: counted.filter(({ state }) => state === "right").length, n: counted.length };
    })
    .sort((a, b) => (a.month < b.month ? -1 : 1));

/** Fewer months than this draw no chart (own). */
const LEAST_MONTHS = 6;

/** A chart of months in their order: p of shares, u of counts for each job. Lines where somebody was taught. */
export function monthsDrawn(
  given: readonly Month[],
  chart: "p" | "u",
  { id, table, about }: { readonly id: string; readonly table: string; readonly about?: Label },
  taught: readonly Taught[],
): readonly ControlPicture[] {
  const months = given.filter(({ n }) => n > 0).sort((a, b) => (a.month < b.month ? -1 : 1));
  if (months.length < LEAST_MONTHS) return [];
  const [hits, of] = [months.map((one) => one.hits), months.map(({ n }) => n)];
  const limits: readonly Limits[] = chart === "p" ? shareLimits(hits, of) : rateLimits(hits, of);
  return [
    {
      draws: "control chart",
      chart,
      id,
      table,
      ...(about === undefined ? {} : { about }),
      axis: { kind: chart === "p" ? "share" : "number" },
      marks: taught.map(({ day }) => ({ at: noonOf(day), says: message("taught.mark") })),
      points: months.map((one, i) => {
        const { month, hits: own, n } = one;
        const { centre, lower, upper } = limits[i] ?? { centre: 0, lower: 0, upper: 0 };
        const value = own / n;
        const isOut = isOutside(chart, one, { centre, lower, upper });
        return {
          x: i + 1,
          label: label("month", month),
          at: noonOf(`${month}-15`),
          value,
          centre,
          lower,
          upper,
          ...(isOut ? { breaks: "beyond the limits" as const } : {}),
        };
      }),
    },
  ];
}
