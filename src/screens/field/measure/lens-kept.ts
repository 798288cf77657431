import type { Lens } from "../../../geometry/index.ts";
import type { Keep } from "../keep/index.ts";
import type { Size } from "./view.ts";

/** This phone's main lens as it was measured, of pictures of one size. `at`: the phone's clock, ms. */
export interface KeptLens extends Lens {
  readonly long: number;
  readonly short: number;
  readonly at: number;
  readonly photos: number;
}

const PLACE = "lens";

export const keptLens = (keep: Keep): Promise<KeptLens | undefined> => keep.draft<KeptLens>(PLACE);
export const keepLens = (keep: Keep, lens: KeptLens | undefined): Promise<void> => keep.keepDraft(PLACE, lens);

/** Both edges of a picture, whichever way the phone was held: its distortion is the same all around the middle. */
export const edgesOf = ({ width, height }: Size): { readonly long: number; readonly short: number } => ({
  long: Math.max(width, height),
  short: Math.min(width, height),
});

/** The lens of a picture: only one of the same size is taken to be of the same camera, not cut and not enlarged. */
export function lensOf(kept: KeptLens | undefined, picture: Size): Lens | undefined {
  const { long, short } = edgesOf(picture);
  if (kept === undefined || kept.long !== long || kept.short !== short) return undefined;
  return { distortion: kept.distortion, within: kept.within };
}
