import * as z from "zod/mini";
import type { KeptKind } from "../keeping/index.ts";
import { later } from "./later.ts";
import { count } from "./primitives.ts";

const kind = later(() => z.enum(["names", "places", "pictures", "records", "entries"] as const satisfies readonly KeptKind[]));
const months = later(() => z.optional(z.int()));

/** How long each site is kept, the next to end first. Days 'YYYY-MM-DD', where the company is. */
export const keepingView = later(() =>
  z.object({
    /** Months; absent inside: for good. */
    periods: z.object({ names: months, places: months, pictures: months, records: months, entries: months }),
    /** Set by the company, and not the program's usual ones. */
    isOwn: z.boolean(),
    /** The last day of the notice of these periods: nothing goes by them until then. */
    notice: z.optional(z.string()),
    today: z.string(),
    sites: z.array(
      z.object({
        site: z.optional(z.string()),
        address: z.optional(z.string()),
        jobs: z.array(z.object({ job: z.string(), title: z.string() })),
        from: z.string(),
        waits: z.boolean(),
        endings: z.array(z.object({ kind, until: z.string() })),
        /** What goes with those that end within a quarter of a year; absent: none does. */
        goes: z.optional(z.object({ kinds: z.array(kind), bodies: count, files: count })),
      }),
    ),
  }),
);
export type KeepingView = z.infer<typeof keepingView>;
