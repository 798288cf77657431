import type { CostInputs } from "../deploy/index.ts";
import { type StepName, stepNames, type Trace } from "./step.ts";
import { growthOf, type Measure, measures, valueAt } from "./traces.ts";
import { type Work, writtenOf } from "./work.ts";

/** What one step asks on average, in a company of so many jobs. */
export interface StepCounts {
  readonly requests: number;
  readonly calls: number;
  readonly statements: number;
  readonly rows: number;
  readonly written: number;
  readonly characters: number;
  readonly sqliteMs: number;
  readonly processorMs: number;
  readonly storeReads: number;
  readonly queued: number;
}

const none: StepCounts = {
  requests: 0,
  calls: 0,
  statements: 0,
  rows: 0,
  written: 0,
  characters: 0,
  sqliteMs: 0,
  processorMs: 0,
  storeReads: 0,
  queued: 0,
};

/** Means over the traces of each step; what grows with a company's past by its line. */
export function countsOf(traces: readonly Trace[], jobs: number): Readonly<Record<StepName, StepCounts>> {
  const growth = growthOf(traces);
  const grown = ({ kind, ...work }: Work, measure: Measure): number => {
    const line = growth[measure].get(kind);
    return line === undefined ? measures[measure]({ kind, ...work }) : valueAt(line, jobs);
  };
  return Object.fromEntries(
    stepNames.map((name) => {
      const own = traces.filter(({ step }) => step === name);
      if (own.length === 0) return [name, none];
      const mean = (of: (work: Work) => number): number =>
        own.reduce((sum, { works }) => sum + works.reduce((total, work) => total + of(work), 0), 0) / own.length;
      const counts: StepCounts = {
        requests: mean(() => 1),
        calls: mean(({ calls }) => calls.length),
        statements: mean((work) => grown(work, "statements")),
        rows: mean((work) => grown(work, "rows")),
        written: mean(writtenOf),
        characters: mean((work) => grown(work, "characters")),
        sqliteMs: mean((work) => grown(work, "sqliteMs")),
        processorMs: mean((work) => grown(work, "processorMs")),
        storeReads: mean(({ storeReads }) => storeReads),
        queued: mean(({ queued }) => queued),
      };
      return [name, counts];
    }),
  ) as Record<StepName, StepCounts>;
}

/** What the cost model takes for a guess, in the place of each what was counted; prices and what is not counted stay as they are. */
export interface Counted {
  readonly crews: number;
  readonly day: Readonly<Record<StepName, number>>;
  readonly counts: Readonly<Record<StepName, StepCounts>>;
  readonly entriesPerJob: number;
  readonly bytesPerJob: number;
  readonly daysPerJob: number;
  readonly workingDaysPerMonth: number;
}

const ofPhotos: readonly StepName[] = ["send a photo", "photo read"];

/** The inputs of `monthCosts` (infra/deploy) for a month of such days. */
export function costInputs(inputs: CostInputs, counted: Counted): CostInputs {
  const { crews, day, counts, entriesPerJob, bytesPerJob, daysPerJob, workingDaysPerMonth } = counted;
  const jobsADay = crews / daysPerJob;
  const perJob = (of: (counts: StepCounts) => number, names: readonly StepName[] = stepNames): number =>
    names.reduce((sum, name) => sum + day[name] * of(counts[name]), 0) / jobsADay;
  const requestsPerJob = perJob(({ requests }) => requests);
  const others = stepNames.filter((name) => !ofPhotos.includes(name));
  const photosPerJob = day["send a photo"] / jobsADay;
  return {
    ...inputs,
    assumptions: {
      ...inputs.assumptions,
      jobsPerCrewMonth: workingDaysPerMonth / daysPerJob,
      photosPerJob,
      entriesPerJob,
      recordsPerJob: day["issue a record"] / jobsADay,
      requestsPerJob,
      workerMsPerRequest: perJob(({ processorMs }) => processorMs) / requestsPerJob,
      rowsReadPerRequest: perJob(({ rows }) => rows) / requestsPerJob,
      rowsWrittenPerEntry: perJob(({ written }) => written, others) / entriesPerJob,
      rowsWrittenPerPhoto: photosPerJob === 0 ? 0 : perJob(({ written }) => written, ofPhotos) / photosPerJob,
      databaseKilobytesPerEntry: bytesPerJob / 1000 / entriesPerJob,
      storeReadsPerJob: perJob(({ storeReads }) => storeReads),
    },
  };
}
