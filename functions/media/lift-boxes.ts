import { type Box, boxes, Cursor } from "./boxes.ts";
import { ascii, type Lifted, tiffIn } from "./tiff-block.ts";

interface Item {
  /** 0: offsets into the file; 1: into the `idat` box. */
  readonly method: number;
  readonly extents: readonly { readonly offset: number; readonly length: number }[];
}

/** The ids of the items of type `Exif` (ISO/IEC 14496-12, 8.11.6). */
function exifItems(bytes: Uint8Array, { start, end }: Box): readonly number[] {
  const wide = bytes[start] !== 0;
  const ids: number[] = [];
  for (const { kind, start: entry } of boxes(bytes, start + (wide ? 8 : 6), end)) {
    const version = bytes[entry] ?? 0;
    if (kind !== "infe" || version < 2) continue;
    const cursor = new Cursor(bytes, entry + 4);
    const id = cursor.next(version === 2 ? 2 : 4);
    if (ascii(bytes, cursor.at + 2, 4) === "Exif") ids.push(id);
  }
  return ids;
}

/** Where an item's bytes lie (ISO/IEC 14496-12, 8.11.3). */
function placeOf(bytes: Uint8Array, { start }: Box, wanted: number): Item | undefined {
  const version = bytes[start] ?? 0;
  const cursor = new Cursor(bytes, start + 4);
  const [sizes, more] = [cursor.next(1), cursor.next(1)];
  const width = { offset: sizes >> 4, length: sizes & 15, base: more >> 4, index: version === 0 ? 0 : more & 15 };
  const idWidth = version < 2 ? 2 : 4;
  for (let left = cursor.next(idWidth); left > 0; left -= 1) {
    const id = cursor.next(idWidth);
    const method = version === 0 ? 0 : cursor.next(2) & 15;
    cursor.next(2);
    const base = cursor.next(width.base);
    const parts = cursor.next(2);
    if (id === wanted) {
      const extents = Array.from({ length: parts }, () => {
        cursor.skip(width.index);
        return { offset: base + cursor.next(width.offset), length: cursor.next(width.length) };
      });
      return { method, extents };
    }
    cursor.skip(parts * (width.index + width.offset + width.length));
  }
  return undefined;
}

/** The ids of the items that describe the picture itself rather than its thumbnail (`iref` of type `cdsc`, 8.11.12). */
function describing(bytes: Uint8Array, references: Box | undefined, primary: number): readonly number[] {
  if (!references) return [];
  const width = bytes[references.start] === 0 ? 2 : 4;
  const ids: number[] = [];
  for (const { kind, start } of boxes(bytes, references.start + 4, references.end)) {
    if (kind !== "cdsc") continue;
    const cursor = new Cursor(bytes, start);
    const from = cursor.next(width);
    for (let count = cursor.next(2); count > 0; count -= 1) if (cursor.next(width) === primary) ids.push(from);
  }
  return ids;
}

function find(bytes: Uint8Array): Lifted {
  const meta = [...boxes(bytes, 0, bytes.length)].find(({ kind }) => kind === "meta");
  if (!meta || meta.end > bytes.length) return { note: "metadata-cut-off" };
  const inside = [...boxes(bytes, meta.start + 4, meta.end)];
  const box = (kind: string): Box | undefined => inside.find((one) => one.kind === kind);
  const [information, locations, primary, data] = [box("iinf"), box("iloc"), box("pitm"), box("idat")];
  const ids = information ? exifItems(bytes, information) : [];
  if (ids.length === 0) return { note: "metadata-missing" };
  const main = primary ? new Cursor(bytes, primary.start + 4).next(bytes[primary.start] === 0 ? 2 : 4) : 0;
  const own = describing(bytes, box("iref"), main);
  const id = ids.find((one) => own.includes(one)) ?? ids[0];
  const place = id === undefined || !locations ? undefined : placeOf(bytes, locations, id);
  if (!place || (place.method === 1 && !data) || place.method > 1) return { note: "metadata-broken" };
  const shift = place.method === 1 && data ? data.start : 0;
  // A length of 0 means up to the end (8.11.3.1).
  const stretches = place.extents.map(
    ({ offset, length }) => [offset + shift, length === 0 ? bytes.length : offset + shift + length] as const,
  );
  const cut = stretches.some(([, end]) => end > bytes.length);
  const [only] = stretches;
  const payload = stretches.length === 1 && only ? bytes.subarray(...only) : joined(bytes, stretches);
  // Four bytes first: how far behind them the block begins (ISO/IEC 23008-12, A.2.1). Not every writer counts right.
  const block = tiffIn(payload.subarray(4)) ?? tiffIn(payload);
  if (cut) return { block, note: "metadata-cut-off" };
  return block ? { block } : { note: "metadata-broken" };
}

/** Far more than any camera writes (own); each stretch may name the same bytes again. */
const MOST_JOINED = 4_194_304;

function joined(bytes: Uint8Array, stretches: readonly (readonly [number, number])[]): Uint8Array {
  let left = MOST_JOINED;
  const parts: Uint8Array[] = [];
  for (const [start, end] of stretches) {
    const part = bytes.subarray(start, Math.min(end, start + left));
    parts.push(part);
    left -= part.length;
    if (left <= 0) break;
  }
  return Buffer.concat(parts);
}

/** The Exif item of a HEIC or AVIF, whoever wrote it. */
export function liftFromBoxes(bytes: Uint8Array): Lifted {
  try {
    return find(bytes);
  } catch (thrown) {
    if (thrown instanceof RangeError) return { note: "metadata-broken" };
    throw thrown;
  }
}
