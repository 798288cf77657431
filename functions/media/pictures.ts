import { createHash } from "node:crypto";
import type { Sharp } from "sharp";
import { GREY_LONG_EDGE, type Grey, type GreyMeasures, type Likeness, likeness, measureGrey, type Rendition } from "#core/photo/index.ts";
import type { CardReader, FirstLook } from "./cards.ts";
import { again, type Base, decode, within } from "./decode.ts";
import { pixelHash } from "./pixel-hash.ts";

/** At 5 in on paper 1600 pixels are more than 300 to the inch. */
const PRINT_EDGE = 1600;
/** A record's column is 84 mm wide: 1000 pixels across are 300 to the inch. */
const COLUMN_EDGE = 1000;

export interface Picture {
  readonly facts: Rendition;
  readonly jpeg: Uint8Array;
}

export interface Pictures {
  readonly renditions: readonly Picture[];
  readonly measures: GreyMeasures;
  readonly likeness: Likeness;
  readonly pixels: string;
  /** What was seen of cards in it. */
  readonly look: FirstLook;
}

/** JPEGs without any metadata, so that nothing turns them a second time. */
export async function makeRenditions(base: Base): Promise<readonly Picture[]> {
  return [
    await encode("screen", again(base), 80),
    await encode("print", within(again(base), PRINT_EDGE), 82),
    await encode("column", within(again(base), COLUMN_EDGE), 80),
  ];
}

/** Everything that is made of the pixels, from one decode. */
export async function makePictures(source: Sharp, orientation: number, cards: CardReader): Promise<Pictures> {
  const base = await decode(source, orientation);
  const found = cards.find(base);
  const grey = await greyOf(base);
  // Measured here while the library's own thread encodes.
  const renditions = makeRenditions(base);
  const measures = measureGrey(grey.pixels, grey.width, grey.height);
  return {
    measures,
    likeness: likeness(grey),
    pixels: pixelHash(base),
    renditions: await renditions,
    look: { found: await found, width: base.width },
  };
}

/** Made small before it is made grey, as the phone does it, and in a third of the time. */
async function greyOf(base: Base): Promise<Grey> {
  const { data, info } = await within(again(base), GREY_LONG_EDGE)
    .toColourspace("b-w")
    .raw({ depth: "uchar" })
    .toBuffer({ resolveWithObject: true });
  // A plain array of bytes: walking over Node's own kind makes garbage for every pixel.
  const pixels = new Uint8Array(data.buffer, data.byteOffset, data.length);
  return { pixels, width: info.width, height: info.height };
}

async function encode(name: Rendition["name"], picture: Sharp, quality: number): Promise<Picture> {
  const { data, info } = await picture.jpeg({ quality, progressive: false }).toBuffer({ resolveWithObject: true });
  const sha256 = createHash("sha256").update(data).digest("hex");
  return { facts: { name, width: info.width, height: info.height, bytes: data.length, sha256 }, jpeg: data };
}
