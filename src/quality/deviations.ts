import { grouped } from "./answering.ts";
import type { FindingObserved, JobObserved } from "./observation.ts";

/** One job's deviations from its design with one instrument, as their mean: the unit is the job, never the single reading. */
export interface Deviation {
  readonly job: JobObserved;
  readonly at: number;
  /** Micrometres. */
  readonly value: number;
}

/** Heights and lengths that may lie on either side of what was designed: a magnitude has no drift to show. */
const isEitherWay = ({ kind, lower, upper, deviation, at }: FindingObserved): boolean =>
  kind === "length" && deviation !== undefined && at !== undefined && lower !== undefined && upper !== undefined;

/** By instrument, each job's mean deviation in the order of time. Checks with an aim and limits on both sides. */
export function deviationsByInstrument(jobs: readonly JobObserved[]): ReadonlyMap<string, readonly Deviation[]> {
  const all = jobs.flatMap((job) =>
    [...grouped(job.findings.filter(isEitherWay), ({ instrument }) => instrument)].map(([instrument, own]) => ({
      instrument,
      deviation: {
        job,
        at: Math.min(...own.map(({ at }) => at ?? 0)),
        value: own.reduce((sum, { deviation = 0 }) => sum + deviation, 0) / own.length,
      },
    })),
  );
  return new Map(
    [...grouped(all, ({ instrument }) => instrument)].map(([instrument, own]) => [
      instrument,
      own.map(({ deviation }) => deviation).sort((a, b) => a.at - b.at),
    ]),
  );
}
