import * as z from "zod/mini";
import type { InstrumentCheckWay } from "../quality/index.ts";
import { later } from "./later.ts";
import { count, day, id, instant, json, text } from "./primitives.ts";

/** What is entered about the company itself and no job: entries of its own ledger, where nothing is ever changed. */
export const companyFactKinds = ["tape-studied", "instrument-checked", "taught", "taken-back"] as const;
export type CompanyFactKind = (typeof companyFactKinds)[number];

/** How an instrument is checked against itself. */
const ways = ["level turned", "laser two ways", "tape hook"] as const satisfies readonly InstrumentCheckWay[];

const typed = later(() => z.strictObject({ typed: text(80), unit: text(16) }));

/** Two or three people read the same marks twice, each blind to what was read before. `seed`: of the order in which they were asked. */
export const tapeStudied = later(() =>
  z.strictObject({
    instrument: text(80),
    placing: text(80),
    people: z.array(id).check(z.minLength(2), z.maxLength(3)),
    marks: z.int().check(z.gte(2), z.lte(20)),
    rounds: z.int().check(z.gte(2), z.lte(4)),
    seed: count,
    began: instant,
    ended: instant,
    readings: z
      .array(
        z.strictObject({
          person: id,
          mark: z.int().check(z.gte(1), z.lte(20)),
          round: z.int().check(z.gte(1), z.lte(4)),
          typed: text(80),
          unit: text(16),
          at: instant,
        }),
      )
      .check(z.minLength(8), z.maxLength(240)),
  }),
);
export type TapeStudied = z.infer<typeof tapeStudied>;

/** The same thing read twice: as the instrument lay, and turned or pulled the other way. `over`: the length that the error runs over. */
export const instrumentChecked = later(() =>
  z.strictObject({
    instrument: text(80),
    way: z.enum(ways),
    by: id,
    first: typed,
    second: typed,
    over: z.optional(typed),
    at: instant,
  }),
);
export type InstrumentChecked = z.infer<typeof instrumentChecked>;

/** Who was shown which step of which tolerance sheet, and when. Without people: the whole crew. */
export const taught = later(() =>
  z.strictObject({
    step: text(80),
    people: z.optional(z.array(id).check(z.maxLength(40))),
    day,
    note: z.optional(text()),
  }),
);
export type Taught = z.infer<typeof taught>;

/** An earlier fact was a mistake: it stays where it is, and no question counts it any more. */
export const takenBack = later(() => z.strictObject({ entry: id, reason: z.optional(text()) }));
export type TakenBack = z.infer<typeof takenBack>;

/** `id`: of the one who enters it, so that sent twice it is one entry. `what` has the shape of its kind. */
export const companyFact = later(() => z.strictObject({ id, kind: z.enum(companyFactKinds), what: json }));
export type CompanyFact = z.infer<typeof companyFact>;

export const companyFactShapes: Readonly<Record<CompanyFactKind, z.core.$ZodType>> = later(() => ({
  "tape-studied": tapeStudied,
  "instrument-checked": instrumentChecked,
  taught,
  "taken-back": takenBack,
}));

/** The facts of the company itself in the order in which they were entered. `at`: milliseconds, when the edge received it. */
export const companyFacts = later(() =>
  z.object({
    facts: z.array(z.object({ id: z.string(), kind: z.enum(companyFactKinds), what: json, at: count })),
  }),
);
export type CompanyFacts = z.infer<typeof companyFacts>;
