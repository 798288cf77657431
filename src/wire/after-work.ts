import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, day, hex64, id, instant, json, text } from "./primitives.ts";

/** What is entered after the work: how it was handed over, its warranty, services and callbacks. */
export const afterWorkKinds = [
  "signed",
  "declined",
  "not-reached",
  "delivered-unsigned",
  "in-use",
  "cover-started",
  "part-kept",
  "part-replaced",
  "part-registered",
  "new-owner",
  "service-done",
  "callback-opened",
  "callback-closed",
  "opened-up-again",
] as const;
export type AfterWorkKind = (typeof afterWorkKinds)[number];

/** One fact as the office types it; `what` has the shape of its kind. Names and contacts stand in `who`. */
export const afterWork = later(() =>
  z.strictObject({
    id: z.optional(id),
    kind: z.enum(afterWorkKinds),
    what: json,
    who: z.optional(z.strictObject({ name: z.optional(text(200)), contact: z.optional(text(400)) })),
  }),
);
export type AfterWork = z.infer<typeof afterWork>;

const months = later(() => z.int().check(z.gte(0), z.lte(1200)));
const lines = later(() => z.array(text(20_000)).check(z.maxLength(200)));
const serviceKind = later(() => z.enum(["return visit", "winter", "spring", "yearly"]));

/** The company's own terms: the program ships none. What each means stands in `src/warranty`. */
export const warrantySettings = later(() =>
  z.object({
    text: z.optional(z.union([lines, z.object({ en: z.optional(lines), es: z.optional(lines) })])),
    terms: z.optional(
      z
        .array(
          z.object({
            part: text(200),
            months,
            starts: z.enum(["handover", "first running", "invoice paid", "date of sale"]),
            conditions: z.optional(text()),
            services: z.optional(z.array(serviceKind)),
            register: z.optional(z.object({ days: count, with: text(200) })),
            replacement: z.optional(z.enum(["rest of the old term", "new term", "longer of both"])),
            newOwner: z.optional(z.enum(["passes on", "passes on when told", "ends"])),
            newOwnerDays: z.optional(count),
          }),
        )
        .check(z.maxLength(200)),
    ),
    services: z.optional(
      z.array(
        z.object({
          kind: serviceKind,
          daysAfter: z.optional(count),
          month: z.optional(z.int().check(z.gte(1), z.lte(12))),
          day: z.optional(z.int().check(z.gte(1), z.lte(31))),
          within: z.optional(z.int().check(z.gte(0), z.lte(182))),
        }),
      ),
    ),
    acceptedByUseAfterDays: z.optional(z.int().check(z.gte(0), z.lte(3650))),
  }),
);

export type WarrantySettings = z.infer<typeof warrantySettings>;

const typedWarranty = later(() => ({
  number: text(80),
  customer: text(200),
  address: text(400),
  part: text(200),
  start: day,
  end: day,
}));

/** One cover that began before this program: as imported, with the scanned paper where there is one. */
export const oldWarranty = later(() => z.object({ ...typedWarranty, note: z.optional(text()), paper: z.optional(hex64) }));
export type OldWarranty = z.infer<typeof oldWarranty>;

/** A line of the register: one part of one job, or of an old paper. Soonest to run out first. */
export const warrantyRegister = later(() =>
  z.object({
    covers: z.array(
      z.object({
        job: z.optional(z.string()),
        title: z.string(),
        ownNumber: z.optional(z.string()),
        part: z.string(),
        is: z.enum(["kept, no cover", "start not known", "not begun", "runs", "over"]),
        start: z.optional(day),
        end: z.optional(day),
        /** To be registered with whom, by when. */
        register: z.optional(z.object({ with: z.string(), by: day, is: z.enum(["to do", "late", "done", "done late"]) })),
        /** The next service that it rests on, and how many have no entry. */
        next: z.optional(z.object({ kind: serviceKind, due: day, until: day })),
        missed: count,
        /** An old one as it was imported. */
        old: z.optional(oldWarranty),
        /** The day where the site is, as of which this was judged. */
        today: day,
      }),
    ),
    /** How many parts the company's terms name. */
    terms: count,
  }),
);
export type WarrantyRegister = z.infer<typeof warrantyRegister>;

/** A CSV of old warranties: read only, or taken over where every row reads. */
export const warrantyImport = later(() => z.strictObject({ csv: z.string().check(z.maxLength(2_000_000)), dry: z.boolean() }));
export const warrantyImported = later(() =>
  z.object({
    rows: z.array(
      z.object({
        line: count,
        outcome: z.enum(["new", "changed", "same", "does not read"]),
        number: z.optional(z.string()),
        part: z.optional(z.string()),
        column: z.optional(z.string()),
        says: z.optional(z.string()),
      }),
    ),
    taken: count,
  }),
);
export type WarrantyImported = z.infer<typeof warrantyImported>;

/** A callback of one of the company's jobs; `confirmed`: its cause was seen. */
export const callbackList = later(() =>
  z.object({
    callbacks: z.array(
      z.object({
        job: z.string(),
        title: z.string(),
        ownNumber: z.optional(z.string()),
        entry: z.string(),
        symptom: z.string(),
        at: instant,
        closed: z.boolean(),
        confirmed: z.optional(z.boolean()),
      }),
    ),
  }),
);
export type CallbackList = z.infer<typeof callbackList>;
