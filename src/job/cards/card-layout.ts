import type { CardCode, FourSpots, Spot } from "../../geometry/index.ts";
import type { CardPaper } from "../../photo/index.ts";

/** The papers, micrometres: letter of 8 1/2 by 11 in, A4 of ISO 216. */
const papers: Readonly<Record<CardPaper, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215_900, height: 279_400 },
  a4: { width: 210_000, height: 297_000 },
};

/** Own: large enough to be read from two card lengths away; 21 modules of 2.4 mm. */
const SIDE = 50_000;
/** Own: more than a printer leaves blank, and more than the four modules that a code needs around it. */
const MARGIN = 12_000;
/** Of the ruler beside which a tape is laid: ten inches, and 250 mm of it. */
const RULER = 254_000;
/** What lies between a code's square and the ruler, whose numbers stand in it beyond the four modules. */
const RULER_AWAY = 19_000;

/** Where things are printed on a card; micrometres from the paper's upper left corner, x right, y down. */
export interface CardLayout {
  readonly width: number;
  readonly height: number;
  /** From the upper left code clockwise. */
  readonly codes: FourCodes;
  /** The upper end of the ruler, which runs down. */
  readonly ruler: Spot & { readonly length: number };
}
/** Names of its codes, by their places. */
export const cardCodeNames = ["a", "b", "c", "d"] as const;

type FourCodes = readonly [CardCode, CardCode, CardCode, CardCode];

const squareAt = (x: number, y: number): FourSpots => [
  { x, y },
  { x: x + SIDE, y },
  { x: x + SIDE, y: y + SIDE },
  { x, y: y + SIDE },
];

/** The layout of the cards on a paper: what is printed, and what a photo of it is measured by. */
export function cardLayout(paper: CardPaper): CardLayout {
  const { width, height } = papers[paper];
  const [right, below] = [width - MARGIN - SIDE, height - MARGIN - SIDE];
  const codes: FourCodes = [
    { name: "a", corners: squareAt(MARGIN, MARGIN) },
    { name: "b", corners: squareAt(right, MARGIN) },
    { name: "c", corners: squareAt(right, below) },
    { name: "d", corners: squareAt(MARGIN, below) },
  ];
  return { width, height, codes, ruler: { x: MARGIN + SIDE + RULER_AWAY, y: (height - RULER) / 2, length: RULER } };
}
