import * as z from "zod/mini";
import { later } from "./later.ts";

/** A refusal over HTTP: an RFC 9457 problem document with the refusal's own members. */
export const problem = later(() =>
  z.object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    code: z.string(),
    place: z.string(),
    column: z.optional(z.int()),
    figures: z.record(z.string(), z.union([z.string(), z.number()])),
    requestId: z.optional(z.string()),
  }),
);
export type WireProblem = z.infer<typeof problem>;

/** One of several refusals of the same thing. */
export const refusal = later(() =>
  z.object({
    code: z.string(),
    place: z.string(),
    column: z.optional(z.int()),
    figures: z.record(z.string(), z.union([z.string(), z.number()])),
    says: z.string(),
  }),
);

/** The refusal of a tolerance sheet: the first fault as the problem itself, and all of them. */
export const sheetProblem = later(() => z.extend(problem, { faults: z.array(refusal) }));
export type SheetProblem = z.infer<typeof sheetProblem>;
