import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { type CostInputs, costsShape, costsTable, monthCosts } from "#infra/deploy/costs.ts";
import { project } from "../../architecture/project.ts";

/** Round figures, so that every sum can be worked out by hand. */
const inputs: CostInputs = {
  note: "a test's own",
  currency: "USD",
  prices: {
    platformMonth: 5,
    requestsMillion: 1,
    workerMillionMs: 2,
    rowsReadMillion: 3,
    rowsWrittenMillion: 4,
    databaseGigabyteMonth: 6,
    queueMillion: 7,
    storeGigabyteMonth: 0.5,
    storeWritesMillion: 8,
    storeReadsMillion: 9,
    storeOutGigabyte: 0.1,
    processorSecond: 0.001,
    memoryGigabyteSecond: 0.0001,
  },
  included: {
    requests: 1_000_000,
    workerMs: 5_000_000,
    rowsRead: 10_000_000,
    rowsWritten: 1_000_000,
    databaseGigabytes: 1,
    queue: 100_000,
  },
  assumptions: {
    note: "a test's own",
    jobsPerCrewMonth: 10,
    photosPerJob: 100,
    entriesPerJob: 200,
    originalMegabytes: 4,
    drawnMegabytes: 1,
    recordsPerJob: 1,
    recordMegabytes: 10,
    requestsPerJob: 2000,
    workerMsPerRequest: 10,
    rowsReadPerRequest: 20,
    rowsWrittenPerEntry: 10,
    rowsWrittenPerPhoto: 5,
    databaseKilobytesPerEntry: 5,
    storeReadsPerJob: 100,
    mediaSecondsPerPhoto: 2,
    printSecondsPerRecord: 10,
    mediaGigabytes: 1,
    printGigabytes: 2,
    containersStandBySeconds: 1,
    months: 2,
  },
};

test("100 crews, worked out by hand", () => {
  // 1,000 jobs: 100,000 photos, 200,000 entries, 1,000 records, 2,000,000 requests
  const { worker, database, queue, store, containers, sum, perCrew } = monthCosts(100, inputs);
  // 5 + (2 - 1) * 1 + (20 - 5) * 2
  expect(worker).toBeCloseTo(36, 9);
  // (40 - 10) * 3 + (2 + 0.5 - 1) * 4 + (1,000 * 2 * 200 * 5 kB = 2 GB, less 1) * 6
  expect(database).toBeCloseTo(102, 9);
  // (300,000 - 100,000) / 1,000,000 * 7
  expect(queue).toBeCloseTo(1.4, 9);
  // 1,000 * 2 * (100 * 5 + 10) MB = 1,020 GB * 0.5; 401,000 writes * 8 / 1,000,000; 100,000 reads * 9 / 1,000,000; 100 GB out * 0.1
  expect(store).toBeCloseTo(510 + 3.208 + 0.9 + 10, 9);
  // media 100,000 * 2 * 2 = 400,000 s, print 1,000 * 10 * 2 = 20,000 s: 420,000 * 0.001 + (400,000 * 1 + 20,000 * 2) * 0.0001
  expect(containers).toBeCloseTo(464, 9);
  expect(sum).toBeCloseTo(36 + 102 + 1.4 + 524.108 + 464, 9);
  expect(perCrew).toBeCloseTo(11.27508, 9);
});

test("what a month's fee includes is paid once", () => {
  const none = monthCosts(0, inputs);
  expect([none.worker, none.sum, none.perCrew]).toEqual([5, 5, 0]);
  expect(monthCosts(50, inputs).worker).toBeCloseTo(5 + 0 + (10 - 5) * 2, 9);
});

test("the file that comes with it is of its shape and says what its prices are", async () => {
  const own = costsShape.parse(JSON.parse(await readFile(`${project}/infra/deploy/prices.json`, "utf8")));
  expect(own.note).toContain("Placeholders");
  const lines = costsTable([1, 50, 5000].map((crews) => monthCosts(crews, own))).split("\n");
  expect(lines.map((line) => line.trim().split(/\s+/)[0])).toEqual(["crews", "1", "50", "5000"]);
  expect(new Set(lines.map((line) => line.length)).size).toBe(1);
});
