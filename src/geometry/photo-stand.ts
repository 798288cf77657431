import type { CardPlane } from "./card-plane.ts";
import type { PhotoLength, PhotoSource } from "./photo-length.ts";

/** How to stand, lay and prepare so that the next photo is surer. */
export const standCodes = ["card-flat", "closer", "square-on", "card-nearer", "card-on-plane", "lens-measured", "ruler-measured"] as const;
export type StandCode = (typeof standCodes)[number];

export interface Stand {
  /** Whether U is at most what is needed and the card is flat. */
  readonly enough: boolean;
  /** U of k = 2 and what is needed, micrometres. */
  readonly doubt: number;
  readonly needed: number;
  /** Empty where it is enough; else what would help most first. */
  readonly advice: readonly StandCode[];
}

/** Own: a look that leans by more than 25° (cosine in millionths) is worth being straightened. */
const LEANS_BELOW = 906_308;
/** Own: a lens whose distortion is known within less than this was measured, millionths. */
const MEASURED_LENS = 1000;

function adviceFor(source: PhotoSource, { cosine, lens, frame }: CardPlane, { reach }: PhotoLength): StandCode | undefined {
  const far = reach > 3 * frame.size;
  const leans = cosine < LEANS_BELOW;
  switch (source) {
    case "corners":
      return far ? "card-nearer" : leans ? "square-on" : "closer";
    case "taps":
      return leans ? "square-on" : "closer";
    case "lens":
      return lens.within > MEASURED_LENS ? "lens-measured" : "card-nearer";
    case "bow":
    case "spread":
      return far ? "card-nearer" : "card-flat";
    case "height":
    case "lean":
      return leans ? "square-on" : "card-on-plane";
    case "print":
      return "ruler-measured";
    case "placing":
      // no photo is surer of an end than the thing has one
      return undefined;
  }
}

/**
 * Whether a length is sure enough for what needs it, and else what to change: the largest doubts are named one by one until
 * what is left would do. `needed`: the largest U that is of use, micrometres. A card that is not flat is never enough.
 */
export function standFor(plane: CardPlane, length: PhotoLength, needed: number): Stand {
  const plain = { doubt: length.doubt, needed };
  if (plane.flat && length.doubt <= needed) return { ...plain, enough: true, advice: [] };
  const parts = [...(length.length.parts as ReadonlyMap<PhotoSource, number>)].sort((a, b) => b[1] - a[1]);
  let left = parts.reduce((sum, [, part]) => sum + part * part, 0);
  const advice: StandCode[] = plane.flat ? [] : ["card-flat"];
  for (const [source, part] of parts) {
    if (2 * Math.sqrt(left) * 1e6 <= needed) break;
    left = Math.max(0, left - part * part);
    const code = adviceFor(source, plane, length);
    if (code !== undefined && !advice.includes(code)) advice.push(code);
  }
  return { ...plain, enough: false, advice };
}
