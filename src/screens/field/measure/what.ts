import type { Lens } from "../../../geometry/index.ts";
import type { Typed, Whats } from "../../../job/index.ts";
import type { Pictured } from "../picture/what.ts";
import { type CardInPhoto, thousandths } from "./card-in-photo.ts";
import type { End } from "./view.ts";

interface Measured {
  readonly photo: string;
  readonly card: Extract<CardInPhoto, { readonly is: "card" }>;
  readonly ends: readonly [End, End];
  readonly ruler: Typed | undefined;
  readonly lens: Lens | undefined;
}

/** The words of the entry: everything that the length follows from. */
export function measuredWhat({ item, tag }: Pictured, { photo, card, ends, ruler, lens }: Measured): Whats["photo-measured"] {
  const { width, height, paper, codes } = card;
  return {
    item,
    ...(tag === undefined ? {} : { tag }),
    photo,
    width,
    height,
    paper,
    ...(ruler === undefined ? {} : { ruler }),
    codes,
    ...(lens === undefined ? {} : { lens: { distortion: lens.distortion, within: lens.within } }),
    from: thousandths(ends[0]),
    to: thousandths(ends[1]),
  };
}
