import * as z from "zod/mini";
import { head } from "./entry.ts";
import { json, text } from "./primitives.ts";

const name = text(80);
const typed = z.strictObject({ typed: text(80), unit: text(16) });
const fact = z.union([typed, text(200)]);

/** As many kit cards as any job takes over; own. */
const MOST_CARDS = 60;

/** A design that is no job yet: its figures and switches as a `design-set` has them, and the facts of its kit cards. */
export const plannedDesign = z.strictObject({
  figures: z.record(name, z.union([typed, z.literal("unknown")])),
  switches: z.optional(z.record(name, z.boolean())),
  kitCards: z.optional(z.array(z.strictObject({ part: text(200), facts: z.record(name, fact) })).check(z.maxLength(MOST_CARDS))),
});
export type PlannedDesign = z.infer<typeof plannedDesign>;

/** What a design leads to, and its check before the dig: in the core's own types, made by the core and read by it. */
export const designAnswer = z.object({ expectations: z.array(json), lines: z.array(json) });
export type DesignAnswer = z.infer<typeof designAnswer>;

export const jobDesign = z.extend(designAnswer, { job: z.string(), head });
export type JobDesign = z.infer<typeof jobDesign>;
