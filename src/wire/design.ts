import * as z from "zod/mini";
import type { DesignQuestion, DesignState } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import { head } from "./entry.ts";
import { later } from "./later.ts";
import { text } from "./primitives.ts";

const name = later(() => text(80));
const typed = later(() => z.strictObject({ typed: text(80), unit: text(16) }));
const fact = later(() => z.union([typed, text(200)]));

/** As many kit cards as any job takes over; own. */
const MOST_CARDS = 60;

/** A design that is no job yet: its figures and switches as a `design-set` has them, and the facts of its kit cards. */
export const plannedDesign = later(() =>
  z.strictObject({
    figures: z.record(name, z.union([typed, z.literal("unknown")])),
    switches: z.optional(z.record(name, z.boolean())),
    kitCards: z.optional(z.array(z.strictObject({ part: text(200), facts: z.record(name, fact) })).check(z.maxLength(MOST_CARDS))),
  }),
);
export type PlannedDesign = z.infer<typeof plannedDesign>;

const questions = ["flow", "velocity", "reserve", "cord", "float", "stone"] as const satisfies readonly DesignQuestion[];
const states = [
  "enough",
  "not enough",
  "too close to call",
  "not known",
  "ask the maker",
  "ask the electrician",
] as const satisfies readonly DesignState[];

const names = later(() => z.optional(z.array(z.string())));
const figures = later(() => z.record(z.string(), z.union([z.number(), z.string()])));
const refusal = later(() => z.strictObject({ code: z.string(), place: z.string(), column: z.optional(z.int()), figures }));

/** Its figures are integers in the fixed unit of the kind that `kinds` gives them by name, or text as it prints. */
const message = later(() =>
  z.strictObject({
    key: z.string(),
    figures: z.record(z.string(), z.union([z.int(), z.string()])),
    kinds: z.record(z.string(), z.string()),
  }),
);

/** One derived figure: integers in the fixed unit of `kind`, doubt as U = 2u with its three largest contributors. */
const expectation = later(() =>
  z.strictObject({
    id: z.string(),
    kind: z.string(),
    value: z.optional(z.int()),
    doubt: z.optional(z.int()),
    contributors: z.optional(z.array(z.strictObject({ name: z.string(), u: z.number() }))),
    answer: z.optional(z.string()),
    warning: z.optional(z.string()),
    caution: z.optional(z.string()),
    needs: names,
    assumes: names,
    refusal: z.optional(refusal),
  }),
);

/** One question before the dig: its state, what it says, what to change and by how much, what it waits for. */
const line = later(() =>
  z.strictObject({
    id: z.enum(questions),
    state: z.enum(states),
    says: message,
    advice: z.array(message),
    needs: names,
    assumes: names,
    caution: z.optional(z.string()),
    refusal: z.optional(refusal),
  }),
);

/** What a design leads to, and its check before the dig: made by the core in its own types, which this describes. */
export const designAnswer = later(() => z.strictObject({ expectations: z.array(expectation), lines: z.array(line) }));
export interface DesignAnswer {
  readonly expectations: readonly Json[];
  readonly lines: readonly Json[];
}

export const jobDesign = later(() => z.extend(designAnswer, { job: z.string(), head }));
export interface JobDesign extends DesignAnswer {
  readonly job: string;
  readonly head: z.infer<typeof head>;
}
