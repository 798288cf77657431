/** How a photo came to be known: the very bytes, the very pixels in another file, or alike. */
export type SeenHow = "bytes" | "pixels" | "likeness";

/** A job that names a photo, and when: the phone's clock when the entry was made, milliseconds; null where it was not kept. */
export interface PhotoUse {
  readonly job: string;
  readonly made: number | null;
}

/** Entries of one job within this time are about one moment (own, after common practice). */
const ONE_MOMENT_MS = 60_000;

/**
 * How much it weighs that two photos, or one in two places, show the same: a hint where all that names them stands in one
 * job and within a minute, as two frames of one burst do; an alarm otherwise. Neither says what was meant by it.
 */
export function weightOf(uses: readonly PhotoUse[]): "hint" | "alarm" {
  const apart = (one: PhotoUse, other: PhotoUse): boolean =>
    one.job !== other.job || one.made === null || other.made === null || Math.abs(one.made - other.made) > ONE_MOMENT_MS;
  return uses.some((one, n) => uses.slice(0, n).some((other) => apart(one, other))) ? "alarm" : "hint";
}
