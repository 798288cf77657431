import * as z from "zod/mini";
import { later } from "./later.ts";
import { id, json, text } from "./primitives.ts";

/** What the office decides about a job, or was told by an authority; and the papers that it files. */
export const decisionKinds = [
  "concession",
  "departure-agreed",
  "rework-asked",
  "does-not-apply",
  "go-ahead",
  "go-ahead-denied",
  "inspected-by-authority",
  "paper-added",
] as const;
export type DecisionKind = (typeof decisionKinds)[number];

/** One decision; `what` has the shape of its kind. Whoever stands behind it besides the one who enters it stands in `who`. */
export const decision = later(() =>
  z.strictObject({
    id: z.optional(id),
    kind: z.enum(decisionKinds),
    what: json,
    /** `name`: who decided or said so. `customer`: whose word it rests on. */
    who: z.optional(z.strictObject({ name: z.optional(text(200)), customer: z.optional(text(200)) })),
  }),
);
export type Decision = z.infer<typeof decision>;
