import { chiSquareAbove } from "./continuous.ts";
import { normalQuantile } from "./normal.ts";

/** One thing watched: how long, and whether it ended with the event or only with the watching. Any unit of time, never negative. */
export interface Watched {
  readonly time: number;
  readonly event: boolean;
}

export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  /** Share without the event after this time, and Greenwood's standard error. */
  readonly survival: number;
  readonly error: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Kaplan and Meier's curve with Greenwood's variance: one step for each time at which something happened. What ends its watching at
 * the same time counts as at risk there. Intervals on the log-log scale, which stay within 0 and 1.
 */
export function kaplanMeier(watched: readonly Watched[], alpha: number): readonly SurvivalStep[] {
  const z = normalQuantile(1 - alpha / 2);
  const sorted = [...watched].sort((a, b) => a.time - b.time);
  const steps: SurvivalStep[] = [];
  let [survival, greenwood] = [1, 0];
  for (let i = 0; i < sorted.length; ) {
    const time = sorted[i]?.time ?? 0;
    const atRisk = sorted.length - i;
    let events = 0;
    for (; sorted[i]?.time === time; i++) if (sorted[i]?.event) events += 1;
    if (events === 0) continue;
    survival *= 1 - events / atRisk;
    greenwood += events / (atRisk * (atRisk - events));
    const error = survival === 0 ? 0 : survival * Math.sqrt(greenwood);
    const spread = survival === 0 ? 0 : (z * Math.sqrt(greenwood)) / Math.log(survival);
    const [low, high] = [survival ** Math.exp(-spread), survival ** Math.exp(spread)];
    // where the last one ended with its event nothing is left to say how far: the bound before it stands
    const ends = survival === 0 ? { low: 0, high: steps.at(-1)?.high ?? 1 } : { low: Math.min(low, high), high: Math.max(low, high) };
    steps.push({ time, atRisk, events, survival, error, ...ends });
  }
  return steps;
}

/** The step in force at a time; all are without the event before the first. */
export const survivalAt = (steps: readonly SurvivalStep[], time: number): SurvivalStep | undefined =>
  steps.filter((step) => step.time <= time).at(-1);

export interface LogRank {
  readonly chiSquare: number;
  /** Chance of a larger one where the groups do not differ. */
  readonly p: number;
  /** Events of the first group beyond those that would be expected. */
  readonly over: number;
}

/** The log-rank test of two groups, chi-square of one degree of freedom. */
export function logRank(first: readonly Watched[], second: readonly Watched[]): LogRank {
  const all = [...first.map((w) => ({ ...w, own: 1 })), ...second.map((w) => ({ ...w, own: 0 }))].sort((a, b) => a.time - b.time);
  let [over, variance, ownAtRisk] = [0, 0, first.length];
  for (let i = 0; i < all.length; ) {
    const time = all[i]?.time ?? 0;
    const atRisk = all.length - i;
    let [events, own, leaving] = [0, 0, 0];
    for (; all[i]?.time === time; i++) {
      const { event = false, own: isOwn = 0 } = all[i] ?? {};
      leaving += isOwn;
      if (event) events += 1;
      if (event) own += isOwn;
    }
    const share = ownAtRisk / atRisk;
    over += own - events * share;
    if (atRisk > 1) variance += (events * share * (1 - share) * (atRisk - events)) / (atRisk - 1);
    ownAtRisk -= leaving;
  }
  const chiSquare = variance > 0 ? (over * over) / variance : 0;
  return { chiSquare, p: chiSquareAbove(chiSquare, 1), over };
}
