import { z } from "zod";
import { renditionNames } from "#functions/shared/index.ts";

const money = z.number().min(0);
const many = z.number().min(0);

/** Prices, what a month's fee includes, and what a crew does: all of it is entered in `prices.json`. */
export const costsShape = z.strictObject({
  note: z.string().min(1),
  currency: z.string().length(3),
  prices: z.strictObject({
    platformMonth: money,
    requestsMillion: money,
    workerMillionMs: money,
    rowsReadMillion: money,
    rowsWrittenMillion: money,
    databaseGigabyteMonth: money,
    queueMillion: money,
    storeGigabyteMonth: money,
    storeWritesMillion: money,
    storeReadsMillion: money,
    storeOutGigabyte: money,
    processorSecond: money,
    memoryGigabyteSecond: money,
  }),
  included: z.strictObject({ requests: many, workerMs: many, rowsRead: many, rowsWritten: many, databaseGigabytes: many, queue: many }),
  assumptions: z.strictObject({
    note: z.string().min(1),
    jobsPerCrewMonth: many,
    photosPerJob: many,
    entriesPerJob: many,
    originalMegabytes: many,
    drawnMegabytes: many,
    recordsPerJob: many,
    recordMegabytes: many,
    requestsPerJob: many,
    workerMsPerRequest: many,
    rowsReadPerRequest: many,
    rowsWrittenPerEntry: many,
    rowsWrittenPerPhoto: many,
    databaseKilobytesPerEntry: many,
    storeReadsPerJob: many,
    mediaSecondsPerPhoto: many,
    printSecondsPerRecord: many,
    mediaGigabytes: many,
    printGigabytes: many,
    /** Seconds for which a container stays up, for nothing, after each second of work. */
    containersStandBySeconds: many,
    /** How long it has run: what is stored has grown for so many months. */
    months: z.int().min(1),
  }),
});

export type CostInputs = z.infer<typeof costsShape>;

/** Money of one month, by what it is paid for. */
export interface MonthCosts {
  readonly crews: number;
  readonly worker: number;
  readonly database: number;
  readonly queue: number;
  readonly store: number;
  readonly containers: number;
  readonly sum: number;
  readonly perCrew: number;
}

/** A message is written, read and taken off. */
const QUEUE_CALLS = 3;
/** An original, and what is drawn from it. */
const PUTS_PER_PHOTO = 1 + renditionNames.length;

const beyond = (used: number, included: number): number => Math.max(0, used - included);

/** What the last of `months` months costs, everything of the months before kept. Prices, fees and uses are the inputs'. */
export function monthCosts(crews: number, { prices, included, assumptions: a }: CostInputs): MonthCosts {
  const jobs = crews * a.jobsPerCrewMonth;
  const [photos, entries, records, requests] = [a.photosPerJob, a.entriesPerJob, a.recordsPerJob, a.requestsPerJob].map(
    (each) => each * jobs,
  ) as [number, number, number, number];
  const megabytesPerJob = a.photosPerJob * (a.originalMegabytes + a.drawnMegabytes) + a.recordsPerJob * a.recordMegabytes;
  const storedGigabytes = (jobs * a.months * megabytesPerJob) / 1000;
  const databaseGigabytes = (jobs * a.months * a.entriesPerJob * a.databaseKilobytesPerEntry) / 1e6;
  const worker =
    prices.platformMonth +
    (beyond(requests, included.requests) / 1e6) * prices.requestsMillion +
    (beyond(requests * a.workerMsPerRequest, included.workerMs) / 1e6) * prices.workerMillionMs;
  const database =
    (beyond(requests * a.rowsReadPerRequest, included.rowsRead) / 1e6) * prices.rowsReadMillion +
    (beyond(entries * a.rowsWrittenPerEntry + photos * a.rowsWrittenPerPhoto, included.rowsWritten) / 1e6) * prices.rowsWrittenMillion +
    beyond(databaseGigabytes, included.databaseGigabytes) * prices.databaseGigabyteMonth;
  const queue = (beyond(photos * QUEUE_CALLS, included.queue) / 1e6) * prices.queueMillion;
  const reads = jobs * a.storeReadsPerJob;
  const store =
    storedGigabytes * prices.storeGigabyteMonth +
    ((photos * PUTS_PER_PHOTO + records) / 1e6) * prices.storeWritesMillion +
    (reads / 1e6) * prices.storeReadsMillion +
    ((reads * a.drawnMegabytes) / 1000) * prices.storeOutGigabyte;
  const up = 1 + a.containersStandBySeconds;
  const [mediaSeconds, printSeconds] = [photos * a.mediaSecondsPerPhoto * up, records * a.printSecondsPerRecord * up];
  const containers =
    (mediaSeconds + printSeconds) * prices.processorSecond +
    (mediaSeconds * a.mediaGigabytes + printSeconds * a.printGigabytes) * prices.memoryGigabyteSecond;
  const sum = worker + database + queue + store + containers;
  return { crews, worker, database, queue, store, containers, sum, perCrew: crews === 0 ? 0 : sum / crews };
}

const columns = [
  "crews",
  "worker",
  "database",
  "queue",
  "store",
  "containers",
  "sum",
  "perCrew",
] as const satisfies readonly (keyof MonthCosts)[];
const titles: Readonly<Record<(typeof columns)[number], string>> = {
  crews: "crews",
  worker: "worker",
  database: "database",
  queue: "queue",
  store: "store",
  containers: "containers",
  sum: "a month",
  perCrew: "a crew",
};

/** The table as text, sums in the inputs' currency. */
export const costsTable = (rows: readonly MonthCosts[]): string =>
  [
    columns.map((key) => titles[key]),
    ...rows.map((row) => columns.map((key) => (key === "crews" ? String(row.crews) : row[key].toFixed(2)))),
  ]
    .map((cells) => cells.map((cell) => cell.padStart(11)).join(""))
    .join("\n");
