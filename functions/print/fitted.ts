import sharp from "sharp";
import type { Served } from "./origin.ts";

// Beside a browser: one picture at a time, and none kept.
sharp.cache(false);
sharp.concurrency(1);

/** Bytes that all pictures of a record may come to, so that it stays under ten million with its ledger inside. Own. */
export const MOST_PICTURE_BYTES = 8_600_000;

/** Long edge in pixels and JPEG quality, tried in turn. A picture is 84 mm wide on paper: 1000 pixels are 300 to the inch. Own. */
const sizes = [
  { edge: 1000, quality: 80 },
  { edge: 850, quality: 74 },
  { edge: 700, quality: 66 },
  { edge: 560, quality: 58 },
] as const;

/** Of all of them together. */
export const bytesOf = (files: ReadonlyMap<string, Served>): number =>
  [...files.values()].reduce((sum, { bytes }) => sum + bytes.length, 0);

/** The picture smaller; as it is where that would not make it smaller, or where it does not decode: the browser then says so. */
async function smaller(served: Served, { edge, quality }: (typeof sizes)[number]): Promise<Served> {
  try {
    const made = await sharp(served.bytes)
      .resize({ width: edge, height: edge, fit: "inside", withoutEnlargement: true })
      .jpeg({ quality })
      .toBuffer();
    return made.length < served.bytes.length ? { type: served.type, bytes: new Uint8Array(made), whole: true } : served;
  } catch {
    return served;
  }
}

/**
 * The same pictures, as they are where they fit into a record; otherwise all of them in the largest of the sizes in which they do,
 * the smallest where none does. One after another: print holds a browser beside them.
 */
export async function fitted(files: ReadonlyMap<string, Served>, most = MOST_PICTURE_BYTES): Promise<ReadonlyMap<string, Served>> {
  let fitting = files;
  for (const size of sizes) {
    if (bytesOf(fitting) <= most) return fitting;
    const made = new Map<string, Served>();
    for (const [address, served] of files) made.set(address, await smaller(served, size));
    fitting = made;
  }
  return fitting;
}
