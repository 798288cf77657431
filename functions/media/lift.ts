import type { PhotoType } from "#core/photo/index.ts";
import { liftFromBoxes } from "./lift-boxes.ts";
import { ascii, type Lifted, tiffIn, view } from "./tiff-block.ts";

/**
 * Takes the Exif block out of its container; `bytes` may be cut off anywhere or be broken. `metadata-cut-off` where the
 * file ends before the block could be read, or before it is known that there is none. The block is a view of `bytes`
 * wherever it lies there in one piece.
 */
export function lift(bytes: Uint8Array, type: PhotoType): Lifted {
  if (type === "image/jpeg") return fromJpeg(bytes);
  if (type === "image/png") return fromPng(bytes);
  if (type === "image/webp") return fromWebp(bytes);
  return liftFromBoxes(bytes);
}

const MISSING: Lifted = { note: "metadata-missing" };
const CUT_OFF: Lifted = { note: "metadata-cut-off" };

/** What was found in a block's place: `end` may lie behind the file's own. */
function found(bytes: Uint8Array, start: number, end: number): Lifted {
  const block = tiffIn(bytes.subarray(start, end));
  if (end > bytes.length) return { ...CUT_OFF, block };
  return block ? { block } : { note: "metadata-broken" };
}

/** Markers that stand alone: TEM and the restarts (ITU T.81, table B.1). */
const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
const START_OF_SCAN = 0xda;
const END_OF_IMAGE = 0xd9;
const APP1 = 0xe1;

/** The first Exif segment before the picture's data (Exif 2.32, 4.7.2). What follows the data belongs to other pictures. */
function fromJpeg(bytes: Uint8Array): Lifted {
  let broken = false;
  for (let at = 2; ; ) {
    at = bytes.indexOf(0xff, at);
    while (at !== -1 && bytes[at + 1] === 0xff) at += 1;
    const marker = at === -1 ? undefined : bytes[at + 1];
    if (marker === undefined) return broken ? { note: "metadata-broken" } : CUT_OFF;
    if (marker === START_OF_SCAN || marker === END_OF_IMAGE) return broken ? { note: "metadata-broken" } : MISSING;
    if (marker === 0 || marker === 0xd8 || standsAlone(marker)) {
      at += 2;
      continue;
    }
    if (at + 4 > bytes.length) return CUT_OFF;
    const end = at + 2 + view(bytes).getUint16(at + 2);
    if (marker === APP1 && ascii(bytes, at + 4, 5) === "Exif\0") {
      const here = found(bytes, at + 10, end);
      if (here.block || here.note === "metadata-cut-off") return here;
      broken = true;
    }
    at = Math.max(end, at + 2);
  }
}

/** The `eXIf` chunk, before or behind the picture's data (PNG 3rd edition, 11.3.4.5). */
function fromPng(bytes: Uint8Array): Lifted {
  for (let at = 8; at + 8 <= bytes.length; ) {
    const start = at + 8;
    const end = start + view(bytes).getUint32(at);
    const kind = ascii(bytes, at + 4, 4);
    if (kind === "eXIf") return found(bytes, start, end);
    if (kind === "IEND") return MISSING;
    at = end + 4;
  }
  return CUT_OFF;
}

/** The `EXIF` chunk of the RIFF container, which mostly comes last (RFC 9649, 2.7.1.5). */
function fromWebp(bytes: Uint8Array): Lifted {
  if (bytes.length < 12) return CUT_OFF;
  const fileEnd = 8 + view(bytes).getUint32(4, true);
  for (let at = 12; at + 8 <= Math.min(bytes.length, fileEnd); ) {
    const start = at + 8;
    const end = start + view(bytes).getUint32(at + 4, true);
    if (ascii(bytes, at, 4) === "EXIF") return found(bytes, start, end);
    at = end + (end % 2);
  }
  return fileEnd > bytes.length ? CUT_OFF : MISSING;
}
