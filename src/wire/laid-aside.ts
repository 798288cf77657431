import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64, id, instant } from "./primitives.ts";

/** read: a photo is to be read; tell: a job is to be told what was read of it; compare: it is to be compared with the others. */
const about = later(() => ({ kind: z.enum(["read", "tell", "compare"]), photo: hex64, job: z.optional(id) }));

/**
 * Work that the edge owes a photo and that did not go through several times. `laidAside`: tried so often that it is tried once a day
 * only, or when somebody says so. `why`: a refusal's code, `broke` for a fault of the program. `next`: when it is tried again.
 */
export const laidAside = later(() =>
  z.object({ ...about, tries: count, why: z.nullable(z.string()), next: instant, laidAside: z.boolean() }),
);
export type LaidAside = z.infer<typeof laidAside>;

/** What waits longest first, at most 200; `more` are there besides. */
export const laidAsideList = later(() => z.object({ work: z.array(laidAside), more: count }));
export type LaidAsideList = z.infer<typeof laidAsideList>;

/** Which are to be tried again now; all of them where nothing is named. */
export const tryAgain = later(() =>
  z.strictObject({ work: z.optional(z.array(z.strictObject(about)).check(z.minLength(1), z.maxLength(200))) }),
);
export const triedAgain = later(() => z.object({ again: count }));
export type TriedAgain = z.infer<typeof triedAgain>;
