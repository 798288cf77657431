import { type CardPlane, cardPlane, type Lens, OWN_PHOTO_DOUBTS } from "#core/geometry/index.ts";
import { readCodes } from "../../card-read/index.ts";
import type { Chance } from "../../chance/index.ts";
import { type Asked, CARD, type CardPhoto, cardPhoto, FOCAL, HEIGHT, SHEET, WIDTH } from "./scene.ts";
import { type Measured, measured, spansOf } from "./spans.ts";

/** Half-width of a lens that was measured, millionths; the one that is drawn lies anywhere within. */
const MEASURED_LENS = 500;

export interface Trial {
  readonly photo: CardPhoto;
  readonly decoded: number;
  readonly refined: number;
  /** Absent where no code was found. */
  readonly plane?: CardPlane;
  /** With the lens unknown (within 0.5 %), and measured (within 0.05 %). */
  readonly unknown: readonly Measured[];
  readonly known: readonly Measured[];
}

/** One photo the whole way: drawn, stored as JPEG, codes decoded, corners refined, plane fitted, lengths tapped. */
export async function trial(chance: Chance, asked: Asked, each: number): Promise<Trial> {
  const photo = await cardPhoto(chance, asked);
  const { codes, decoded } = await readCodes(photo.jpeg, SHEET.codes, photo.window);
  const spans = spansOf(photo, chance, each);
  const lens: Lens = {
    distortion: Math.round(1e6 * photo.camera.lens.k1 + MEASURED_LENS * (2 * chance.next() - 1)),
    within: MEASURED_LENS,
  };
  const doubts = { ...OWN_PHOTO_DOUBTS, ...(asked.over === undefined ? {} : { height: 1e6 * asked.over }) };
  const picture = { width: WIDTH, height: HEIGHT, codes, focalLength: FOCAL };
  const [unknown, known] = [cardPlane(CARD, picture), cardPlane(CARD, { ...picture, lens })];
  return {
    photo,
    decoded,
    refined: codes.length,
    ...(unknown.ok ? { plane: unknown.value } : {}),
    unknown: unknown.ok ? measured(unknown.value, spans, doubts) : [],
    known: known.ok ? measured(known.value, spans, doubts) : [],
  };
}
