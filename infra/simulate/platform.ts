import { readFile } from "node:fs/promises";
import { z } from "zod";

const given = z.strictObject({ value: z.number().min(0), source: z.string().min(1) }).transform(({ value }) => value);
const all = <const T extends readonly string[]>(names: T) =>
  z.strictObject(Object.fromEntries(names.map((name) => [name, given])) as { readonly [name in T[number]]: typeof given });

/** Limits of the platform, waits that are too long, times that are modelled, and what a crew's day is taken for. */
export const platformShape = z.strictObject({
  note: z.string(),
  limits: all([
    "databaseGigabytes",
    "databaseStatements",
    "databaseResultMegabytes",
    "subrequests",
    "processorMs",
    "queuePerSecond",
    "listedDatabases",
  ]),
  waits: all(["databaseMs", "mediaSeconds", "printSeconds"]),
  times: all([
    "phoneMs",
    "databaseMs",
    "callMs",
    "writeMs",
    "flushMs",
    "megabytesPerSecond",
    "sqliteFactor",
    "storeMs",
    "queueMs",
    "mediaAtOnce",
    "printAtOnce",
  ]),
  day: all([
    "crewsPerCompany",
    "daysPerJob",
    "workingDaysPerMonth",
    "entriesPerSend",
    "screenMinutes",
    "lookSeconds",
    "beginsHour",
    "worksHours",
    "picturesOpened",
    "questionsAsked",
  ]),
  zones: z.strictObject({
    source: z.string(),
    shares: z
      .array(z.strictObject({ hours: z.int().min(-12).max(14), share: z.number().min(0).max(1) }))
      .min(1)
      .refine((list) => Math.abs(list.reduce((sum, { share }) => sum + share, 0) - 1) < 1e-9, "shares that come to 1"),
  }),
});

export type Platform = z.infer<typeof platformShape>;

/** `platform.json`. @throws what is wrong with it */
export const readPlatform = async (): Promise<Platform> =>
  platformShape.parse(JSON.parse(await readFile(new URL("./platform.json", import.meta.url), "utf8")));
