import {
  type CardPlane,
  cardPlane,
  type FourSpots,
  OWN_PHOTO_DOUBTS,
  type PhotoDoubts,
  type PhotoLength,
  photoLength,
  type SeenCorner,
} from "../../geometry/index.ts";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import { readQuantity } from "../../reading/index.ts";
import { cardCodeNames, cardLayout } from "../cards/index.ts";
import type { SeenSpot, Typed, Whats } from "../fact.ts";

/** Own: a printer that fits a page to its paper prints 94 to 106 of 100, and nobody laid a tape beside the ruler; millionths. */
const PRINT_UNKNOWN = 60_000;
/** Own: a check ruler that is longer or shorter by more than this share is another one, or its tape began at the 1 in mark. */
const RULER_WITHIN = 0.08;
/** Own: no end of a tape's hook or of a printed line is laid better than this, micrometres. */
const RULER_LAID = 250;
/** Own: no tap and no edge is better than this, pixels. */
const LEAST_TAP = 0.1;
/** Pixels are entered in thousandths. */
const PER_PIXEL = 1000;

type Words = Whats["photo-measured"];

export interface PhotoMeasured {
  readonly plane: CardPlane;
  readonly length: PhotoLength;
}

const spotOf = ([x, y]: SeenSpot) => ({ x: x / PER_PIXEL, y: y / PER_PIXEL });
const cornerOf = (seen: SeenSpot): SeenCorner => ({ ...spotOf(seen), u: seen[2] / PER_PIXEL });

/** How much larger the card was printed than it is drawn, and how well that is known: half-width in millionths. */
export interface PrintScale {
  readonly scale: number;
  readonly within: number;
}

/**
 * What a tape said beside the card's check ruler. Without one the print is doubtful by so much that no length is of use. Refuses what
 * does not read as a length, and one that is not that ruler's.
 */
export function printScale(paper: Words["paper"], ruler: Typed | undefined): Outcome<PrintScale> {
  if (ruler === undefined) return ok({ scale: 1, within: PRINT_UNKNOWN });
  const read = readQuantity(ruler.typed, { kind: "length", unit: ruler.unit, place: "ruler/typed" });
  if (!read.ok) return read;
  const drawn = cardLayout(paper).ruler.length;
  const scale = read.value.value / drawn;
  if (!(Math.abs(scale - 1) <= RULER_WITHIN))
    return refuse("reading-out-of-range", "ruler/typed", { found: read.value.value, wanted: drawn });
  return ok({ scale, within: Math.ceil((Math.max(read.value.resolution / 2, RULER_LAID) * 1e6) / drawn) });
}

function scaled(length: PhotoLength, scale: number): PhotoLength {
  const times = (micrometres: number): number => Math.round(micrometres * scale);
  const { value, parts } = length.length;
  return {
    length: { value: value * scale, parts: new Map([...parts].map(([source, part]) => [source, part * scale])) },
    micrometres: times(length.micrometres),
    doubt: Math.ceil(length.doubt * scale),
    reach: times(length.reach),
  };
}

/**
 * A length in a photo from nothing but what its entry says, so that phone, edge and record say the same; `placing`: of the reading that it
 * stands beside (`photoPlacing`). Refuses what cannot be
 * a card or a length in it, as `cardPlane` and `photoLength` do, and a check ruler that is none.
 */
export function photoMeasured(words: Words, placing = 0): Outcome<PhotoMeasured> {
  const { width, height, paper, ruler, codes, lens, from, to } = words;
  const print = printScale(paper, ruler);
  if (!print.ok) return print;
  const plane = cardPlane(cardLayout(paper).codes, {
    width,
    height,
    codes: codes.map(({ place, corners }) => ({
      name: cardCodeNames[place],
      corners: corners.map(cornerOf) as unknown as FourSpots<SeenCorner>,
    })),
    ...(lens === undefined ? {} : { lens }),
  });
  if (!plane.ok) return plane;
  const tap = Math.max(from[2] / PER_PIXEL, to[2] / PER_PIXEL, LEAST_TAP);
  const doubts: PhotoDoubts = { ...OWN_PHOTO_DOUBTS, tap, print: print.value.within, placing };
  const length = photoLength(plane.value, spotOf(from), spotOf(to), doubts);
  return length.ok ? ok({ plane: plane.value, length: scaled(length.value, print.value.scale) }) : length;
}
