import { type CostInputs, type MonthCosts, monthCosts } from "../deploy/index.ts";
import { timesOf } from "./arrivals.ts";
import type { DayAsked } from "./company-day.ts";
import { costInputs, countsOf, type StepCounts } from "./counted.ts";
import type { Driven } from "./drive.ts";
import type { Waits } from "./fifo.ts";
import type { Options } from "./options.ts";
import { type PastLimit, pastLimits } from "./past.ts";
import type { Platform } from "./platform.ts";
import { companiesOf, type Resource, resourcesOf, shardServed } from "./resources.ts";
import type { serve } from "./serve.ts";
import { busiestSecond, type Shares, sharesOf } from "./shares.ts";
import { type StepName, stepNames } from "./step.ts";
import { servedSteps } from "./traces.ts";

export interface Simulated extends Shares {
  readonly crews: number;
  readonly shards: number;
  /** Jobs that a company has after the months of the cost model. */
  readonly jobs: number;
  readonly day: Readonly<Record<StepName, number>>;
  readonly counts: Readonly<Record<StepName, StepCounts>>;
  readonly resources: readonly Resource[];
  /** Answers on the way to a phone in its shard, whole steps. */
  readonly answers: Readonly<Partial<Record<StepName, Waits>>>;
  /** Gigabytes that a day adds to all databases, and days until the fullest is full. */
  readonly gigabytesADay: number;
  readonly daysUntilFull: number;
  /** Crews whose rows of so many months a database holds. */
  readonly crewsPerFullDatabase: number;
  readonly months: number;
  readonly queuePerSecond: number;
  readonly past: readonly PastLimit[];
  readonly costs: MonthCosts;
  readonly inputs: CostInputs;
}

/** Serves a day of so many crews, and looks for the numbers of crews with which each part no longer keeps up. */
export function simulated(
  options: Options,
  driven: Driven,
  platform: Platform,
  inputs: CostInputs,
  log: (line: string) => void,
): Simulated {
  const { crews, shards, seed, days } = options;
  const { day: assumed, times, limits } = platform;
  const { photosPerJob, recordsPerJob, months } = inputs.assumptions;
  const jobs = Math.round((assumed.crewsPerCompany * assumed.workingDaysPerMonth * months) / assumed.daysPerJob);
  const steps = servedSteps(driven.traces, jobs, times);
  const asked: DayAsked = { platform, sendings: driven.perJob.sendings, photosPerJob, recordsPerJob, reports: true };

  let worst: ReturnType<typeof serve> | undefined;
  let day = Object.fromEntries(stepNames.map((name) => [name, 0])) as Record<StepName, number>;
  for (let n = 0; n < days; n += 1) {
    const ofDay = Object.fromEntries(stepNames.map((name) => [name, 0])) as Record<StepName, number>;
    for (let shard = 0; shard < shards; shard += 1) {
      const served = shardServed({ shard, shards, crews, seed: seed + n }, { ...asked, reports: n === 0 }, steps);
      for (const name of stepNames) ofDay[name] += served.steps[name];
      if (worst === undefined || served.database.use > worst.database.use) worst = served;
    }
    day = ofDay;
    log(`day ${n + 1} of ${days} served`);
  }
  if (worst === undefined) throw new Error("no day was simulated");

  const resources = resourcesOf({ options, asked, steps, inputs, worst: worst.database, log });

  const counts = countsOf(driven.traces, jobs);
  // of a month's days one has the reports
  const usual = { ...day, "month's report": Math.round(companiesOf(crews, platform) / assumed.workingDaysPerMonth) };
  const counted = costInputs(inputs, {
    crews,
    day: usual,
    counts,
    entriesPerJob: driven.perJob.entries,
    bytesPerJob: driven.bytesPerJob,
    ...assumed,
  });
  const gigabytesADay = ((crews / assumed.daysPerJob) * driven.bytesPerJob) / 1e9;
  const gigabytesPerCrew = (assumed.workingDaysPerMonth * months * driven.bytesPerJob) / assumed.daysPerJob / 1e9;
  return {
    crews,
    shards,
    jobs,
    day,
    counts,
    resources,
    answers: worst.answers,
    gigabytesADay,
    daysUntilFull: (limits.databaseGigabytes * shards) / gigabytesADay,
    crewsPerFullDatabase: Math.floor(limits.databaseGigabytes / gigabytesPerCrew),
    months,
    queuePerSecond: busiestSecond(timesOf(["photo read"], companiesOf(crews, platform), seed, asked)),
    ...sharesOf(steps, day),
    past: pastLimits(driven.traces, limits),
    costs: monthCosts(crews, counted),
    inputs: counted,
  };
}
