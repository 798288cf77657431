import sharp, { type Sharp, type SharpOptions } from "sharp";

/** Most pixels that are decoded; a small file can hold an enormous picture. The same limit on every call. */
export const MOST_PIXELS = 60_000_000;

/** A decode that takes longer is given up; own. */
const DECODE_SECONDS = 60;

const SCREEN_EDGE = 2048;

// One photo at a time and nothing kept, so that memory stays flat over hundreds of photos.
sharp.cache(false);
sharp.concurrency(1);

/** How much of a decoder's complaints ends the decode: every one, or only the end of the file and what cannot be decoded at all. */
export type Strictness = Extract<SharpOptions["failOn"], "warning" | "truncated">;

/** The first picture of the file, lying as it is stored. */
export const open = (bytes: Uint8Array, failOn: Strictness): Sharp =>
  sharp(bytes, { failOn, limitInputPixels: MOST_PIXELS, sequentialRead: true, autoOrient: false }).timeout({ seconds: DECODE_SECONDS });

export interface Header {
  /** As stored, before any turn. */
  readonly width: number;
  readonly height: number;
  readonly metadataBlock: Uint8Array | undefined;
}

/** What the header says; no pixel is decoded. Throws where it cannot be read or tells of more than `MOST_PIXELS`. */
export async function readHeader(bytes: Uint8Array): Promise<Header> {
  const { width, height, exif } = await open(bytes, "truncated").metadata();
  return { width, height, metadataBlock: exif };
}

/** The library's own profile of Display P3: it hands it out only in a file that it has written. */
export async function wideProfile(): Promise<Uint8Array | undefined> {
  const one = sharp({ create: { width: 1, height: 1, channels: 3, background: "#000000" } });
  return (await sharp(await one.withIccProfile("p3").png().toBuffer()).metadata()).icc;
}

/** Bare pixels, upright, sRGB, at most as long as was asked for. */
export interface Base {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 2 | 3 | 4;
}

/** The one decode. `orientation` 1…8 is the camera's tag (Exif 2.32, 4.6.4 A) by which the stored pixels are turned. */
export async function decode(source: Sharp, orientation: number, edge = SCREEN_EDGE): Promise<Base> {
  // Eight bits before the profile is followed: the library takes sixteen to Display P3 instead, and calls that sRGB.
  const small = within(source.pipelineColourspace("srgb").flatten({ background: "#ffffff" }), edge);
  // Turned when it is small already: turning the whole picture would need all of it in memory.
  const { data, info } = await upright(small, orientation)
    .toColourspace("srgb")
    .raw({ depth: "uchar" })
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels };
}

/** The decoded pixels as a picture to go on with. */
export const again = ({ data, width, height, channels }: Base): Sharp =>
  sharp(data, { raw: { width, height, channels }, limitInputPixels: MOST_PIXELS });

/** Never made larger. */
export const within = (picture: Sharp, edge: number): Sharp =>
  picture.resize({ width: edge, height: edge, fit: "inside", withoutEnlargement: true });

/** The library mirrors before it turns, in whatever order it is asked. */
function upright(picture: Sharp, orientation: number): Sharp {
  if (orientation === 2) return picture.flop();
  if (orientation === 3) return picture.rotate(180);
  if (orientation === 4) return picture.flip();
  if (orientation === 5) return picture.flop().rotate(270);
  if (orientation === 6) return picture.rotate(90);
  if (orientation === 7) return picture.flop().rotate(90);
  return orientation === 8 ? picture.rotate(270) : picture;
}
