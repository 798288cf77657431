import { createHash } from "node:crypto";
import sharp, { type Sharp, type SharpOptions } from "sharp";
import { GREY_LONG_EDGE, type GreyMeasures, measureGrey, type Rendition } from "#core/photo/index.ts";

/** Most pixels that are decoded; a small file can hold an enormous picture. The same limit on every call. */
export const MOST_PIXELS = 60_000_000;

/** A decode that takes longer is given up; own. */
const DECODE_SECONDS = 60;

const OPTIONS: SharpOptions = { failOn: "truncated", limitInputPixels: MOST_PIXELS, sequentialRead: true };

const SCREEN_EDGE = 2048;
/** At 5 in on paper 1600 pixels are more than 300 to the inch. */
const PRINT_EDGE = 1600;

// One photo at a time and nothing kept, so that memory stays flat over hundreds of photos.
sharp.cache(false);
sharp.concurrency(1);

export const open = (bytes: Uint8Array): Sharp => sharp(bytes, OPTIONS).timeout({ seconds: DECODE_SECONDS });

export interface Header {
  /** Upright. */
  readonly width: number;
  readonly height: number;
  readonly metadataBlock: Uint8Array | undefined;
}

/** What the header says; no pixel is decoded. */
export async function readHeader(bytes: Uint8Array): Promise<Header> {
  const found = await open(bytes).metadata();
  return { width: found.autoOrient.width, height: found.autoOrient.height, metadataBlock: found.exif };
}

export interface Picture {
  readonly facts: Rendition;
  readonly jpeg: Uint8Array;
}

export interface Pictures {
  readonly renditions: readonly Picture[];
  readonly measures: GreyMeasures;
}

/**
 * Everything that is made of the pixels, from one decode: the screen's size first, upright and in sRGB, and from that the
 * print's and the grey picture that is measured. JPEGs without any metadata, so that nothing turns them a second time.
 */
export async function makePictures(source: Sharp): Promise<Pictures> {
  const base = await source
    .autoOrient()
    .flatten({ background: "#ffffff" })
    .resize({ width: SCREEN_EDGE, height: SCREEN_EDGE, fit: "inside", withoutEnlargement: true })
    .toColourspace("srgb")
    .raw({ depth: "uchar" })
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = base.info;
  const again = (): Sharp => sharp(base.data, { raw: { width, height, channels }, limitInputPixels: MOST_PIXELS });
  const screen = await encode("screen", again(), 80);
  const print = await encode("print", within(again(), PRINT_EDGE), 82);
  const grey = await within(again(), GREY_LONG_EDGE).greyscale().raw({ depth: "uchar" }).toBuffer({ resolveWithObject: true });
  return { renditions: [screen, print], measures: measureGrey(grey.data, grey.info.width, grey.info.height) };
}

const within = (picture: Sharp, edge: number): Sharp =>
  picture.resize({ width: edge, height: edge, fit: "inside", withoutEnlargement: true });

async function encode(name: Rendition["name"], picture: Sharp, quality: number): Promise<Picture> {
  const { data, info } = await picture.jpeg({ quality, progressive: false }).toBuffer({ resolveWithObject: true });
  const sha256 = createHash("sha256").update(data).digest("hex");
  return { facts: { name, width: info.width, height: info.height, bytes: data.length, sha256 }, jpeg: data };
}
