import { createHash } from "node:crypto";
import libheif from "libheif-js/wasm-bundle.js";
import sharp, { type Sharp } from "sharp";
import { GREY_LONG_EDGE, likeness, measureGrey } from "#core/photo/index.ts";
import { CardReader, decode, HeicDecoder, lookAt, makeRenditions, open, readMetadata, type Threads } from "#functions/media/index.ts";
import { cameraJpeg, phoneHeic } from "./inputs.ts";
import { compared, type Line } from "./line.ts";
import { medians } from "./medians.ts";

export interface TimeAsked {
  readonly rounds: number;
  /** Rounds before that, which count for nothing: some ten until the code that measures pixels is compiled, fewer for the HEIC. */
  readonly warm?: number;
  /** Tiles of 800 × 600 across and down, for the HEIC; the JPEG has the same size. */
  readonly across: number;
  readonly down: number;
}

export const TWELVE_MEGAPIXELS: TimeAsked = { rounds: 9, across: 5, down: 5 };

/** How long media takes for one photo, beside the plain ways to do the same, in one process and with the same settings. */
export async function mediaTime({ rounds, warm, across, down }: TimeAsked): Promise<readonly Line[]> {
  const jpeg = await cameraJpeg(800 * across, 600 * down);
  const coded = await phoneHeic(across, down);
  // The renditions alone are turned as well, else the turn would count as reading.
  const { orientation } = await readMetadata(jpeg, "image/jpeg", undefined);
  const threads = { heic: new HeicDecoder(), cards: new CardReader() };
  try {
    const jpegs = await medians(
      [
        { name: "full", run: () => readWhole(jpeg, threads) },
        { name: "apart", run: () => readApart(jpeg) },
        { name: "renditions", run: async () => makeRenditions(await decode(open(jpeg, "warning"), orientation)) },
      ],
      rounds,
      warm ?? 12,
    );
    const heics = await medians(
      [
        { name: "full", run: () => readWhole(coded, threads) },
        { name: "bare", run: () => bareDecoder(coded) },
      ],
      rounds,
      warm ?? 2,
    );
    const size = `${(across * down * 0.48).toFixed(0)} MP`;
    return [
      compared(`${size} JPEG read, beside separate pipelines`, jpegs.full, jpegs.apart, 0.75),
      compared(`${size} JPEG read, beside its three renditions alone`, jpegs.full, jpegs.renditions, 1.3),
      compared(`${size} HEIC read, beside the bare decoder`, heics.full, heics.bare, 2),
    ];
  } finally {
    await Promise.all([threads.heic.close(), threads.cards.close()]);
  }
}

/** As media does it, without the store. */
async function readWhole(bytes: Buffer, threads: Threads): Promise<void> {
  const sha = createHash("sha256").update(bytes).digest("hex");
  const { facts } = await lookAt(sha, bytes, threads);
  if (facts.unreadable || facts.renditions.length !== 3 || !facts.likeness) throw new Error("the bench's photo was not read whole");
}

/** The same outputs, each by a pipeline of its own from the file: hash, metadata, three renditions, measures, likeness, pixel hash. */
async function readApart(bytes: Buffer): Promise<void> {
  createHash("sha256").update(bytes).digest("hex");
  const { exif } = await sharp(bytes).metadata();
  await readMetadata(bytes, "image/jpeg", exif);
  await within(sharp(bytes), 2048).jpeg({ quality: 80 }).toBuffer();
  await within(sharp(bytes), 1600).jpeg({ quality: 82 }).toBuffer();
  const measured = await grey(sharp(bytes));
  measureGrey(measured.pixels, measured.width, measured.height);
  likeness(await grey(sharp(bytes)));
  createHash("sha256")
    .update(await within(sharp(bytes), 2048).raw().toBuffer())
    .digest("hex");
}

const within = (picture: Sharp, edge: number): Sharp =>
  picture.autoOrient().resize({ width: edge, height: edge, fit: "inside", withoutEnlargement: true });

async function grey(picture: Sharp) {
  const { data, info } = await within(picture, GREY_LONG_EDGE).greyscale().raw().toBuffer({ resolveWithObject: true });
  return { pixels: new Uint8Array(data.buffer, data.byteOffset, data.length), width: info.width, height: info.height };
}

/** The decoder's package as its own page says to use it: open, decode to RGBA, free. */
async function bareDecoder(bytes: Uint8Array): Promise<void> {
  const decoder = new libheif.HeifDecoder();
  const [image] = decoder.decode(bytes);
  if (!image) throw new Error("the decoder found no picture");
  const [width, height] = [image.get_width(), image.get_height()];
  const data = new Uint8ClampedArray(width * height * 4);
  const shown = await new Promise<object | null>((resolve) => image.display({ data, width, height }, resolve));
  if (shown === null) throw new Error("the decoder could not decode");
  image.free();
  if (decoder.decoder) libheif.heif_context_free(decoder.decoder);
}
