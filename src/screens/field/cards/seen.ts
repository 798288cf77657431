import type { FourSpots, SeenCorner } from "../../../geometry/index.ts";

/** A code of a card with its corners, pixels of the upright picture (the first pixel's middle is ½, ½), to the part of a pixel. */
export interface CodeSeen {
  readonly text: string;
  readonly corners: FourSpots<SeenCorner>;
}

/** What was found of cards in a photo; `width`, `height`: the upright picture's, pixels. */
export type CardsSeen =
  | { readonly is: "looked"; readonly width: number; readonly height: number; readonly codes: readonly CodeSeen[] }
  | { readonly is: "not looked" };

/** What the script beside the page answers. */
export interface CardsLooked {
  readonly number: number;
  readonly cards: CardsSeen;
}
