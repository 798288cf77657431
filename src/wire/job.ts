import * as z from "zod/mini";
import { answer, head, MOST_ENTRIES } from "./entry.ts";
import { beforehand, clearance, finding, handingOver, leftToDo, words } from "./judged.ts";
import { later } from "./later.ts";
import { photoState } from "./photo.ts";
import { count, hex64, id, instant, json, text } from "./primitives.ts";

export const jobMade = later(() => z.object({ job: id, received: instant, head, answers: z.array(answer) }));
export type JobMade = z.infer<typeof jobMade>;

export const jobs = later(() =>
  z.object({
    jobs: z.array(
      z.object({
        job: z.string(),
        title: z.string(),
        ownNumber: z.optional(z.string()),
        state: z.object({
          coverings: z.array(
            z.object({
              covering: z.string(),
              title: words,
              done: z.boolean(),
              clear: z.boolean(),
              state: z.enum(["clear", "on word", "not yet"]),
              lines: count,
              about: z.optional(instant),
            }),
          ),
        }),
        entries: count,
      }),
    ),
  }),
);
export type JobList = z.infer<typeof jobs>;

/** A job as everybody sees it. */
export const job = later(() =>
  z.object({
    job: z.string(),
    title: z.string(),
    ownNumber: z.optional(z.string()),
    head,
    entries: count,
    rules: z.int(),
    computedTo: count,
    findings: z.array(finding),
    clearances: z.array(clearance),
    handingOver,
    /** Of what is due before something that is no covering, such as digging: entered or missing. */
    beforehand: z.array(beforehand),
    sheet: z.optional(z.object({ name: z.string(), number: count, digest: hex64 })),
    tags: z.array(z.object({ set: z.string(), tag: z.string(), hiddenBy: z.string() })),
    coverings: z.array(z.object({ covering: z.string(), title: words, done: words })),
    leftToDo: z.array(leftToDo),
    photos: z.record(z.string(), photoState),
    now: instant,
  }),
);
export type JobView = z.infer<typeof job>;

const reference = later(() => z.strictObject({ id, digest: hex64 }));

/** Entries filed under the wrong job: both entries are written, or neither. */
export const move = later(() =>
  z.strictObject({
    to: id,
    entries: z.array(reference).check(z.minLength(1), z.maxLength(MOST_ENTRIES)),
    reason: text(),
    sent: z.optional(instant),
    outEntry: z.unknown(),
    inEntry: z.unknown(),
  }),
);
export type Move = z.infer<typeof move>;
export const moved = later(() => z.object({ out: count, in: count }));
export type Moved = z.infer<typeof moved>;

/** Pictures, readings or whole visits by the ids of their entries, to the job that they belong to. `id`: of the one who asks, so that asked twice it is one move. */
export const moveToJob = later(() =>
  z.strictObject({
    to: id,
    entries: z.array(id).check(z.minLength(1), z.maxLength(MOST_ENTRIES)),
    reason: text(),
    id: z.optional(z.string().check(z.regex(/^[A-Za-z0-9]{8,40}$/, "id"))),
  }),
);
export const movedToJob = later(() =>
  z.object({
    out: count,
    in: count,
    /** How many went, corrections of them included. */
    entries: count,
    /** Jobs of which a record was issued before: it has to be issued again. */
    issueAgain: z.array(z.object({ job: id, title: z.string(), version: count })),
  }),
);
export type MovedToJob = z.infer<typeof movedToJob>;

export const rebuilt = later(() =>
  z.object({
    job: z.string(),
    same: z.boolean(),
    differences: z.array(z.object({ place: z.string(), stored: json, rebuilt: json })),
  }),
);
export type Rebuilt = z.infer<typeof rebuilt>;
