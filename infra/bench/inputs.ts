import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import sharp from "sharp";
import { heicGrid } from "./heic-grid.ts";

const TILE = new URL("../../tests/samples/photos/roofs-tile.heic", import.meta.url);

/** A camera's photograph of the sample packages, brought to a size, with the camera's own notes. */
export async function cameraJpeg(width: number, height: number): Promise<Buffer> {
  const file = createRequire(import.meta.url).resolve("exif/test/sony-alpha-6000.jpg");
  return sharp(file).resize({ width, height, fit: "fill" }).keepExif().jpeg({ quality: 92 }).toBuffer();
}

/** A HEIC of tiles of 800 × 600, each a real scene. */
export const phoneHeic = async (columns: number, rows: number): Promise<Buffer> => heicGrid(await readFile(TILE), { columns, rows });
