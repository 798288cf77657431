import { betweenEventsLimits, beyondLimits } from "../../statistics/index.ts";
import { LEAST_EVENTS, label } from "../answering.ts";
import { noonOf } from "../days.ts";
import type { ControlPicture } from "../question.ts";
import type { WatchedFrom } from "./watched.ts";

/** Jobs between two that were called back within a year, in the order in which they were installed. */
export function jobsBetween(
  watched: readonly (WatchedFrom & { readonly job: { readonly job: string } })[],
  alpha: number,
): ControlPicture | undefined {
  const ordered = [...watched].sort((a, b) => (a.from < b.from ? -1 : 1));
  const gaps: { gap: number; job: string; from: string }[] = [];
  let gap = 0;
  for (const one of ordered) {
    if (one.event) gaps.push({ gap, job: one.job.job, from: one.from });
    gap = one.event ? 0 : gap + 1;
  }
  if (gaps.length < LEAST_EVENTS) return undefined;
  const values = gaps.map((one) => one.gap);
  const limits = betweenEventsLimits(values, alpha / gaps.length);
  const out = new Set(beyondLimits(values, [limits]));
  return {
    draws: "control chart",
    chart: "jobs between events",
    id: "between-callbacks",
    table: "came-back-months",
    axis: { kind: "count" },
    marks: [],
    points: gaps.map(({ gap: value, job, from }, i) => ({
      x: i + 1,
      label: label("job", job),
      at: noonOf(from),
      value,
      ...limits,
      ...(out.has(i) ? { breaks: "beyond the limits" as const } : {}),
    })),
  };
}
