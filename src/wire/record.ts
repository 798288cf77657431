import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64, id, instant, language, text } from "./primitives.ts";

export const edition = later(() => z.enum(["customer", "company"]));
/** `language` and `paper`: of its receiver; without them those of the job and the company. */
export const newRecord = later(() =>
  z.strictObject({
    edition,
    language: z.optional(language),
    paper: z.optional(z.enum(["letter", "a4"])),
  }),
);
export type NewRecord = z.infer<typeof newRecord>;

export const recordMade = later(() =>
  z.object({
    record: id,
    version: count,
    edition,
    pages: count,
    bytes: count,
    sha256: hex64,
    pdf: z.string(),
  }),
);
export type RecordMade = z.infer<typeof recordMade>;

/** To whom an issued record goes. */
export const newRelease = later(() => z.strictObject({ to: text(400) }));
export type NewRelease = z.infer<typeof newRelease>;
/** The link is told once: nobody can read it again. */
export const releaseMade = later(() => z.object({ link: z.string() }));
export type ReleaseMade = z.infer<typeof releaseMade>;
export const releases = later(() =>
  z.object({
    /** `release`: SHA-256 of the link's token. */
    releases: z.array(z.object({ release: hex64, to: z.string(), released: instant, ended: z.optional(instant) })),
  }),
);
export type ReleaseList = z.infer<typeof releases>;

export const records = later(() =>
  z.object({
    records: z.array(z.extend(recordMade, { issued: instant, head: z.object({ number: count, hash: hex64 }) })),
  }),
);
export type RecordList = z.infer<typeof records>;
