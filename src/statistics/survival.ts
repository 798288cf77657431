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

/** At one time: how many are no longer watched after it, and how many of them ended with the event. */
interface AtTime {
  leaving: number;
  events: number;
}

/** A group by its times: many things end at few. */
export interface TimesWatched {
  readonly size: number;
  readonly at: ReadonlyMap<number, Readonly<AtTime>>;
  /** Every time that something ended at, in order. */
  readonly times: readonly number[];
}

export function timesWatched(watched: readonly Watched[]): TimesWatched {
  const at = new Map<number, AtTime>();
  for (const { time, event } of watched) {
    const own = at.get(time) ?? { leaving: 0, events: 0 };
    if (own.leaving === 0) at.set(time, own);
    own.leaving += 1;
    if (event) own.events += 1;
  }
  return { size: watched.length, at, times: [...at.keys()].sort((a, b) => a - b) };
}

const nothing: Readonly<AtTime> = { leaving: 0, events: 0 };

/**
 * Kaplan and Meier's curve with Greenwood's variance: one step for each time at which something happened. What ends its watching at
 * the same time counts as at risk there. Intervals on the log-log scale, which stay within 0 and 1.
 */
export const kaplanMeier = (watched: readonly Watched[], alpha: number): readonly SurvivalStep[] =>
  kaplanMeierOf(timesWatched(watched), alpha);

export function kaplanMeierOf({ size, at, times }: TimesWatched, alpha: number): readonly SurvivalStep[] {
  const z = normalQuantile(1 - alpha / 2);
  const steps: SurvivalStep[] = [];
  let [survival, greenwood, atRisk] = [1, 0, size];
  for (const time of times) {
    const { leaving, events } = at.get(time) ?? nothing;
    const watchedHere = atRisk;
    atRisk -= leaving;
    if (events === 0) continue;
    survival *= 1 - events / watchedHere;
    greenwood += events / (watchedHere * (watchedHere - events));
    const error = survival === 0 ? 0 : survival * Math.sqrt(greenwood);
    const spread = survival === 0 ? 0 : (z * Math.sqrt(greenwood)) / Math.log(survival);
    const [low, high] = [survival ** Math.exp(-spread), survival ** Math.exp(spread)];
    // where the last one ended with its event nothing is left to say how far: the bound before it stands
    const ends = survival === 0 ? { low: 0, high: steps.at(-1)?.high ?? 1 } : { low: Math.min(low, high), high: Math.max(low, high) };
    steps.push({ time, atRisk: watchedHere, events, survival, error, ...ends });
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
export const logRank = (first: readonly Watched[], second: readonly Watched[]): LogRank =>
  logRankWithin(timesWatched([...first, ...second]), timesWatched(first));

/** The same of a group against all the others: `all` holds the group too. */
export function logRankWithin(all: TimesWatched, group: TimesWatched): LogRank {
  let [over, variance, atRisk, ownAtRisk] = [0, 0, all.size, group.size];
  for (const time of all.times) {
    const { leaving, events } = all.at.get(time) ?? nothing;
    const own = group.at.get(time) ?? nothing;
    const share = ownAtRisk / atRisk;
    over += own.events - events * share;
    if (atRisk > 1) variance += (events * share * (1 - share) * (atRisk - events)) / (atRisk - 1);
    ownAtRisk -= own.leaving;
    atRisk -= leaving;
  }
  const chiSquare = variance > 0 ? (over * over) / variance : 0;
  return { chiSquare, p: chiSquareAbove(chiSquare, 1), over };
}
