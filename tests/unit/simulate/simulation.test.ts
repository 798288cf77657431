import { readFile } from "node:fs/promises";
import { beforeAll, describe, expect, test } from "vitest";
import { type CostInputs, costsShape, monthCosts } from "#infra/deploy/costs.ts";
import { order } from "#infra/simulate/advice.ts";
import { arrivalsOf, sorted } from "#infra/simulate/arrivals.ts";
import type { DayAsked } from "#infra/simulate/company-day.ts";
import { type Counted, costInputs, type StepCounts } from "#infra/simulate/counted.ts";
import type { Driven } from "#infra/simulate/drive.ts";
import { breaksAt, containers } from "#infra/simulate/machines.ts";
import { optionsFrom } from "#infra/simulate/options.ts";
import { type Platform, readPlatform } from "#infra/simulate/platform.ts";
import { report } from "#infra/simulate/report.ts";
import { simulated } from "#infra/simulate/simulation.ts";
import { type StepName, stepNames, type Trace } from "#infra/simulate/step.ts";
import { lineOf } from "#infra/simulate/traces.ts";
import type { Work } from "#infra/simulate/work.ts";
import { project } from "../../architecture/project.ts";

let platform: Platform;
let inputs: CostInputs;

beforeAll(async () => {
  platform = await readPlatform();
  inputs = costsShape.parse(JSON.parse(await readFile(`${project}/infra/deploy/prices.json`, "utf8")));
});

const sendings = Array.from({ length: 36 }, (_, n) => ({ photos: n % 6 === 0 ? 5 : 0 }));
const asked = (more: Partial<DayAsked> = {}): DayAsked => ({
  platform,
  sendings,
  photosPerJob: 60,
  recordsPerJob: 2,
  reports: true,
  ...more,
});
const four = [{ companies: 4, first: 0, every: 1, mark: 0 }];

/** Every step one request of one call, which holds the database for `milliseconds`. */
const traced = (milliseconds: number): readonly Trace[] =>
  stepNames.map((step) => {
    const call = { database: "home", statements: 1, writes: false, milliseconds, rows: 1, written: 0, characters: 0 };
    const none = { storeCalls: 0, storeReads: 0, mediaCalls: 0, printCalls: 0, queued: 0, bytesIn: 0, bytesOut: 0, jobs: 0 };
    const work: Work = { kind: step, status: 200, calls: [call], processorMs: 1, ...none };
    return { step, works: [work], comparable: false, old: false };
  });
const drivenWith = (milliseconds: number): Driven => ({
  traces: traced(milliseconds),
  crewDays: 1,
  requests: 11,
  refused: {},
  bytesPerJob: 500_000,
  perJob: { entries: 180, photos: 30, sendings },
});
const options = { crews: 40, shards: 1, media: 1, print: 1, days: 1, driven: 1, seed: 7 };
/** `most`: milliseconds that 99 of 100 calls may wait for the database. */
const run = (milliseconds: number, most = 250) =>
  simulated(options, drivenWith(milliseconds), { ...platform, waits: { ...platform.waits, databaseMs: most } }, inputs, () => undefined);

describe("a day", () => {
  test("is the same for a seed and another for another, in the order of time", () => {
    const [one, same, other] = [7, 7, 8].map((seed) => arrivalsOf(four, seed, asked()));
    expect(one).toEqual(same);
    expect(one?.at).not.toEqual(other?.at);
    expect(one?.at).toEqual(one?.at.slice().sort());
  });

  test("a part of it has the same steps as the whole at that time", () => {
    const [from, until] = [15 * 3_600_000, 16 * 3_600_000];
    const whole = arrivalsOf(four, 7, asked());
    const part = arrivalsOf(four, 7, asked({ within: [from, until] }));
    expect(part.at.length).toBeGreaterThan(300);
    expect(part.at).toEqual(whole.at.filter((at) => at >= from && at < until));
  });

  test("has a page looked at for as long as is assumed, and as many photos as a job has", () => {
    const companies = 200;
    const { step } = arrivalsOf([{ companies, first: 0, every: 1, mark: 0 }], 7, asked());
    const count = (name: StepName): number => step.filter((code) => code === stepNames.indexOf(name)).length;
    const crews = companies * platform.day.crewsPerCompany;
    // an hour of looks, one every fifteen seconds
    expect(count("look") / crews / 240).toBeCloseTo(1, 1);
    // 60 photos in five days; 1,000 crews draw 12 with a standard deviation below 7, so 0.9 is four standard errors
    expect(Math.abs(count("send a photo") / crews - 12)).toBeLessThan(0.9);
    expect([count("photo read"), count("office looks"), count("month's report")]).toEqual([count("send a photo"), crews, companies]);
  });

  test("steps are put in order within their slots too", () => {
    const at = Float64Array.from([5, 3, 100, 4, 99.5, 3]);
    expect([...sorted({ at, step: Uint8Array.from([0, 1, 2, 3, 4, 5]) }).step]).toEqual([1, 5, 3, 0, 4, 2]);
  });
});

describe("what breaks", () => {
  test("is found to a fiftieth, from below and from above, and not at all where it holds", () => {
    for (const start of [10, 5_000]) {
      const found = breaksAt((n) => n < 1_234, start, 10_000) ?? 0;
      expect(found).toBeGreaterThanOrEqual(1_234);
      expect(found).toBeLessThan(1_234 * 1.03);
    }
    expect(breaksAt(() => true, 10, 10_000)).toBeUndefined();
  });

  test("moves as capacity doubles: a database of half the time, twice the media, twice the databases' room", () => {
    const breakOf = (name: string, one: ReturnType<typeof run>): number =>
      one.resources.find((r) => r.name === name)?.breaksAt ?? Number.NaN;
    const [slow, quick] = [run(60, 250), run(30, 125)];
    const ratio = breakOf("time of a database", quick) / breakOf("time of a database", slow);
    // four services may be waited for in both, so that the quick one does the same in half the time
    expect(Math.abs(ratio - 2)).toBeLessThan(0.3);
    const every = (servers: number) => (n: number) =>
      containers(
        Float64Array.from({ length: 2_000 }, (_, i) => (i * 100_000) / n),
        1.5,
        servers,
        3,
      ).waits.p99 <= 60_000;
    const [one, two] = [2, 4].map((servers) => breaksAt(every(servers), 50, 100_000) ?? Number.NaN) as [number, number];
    expect(Math.abs(two / one - 2)).toBeLessThan(0.1);
    const room = (shards: number): number =>
      order({ options: { ...options, shards }, outcome: slow }).find(({ says }) => says.startsWith("room"))?.crews ?? 0;
    expect(room(2)).toBe(2 * room(1));
  });

  test("is said in the order of the crews, and twice the same for a seed", () => {
    const [outcome, again] = [run(800), run(800)];
    expect(again).toEqual(outcome);
    const list = order({ options, outcome }).map(({ crews }) => crews);
    expect(list).toEqual(list.toSorted((a, b) => a - b));
    const text = report({ options, driven: drivenWith(800), outcome, platform, inputs });
    expect(text.split("\n")[0]).toMatch(/^BREAKS FIRST, at [\d,]+ crews: time: with one database/);
    for (const part of ["MEASURED: 1 crew-days", "MODELLED: 40 crews", "What to do"]) expect(text).toContain(part);
  });

  test("growth is told from two companies that did the same: 4 a job, level where it falls", () => {
    expect(
      lineOf(
        [
          [2, 30],
          [4, 34],
        ],
        [
          [102, 430],
          [104, 434],
        ],
      ),
    ).toEqual({ base: 20, perJob: 4 });
    expect(lineOf([[2, 30]], [[102, 10]])).toEqual({ base: 30, perJob: 0 });
  });
});

test("costs are those of infra/deploy for the same numbers", () => {
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
  const all = <T>(value: T): Record<StepName, T> => Object.fromEntries(stepNames.map((name) => [name, value])) as Record<StepName, T>;
  // 100 crews of 5-day jobs: 20 jobs a day, 84 crews' jobs in a month of 21 days for each 20 crews
  const counted: Counted = {
    crews: 100,
    day: { ...all(0), "send a photo": 1_200, "photo read": 1_200, look: 10_000, "send entries": 400, "issue a record": 40 },
    counts: {
      ...all(none),
      "send a photo": { ...none, requests: 1, written: 5, storeReads: 1, processorMs: 20 },
      "photo read": { ...none, requests: 1, written: 30, processorMs: 10 },
      look: { ...none, requests: 3, rows: 30, processorMs: 6 },
      "send entries": { ...none, requests: 2, rows: 4, written: 45, processorMs: 30 },
      "issue a record": { ...none, requests: 2, written: 9, storeReads: 4, processorMs: 200 },
    },
    entriesPerJob: 180,
    bytesPerJob: 540_000,
    daysPerJob: 5,
    workingDaysPerMonth: 21,
  };
  const { assumptions } = costInputs(inputs, counted);
  // requests of a day: 1,200 + 1,200 + 30,000 + 800 + 80 = 33,280; of 20 jobs each has 1,664
  expect(assumptions.requestsPerJob).toBeCloseTo(1_664, 9);
  // 24,000 + 12,000 + 60,000 + 12,000 + 8,000 ms
  expect(assumptions.workerMsPerRequest).toBeCloseTo(116_000 / 33_280, 9);
  expect(assumptions.rowsReadPerRequest).toBeCloseTo(301_600 / 33_280, 9);
  // 400 * 45 + 40 * 9 rows for 20 * 180 entries; 35 for each photo
  expect(assumptions.rowsWrittenPerEntry).toBeCloseTo(5.1, 9);
  expect(assumptions.rowsWrittenPerPhoto).toBeCloseTo(35, 9);
  const { jobsPerCrewMonth, photosPerJob, recordsPerJob, databaseKilobytesPerEntry, storeReadsPerJob } = assumptions;
  expect([jobsPerCrewMonth, photosPerJob, recordsPerJob, databaseKilobytesPerEntry, storeReadsPerJob]).toEqual([4.2, 60, 2, 3, 68]);
  const hand = { ...inputs, assumptions: { ...inputs.assumptions, ...assumptions } };
  expect(monthCosts(100, costInputs(inputs, counted))).toEqual(monthCosts(100, hand));
  // what was not counted stays the guess that it is
  expect(assumptions.mediaSecondsPerPhoto).toBe(inputs.assumptions.mediaSecondsPerPhoto);
});

describe("options", () => {
  const usual = { crews: 0, shards: 1, media: 2, print: 1, days: 1, driven: 200, seed: 1 };

  test("what is said goes before what is usual", () => {
    expect(optionsFrom(["--crews", "5000", "--shards", "4", "--json", "x.json"], usual)).toEqual({
      ...usual,
      crews: 5000,
      shards: 4,
      json: "x.json",
    });
  });

  test.each([
    [["--crews", "many"], "--crews takes a whole number from 1 to 50000, and many is none."],
    [["--crews", "0"], "--crews takes a whole number from 1 to 50000, and 0 is none."],
    [["--shards", "1.5"], "--shards takes a whole number from 1 to 100, and 1.5 is none."],
    [["--crew", "5"], "Unknown option '--crew'"],
    [["5000"], "Unexpected argument '5000'"],
  ])("%j is refused", (given, why) => {
    expect(optionsFrom(given, usual)).toContain(why);
  });
});
