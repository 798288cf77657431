import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64, id, instant } from "./primitives.ts";

const use = later(() => z.object({ job: id, made: z.nullable(instant) }));
const seen = later(() => z.object({ sha256: hex64, usedIn: z.array(use) }));

/**
 * Two photos of the company that show the same, or one photo that two jobs name (`bytes`: both are the same). `turn` is the
 * camera's tag number by which the later is turned to lie as the earlier; `distance` counts the bits, of 64, that differ.
 * hint: one job, one minute. Shown side by side to a person; it accuses nobody.
 */
export const seenBefore = later(() =>
  z.object({
    photo: seen,
    before: seen,
    how: z.enum(["bytes", "pixels", "likeness"]),
    distance: count,
    turn: z.int().check(z.gte(1), z.lte(8)),
    weight: z.enum(["hint", "alarm"]),
    found: instant,
  }),
);
export type SeenBefore = z.infer<typeof seenBefore>;

/** The newest first, at most 200. */
export const seenBeforeList = later(() => z.object({ seenBefore: z.array(seenBefore) }));
export type SeenBeforeList = z.infer<typeof seenBeforeList>;
