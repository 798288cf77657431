import { grouped } from "./answering.ts";
import type { DeviationObserved } from "./kept.ts";
import type { FindingObserved, JobObserved } from "./observation.ts";

export interface Deviation extends Omit<DeviationObserved, "instrument"> {
  readonly job: JobObserved;
}

/** Heights and lengths that may lie on either side of what was designed: a magnitude has no drift to show. */
const isEitherWay = ({ kind, lower, upper, deviation, at }: FindingObserved): boolean =>
  kind === "length" && deviation !== undefined && at !== undefined && lower !== undefined && upper !== undefined;

/** One job's mean deviation with each instrument. Checks with an aim and limits on both sides. */
export const deviationsOf = (findings: readonly FindingObserved[]): readonly DeviationObserved[] =>
  [...grouped(findings.filter(isEitherWay), ({ instrument }) => instrument)].map(([instrument, own]) => ({
    instrument,
    at: Math.min(...own.map(({ at }) => at ?? 0)),
    value: own.reduce((sum, { deviation = 0 }) => sum + deviation, 0) / own.length,
  }));

/** By instrument, each job's mean deviation in the order of time. */
export function deviationsByInstrument(jobs: readonly JobObserved[]): ReadonlyMap<string, readonly Deviation[]> {
  const all = jobs.flatMap((job) =>
    (job.deviations ?? deviationsOf(job.findings)).map(({ instrument, at, value }) => ({ instrument, deviation: { job, at, value } })),
  );
  return new Map(
    [...grouped(all, ({ instrument }) => instrument)].map(([instrument, own]) => [
      instrument,
      own.map(({ deviation }) => deviation).sort((a, b) => a.at - b.at),
    ]),
  );
}
