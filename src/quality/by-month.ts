import { message } from "../job/index.ts";
import { type Limits, rateLimits, shareLimits } from "../statistics/index.ts";
import { label } from "./answering.ts";
import { noonOf } from "./days.ts";
import type { Taught } from "./observation.ts";
import type { ControlPicture } from "./question.ts";

/** One month: so many hits out of so many. */
export interface Month {
  /** 'YYYY-MM'. */
  readonly month: string;
  readonly hits: number;
  readonly n: number;
}

/** Fewer months than this draw no chart (own). */
const LEAST_MONTHS = 6;

/** A chart of months in their order: p of shares, u of counts for each job. Lines where somebody was taught. */
export function monthsDrawn(
  given: readonly Month[],
  chart: "p" | "u",
  { id, table }: { readonly id: string; readonly table: string },
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
      axis: { kind: chart === "p" ? "share" : "number" },
      marks: taught.map(({ day }) => ({ at: noonOf(day), says: message("taught.mark") })),
      points: months.map(({ month, hits: own, n }, i) => {
        const { centre, lower, upper } = limits[i] ?? { centre: 0, lower: 0, upper: 0 };
        const value = own / n;
        const isOut = value > upper || value < lower;
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
