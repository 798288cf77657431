import * as z from "zod/mini";
import { head } from "./entry.ts";
import { later } from "./later.ts";
import { count, id, instant, language, text, units, zone } from "./primitives.ts";
import { refusal } from "./problem.ts";

const name = later(() => text(80));
const typed = later(() => z.strictObject({ typed: text(80), unit: text(16) }));

/** One who is met, called or written to. */
export const contact = later(() => z.strictObject({ name: text(120), phone: z.optional(text(60)), contact: z.optional(text(200)) }));
export type Contact = z.infer<typeof contact>;

/** Where it is: integers of 1e-7 degree, accuracy in millimetres, `reaches` in micrometres. */
const place = later(() =>
  z.strictObject({
    latitude: z.int().check(z.gte(-900_000_000), z.lte(900_000_000)),
    longitude: z.int().check(z.gte(-1_800_000_000), z.lte(1_800_000_000)),
    accuracy: z.optional(count),
    reaches: z.optional(z.int().check(z.gte(1), z.lte(10_000_000_000))),
    how: text(400),
  }),
);

/** A site as the office typed it; the marks belong to it, and every job there shares them. */
export const newSite = later(() =>
  z.strictObject({
    id: z.optional(id),
    address: text(300),
    place: z.optional(place),
    heightMark: z.optional(text(200)),
    tieMarks: z.optional(z.array(text(200)).check(z.maxLength(20))),
  }),
);
export type NewSite = z.infer<typeof newSite>;

export const siteView = later(() => z.extend(newSite, { id, number: count, jobs: z.array(z.string()) }));
export type SiteView = z.infer<typeof siteView>;
export const sites = later(() => z.object({ sites: z.array(siteView) }));
export type SiteList = z.infer<typeof sites>;
export const siteSet = later(() => z.object({ site: id, number: count, jobs: z.array(z.string()) }));
export type SiteSet = z.infer<typeof siteSet>;

const people = later(() => ({ customer: z.optional(contact), onSite: z.optional(contact), receiver: z.optional(contact) }));
const numbers = later(() => ({
  order: z.optional(text(80)),
  invoice: z.optional(text(80)),
  crew: z.optional(z.array(id).check(z.maxLength(40))),
}));

/**
 * A job as the office opens it. Of an existing site its id, or a new one. `sheet`: the tolerance sheet's name, of which the newest
 * version is taken over, or the digest of another; `readings`: what the sheet asks of the office, such as a locate ticket's dates.
 */
export const opening = later(() =>
  z.strictObject({
    /** Of the one who asks, so that asked twice it is one job. */
    id: z.optional(id),
    title: text(200),
    ownNumber: z.optional(text(80)),
    ...numbers,
    ...people,
    site: z.optional(z.union([z.strictObject({ known: id }), newSite])),
    zone: z.optional(zone),
    language: z.optional(language),
    units: z.optional(units),
    sheet: z.optional(name),
    sheetVersion: z.optional(text(64)),
    kitCards: z.optional(z.array(name).check(z.maxLength(60))),
    figures: z.optional(z.record(name, z.union([typed, z.literal("unknown")]))),
    switches: z.optional(z.record(name, z.boolean())),
    readings: z.optional(z.array(z.strictObject({ item: name, typed: text(80), unit: text(16) })).check(z.maxLength(60))),
    /** What had been done before the record began. */
    late: z.optional(
      z.strictObject({
        reason: text(),
        steps: z.optional(z.array(name).check(z.maxLength(100))),
        coverings: z.optional(z.array(name).check(z.maxLength(100))),
      }),
    ),
  }),
);
export type Opening = z.infer<typeof opening>;

export const jobOpened = later(() => z.object({ job: id, received: instant, head, site: z.optional(id) }));
export type JobOpened = z.infer<typeof jobOpened>;

/** A change of a job's particulars: only what is named changes. */
export const particulars = later(() =>
  z.strictObject({
    title: z.optional(text(200)),
    ...numbers,
    ...people,
    address: z.optional(text(300)),
    reason: z.optional(text()),
  }),
);
export type Particulars = z.infer<typeof particulars>;

/** One line of a table of jobs, and what comes of it. `bad` has refusals, and nothing of the table is taken while there is one. */
export const tableLine = later(() =>
  z.object({
    line: count,
    number: z.optional(z.string()),
    title: z.optional(z.string()),
    outcome: z.enum(["opens", "changes", "same", "bad"]),
    job: z.optional(id),
    /** Days and times as they were read, by their column. */
    instants: z.record(z.string(), z.string()),
    refusals: z.array(refusal),
  }),
);
export type TableLine = z.infer<typeof tableLine>;
export const tableRead = later(() =>
  z.object({
    lines: z.array(tableLine),
    sum: z.object({ opens: count, changes: count, same: count, bad: count }),
    /** Heads of columns that nothing reads. */
    unread: z.array(z.string()),
    /** Whether it was written, or only looked at. */
    written: z.boolean(),
  }),
);
export type TableRead = z.infer<typeof tableRead>;
