import { Buffer } from "node:buffer";
import { inflateRawSync } from "node:zlib";
import { decodePDFRawStream, PDFArray, type PDFDocument, PDFRawStream } from "@cantoo/pdf-lib";

/**
 * What the streams of a paper may unpack to that the library unpacks itself: those that hold its objects, when it opens the file, and
 * the drawing of every page, when the page is bound in. A drawing of a whole house comes to a tenth of it (own). Pictures are carried
 * over packed as they are and count for nothing.
 */
export const MOST_UNPACKED = 32_000_000;

/** Signs of a stream's own dictionary that are looked through, backwards from its start. */
const LONGEST_DICTIONARY = 65_536;
const STREAM = Buffer.from("stream");
const TRAILER = Buffer.from("trailer");
const written = (name: string): string =>
  name.replace(/#([0-9a-fA-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));

/** A dictionary of a stream that the library unpacks while it opens the file; one that names its type elsewhere may be of them. */
const HOLDS_OBJECTS = /\/\s*(?:ObjStm|XRef)\b|\/Type\s+\d+\s+\d+\s+R/;

const LOCKS = /\/Encrypt\b/;

/** Whether a trailer says that the file is locked; a stream that stands for one is looked at with the others. */
function isLocked(file: Buffer): boolean {
  for (let at = file.indexOf(TRAILER); at >= 0; at = file.indexOf(TRAILER, at + TRAILER.length))
    if (LOCKS.test(written(file.toString("latin1", at, at + LONGEST_DICTIONARY).split("startxref")[0] ?? ""))) return true;
  return false;
}

/** What deflated bytes come to, counted up to `most`; undefined beyond it. Bytes that are no deflate come to nothing. */
function unpacked(bytes: Uint8Array, most: number): number | undefined {
  try {
    // two bytes of head, which the library reads more kindly than zlib does
    return inflateRawSync(bytes.subarray(2), { maxOutputLength: Math.max(1, most) }).length;
  } catch (thrown) {
    return (thrown as { code?: string }).code === "ERR_BUFFER_TOO_LARGE" ? undefined : 0;
  }
}

/**
 * Whether the file can be opened at all without unpacking more than `MOST_UNPACKED`. It is not parsed for that: no byte of it is
 * trusted. What is locked is told first, since what is in it cannot be weighed.
 */
export function opens(bytes: Uint8Array): "lightly" | "paper-too-heavy" | "paper-locked" {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  if (isLocked(file)) return "paper-locked";
  let left = MOST_UNPACKED;
  for (let at = file.indexOf(STREAM); at >= 0; at = file.indexOf(STREAM, at + STREAM.length)) {
    if (file.toString("latin1", Math.max(0, at - 3), at) === "end") continue;
    const before = file.toString("latin1", Math.max(0, at - LONGEST_DICTIONARY), at);
    const begins = before.lastIndexOf("obj");
    const dictionary = written(before.slice(begins < 0 ? 0 : begins + 3));
    if (begins >= 0 && !HOLDS_OBJECTS.test(dictionary)) continue;
    if (LOCKS.test(dictionary)) return "paper-locked";
    const filter = /\/Filter\s*(\[[^\]]*\]|\/?[^\s/<>[\]]+)/.exec(dictionary)?.[1] ?? "";
    // nobody writes these in another way, and another can unpack to anything
    if (filter !== "" && !/^\[?\s*\/FlateDecode\s*\]?$/.test(filter)) return "paper-too-heavy";
    const from = at + STREAM.length + (file[at + STREAM.length] === 13 ? 2 : 1);
    const size = unpacked(file.subarray(from), left);
    if (size === undefined) return "paper-too-heavy";
    left -= size;
  }
  return "lightly";
}

/** Whether the drawings of all pages together unpack to no more than `most` bytes, a drawing counted as often as a page shows it. */
export function drawsLightly(document: PDFDocument, most = MOST_UNPACKED): boolean {
  let left = most;
  for (const { node } of document.getPages()) {
    const contents = node.Contents();
    const streams = contents instanceof PDFArray ? contents.asArray().map((one) => document.context.lookup(one)) : [contents];
    for (const stream of streams) {
      if (!(stream instanceof PDFRawStream)) continue;
      // read in blocks, so that no more is unpacked than is asked for
      left -= decodePDFRawStream(stream).getBytes(left + 1).length;
      if (left < 0) return false;
    }
  }
  return true;
}
