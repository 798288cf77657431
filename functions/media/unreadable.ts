import type { RefusalCode } from "#core/outcome/index.ts";
import type { PhotoType, Unreadable } from "#core/photo/index.ts";
import { type Header, MOST_PIXELS, type Strictness } from "./decode.ts";
import { readableRows } from "./rows.ts";
import { ending } from "./whole.ts";

export const unreadable = (code: RefusalCode, says: string, figures: Unreadable["figures"] = {}): Unreadable => ({
  code,
  figures,
  says: says.replace(/\s+/g, " ").trim().slice(0, 200),
});

// The library has no codes; its words are fixed by tests. Those of the JPEG decoder that a row of the picture is lost by:
// libjpeg-turbo, jerror.h (JWRN_HIT_MARKER, JWRN_MUST_RESYNC, JWRN_HUFF_BAD_CODE, JWRN_ARITH_BAD_CODE, JWRN_JPEG_EOF).
const LOST =
  /premature end of|found marker 0x\w+ instead of|bad Huffman code|bad arithmetic code|not enough data|libpng read error|unexpected end of/i;
const TOO_MANY_PIXELS = /exceeds pixel limit/i;
const TIMED_OUT = /timeout/i;

/** Whether a decoder's complaint is one that leaves the picture as it is, such as stray bytes between two segments. */
export const isHarmless = (error: Error): boolean =>
  !LOST.test(error.message) && !TOO_MANY_PIXELS.test(error.message) && !TIMED_OUT.test(error.message);

/**
 * Why no picture could be made: too many pixels, a file that is not whole (with the share of its rows that can be read),
 * or anything else.
 */
export async function whyNot(error: Error, bytes: Uint8Array, type: PhotoType, header?: Header): Promise<Unreadable> {
  if (TOO_MANY_PIXELS.test(error.message)) return unreadable("photo-too-many-pixels", error.message, { most: MOST_PIXELS });
  // Behind a hole in its middle a JPEG decodes to anything, and no decoder notices before the end: no share is told.
  if (ending(bytes, type) !== "cut") return unreadable("photo-unreadable", error.message);
  // The strictest decoder counts: a row that is made up is no row that can be read.
  const strictness: Strictness = type === "image/png" ? "truncated" : "warning";
  return notWhole(error.message, header?.height, header ? await readableRows(bytes, header, strictness) : 0);
}

/** Rows as stored, from the top. */
export function notWhole(says: string, height: number | undefined, rows: number): Unreadable {
  // Never 100: the last row is missing, else the file would have been read.
  const percent = height ? Math.min(99, Math.floor((rows / height) * 100)) : 0;
  return unreadable("photo-not-whole", says, { percent, rows, ...(height ? { height } : {}) });
}
