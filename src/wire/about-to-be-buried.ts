import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, instant, json } from "./primitives.ts";

const words = json;

/**
 * What the company's running jobs have to say before something is buried: jobs by the soonest covering that was announced, lines
 * in the order of the core. Instants in milliseconds.
 */
export const buriedList = later(() =>
  z.object({
    jobs: z.array(
      z.object({
        job: z.string(),
        title: z.string(),
        ownNumber: z.optional(z.string()),
        soonest: z.optional(instant),
        lines: z.array(
          z.object({
            is: z.enum([
              "announced",
              "covered on a not yet",
              "later doubted",
              "covered unsaid",
              "outside",
              "too close to call",
              "tape and photo disagree",
              "unreadable",
              "seen before",
              "to look at",
              "open tonight",
              "phone silent",
            ]),
            /** In each language: the act of a covering, what stands open, what an item is called. */
            title: z.optional(words),
            /** In each language: the whole sentence of a finding, in the job's units. */
            says: z.optional(z.object({ en: z.string(), es: z.string() })),
            about: z.optional(z.object({ item: z.optional(z.string()), check: z.optional(z.string()), tag: z.optional(z.string()) })),
            at: z.optional(instant),
            count: z.optional(count),
            tonight: z.optional(z.enum(["entered", "not so", "missing"])),
            /** Who entered last from a phone that is silent since. */
            name: z.optional(z.string()),
          }),
        ),
      }),
    ),
    now: instant,
  }),
);
export type BuriedList = z.infer<typeof buriedList>;
