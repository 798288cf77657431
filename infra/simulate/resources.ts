import type { CostInputs } from "../deploy/index.ts";
import { arrivalsOf, timesOf } from "./arrivals.ts";
import type { DayAsked } from "./company-day.ts";
import { ELSEWHERE } from "./demand.ts";
import type { Fifo, Waits } from "./fifo.ts";
import { breaksAt, containers } from "./machines.ts";
import type { Options } from "./options.ts";
import type { Platform } from "./platform.ts";
import { serve } from "./serve.ts";
import type { StepName } from "./step.ts";
import type { ServedStep } from "./traces.ts";

/** Something of which there is only so much, in its busiest hour. */
export interface Resource {
  readonly name: "time of a database" | "media" | "print";
  /** Share of its time that the work of that hour takes. */
  readonly use: number;
  /** The hour of the day in UTC. */
  readonly hour: number;
  readonly waits: Waits;
  /** Of 100 that wait 99 must not wait longer, milliseconds. */
  readonly most: number;
  /** The least number of crews with which they do; undefined: none up to `MOST_CREWS`. */
  readonly breaksAt?: number;
}

/** Beyond this nothing is looked for. */
export const MOST_CREWS = 50_000;
const HOUR_MS = 3_600_000;

export const companiesOf = (crews: number, { day }: Platform): number => Math.max(1, Math.ceil(crews / day.crewsPerCompany));

/** One shard of an installation for a day: its own companies, and where it is the directory what the others ask it. */
export function shardServed(
  at: { readonly shard: number; readonly shards: number; readonly crews: number; readonly seed: number },
  asked: DayAsked,
  steps: ReadonlyMap<StepName, readonly ServedStep[]>,
) {
  const companies = companiesOf(at.crews, asked.platform);
  const own = { companies: Math.ceil((companies - at.shard) / at.shards), first: at.shard, every: at.shards, mark: 0 };
  const others =
    at.shard === 0
      ? Array.from({ length: at.shards - 1 }, (_, i) => ({
          ...own,
          companies: Math.ceil((companies - i - 1) / at.shards),
          first: i + 1,
          mark: ELSEWHERE,
        }))
      : [];
  return serve(arrivalsOf([own, ...others], at.seed, asked), steps, at.seed, at.shard === 0);
}

export interface ResourcesAsked {
  readonly options: Options;
  readonly asked: DayAsked;
  readonly steps: ReadonlyMap<StepName, readonly ServedStep[]>;
  readonly inputs: CostInputs;
  /** The database that has most to do. */
  readonly worst: ReturnType<Fifo["busiest"]>;
  readonly log: (line: string) => void;
}

/** Each resource in its busiest hour, and the number of crews with which it no longer keeps up. */
export function resourcesOf({ options, asked, steps, inputs, worst, log }: ResourcesAsked): readonly Resource[] {
  const { crews, shards, seed } = options;
  const { platform } = asked;
  const { day: assumed, waits, times } = platform;
  const { mediaSecondsPerPhoto, printSecondsPerRecord } = inputs.assumptions;
  // the busiest hour with a quarter before it tells whether a number of crews is too many
  const { hour } = worst;
  const peak: DayAsked = { ...asked, within: [(hour - 0.25) * HOUR_MS, (hour + 1) * HOUR_MS] };
  const databaseHolds = (all: number): boolean =>
    shardServed({ shard: 0, shards, crews: all, seed }, peak, steps).database.waits.p99 <= waits.databaseMs;
  const guess = Math.max(assumed.crewsPerCompany, Math.min(MOST_CREWS, Math.round((0.8 * crews) / Math.max(worst.use, 1e-6))));
  const databaseBreaks = breaksAt(databaseHolds, guess, MOST_CREWS);
  log("time of a database looked for");

  const machine = (name: "media" | "print", kinds: readonly StepName[], seconds: number, atOnce: number, most: number): Resource => {
    const of = (all: number) => containers(timesOf(kinds, companiesOf(all, platform), seed, asked), seconds, atOnce, seed);
    const now = of(crews);
    const start = Math.max(assumed.crewsPerCompany, Math.min(MOST_CREWS, Math.round(crews / Math.max(now.use, 1e-6))));
    const breaks = breaksAt((all) => of(all).waits.p99 <= most * 1000, start, MOST_CREWS);
    log(`${name} looked for`);
    return { name, ...now, most: most * 1000, ...(breaks === undefined ? {} : { breaksAt: breaks }) };
  };
  return [
    {
      name: "time of a database",
      ...worst,
      most: waits.databaseMs,
      ...(databaseBreaks === undefined ? {} : { breaksAt: databaseBreaks }),
    },
    machine("media", ["photo read"], mediaSecondsPerPhoto, options.media * times.mediaAtOnce, waits.mediaSeconds),
    machine("print", ["issue a record", "month's report"], printSecondsPerRecord, options.print * times.printAtOnce, waits.printSeconds),
  ];
}
