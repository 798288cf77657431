import { Buffer } from "node:buffer";
import type { PhotoType } from "#core/photo/index.ts";

/**
 * Whether a file ends before its own container says that it does: `cut`. Read from the lengths that stand in it, no pixel
 * decoded. `other`: nothing of the kind can be told. Used only where a decoder has failed, to say why.
 */
export type Ending = "whole" | "cut" | "other";

export function ending(bytes: Uint8Array, type: PhotoType): Ending {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (type === "image/jpeg" || type === "image/png") {
    const end = type === "image/jpeg" ? ofJpeg(file) : ofPng(file);
    return typeof end === "number" ? "whole" : end;
  }
  if (type === "image/webp") return file.length < 12 || file.readUInt32LE(4) + 8 > file.length ? "cut" : "whole";
  if (type === "image/heic" || type === "image/avif") return ofBoxes(file);
  return file.length > 0 && file[file.length - 1] === 0x3b ? "whole" : "cut";
}

/** Bytes up to and with the end that the picture's own container names; undefined where it is cut off or no such thing. */
export function endOf(file: Buffer, type: "image/jpeg" | "image/png"): number | undefined {
  const end = type === "image/jpeg" ? ofJpeg(file) : ofPng(file);
  return typeof end === "number" ? end : undefined;
}

const START_OF_SCAN = 0xda;
const END = 0xd9;

/** From segment to segment (ITU T.81, B.1.1): only the end marker of the base picture counts, not one inside a segment or behind it. */
function ofJpeg(file: Buffer): number | "cut" | "other" {
  let at = 2;
  while (at < file.length) {
    if (file[at] !== 0xff) return "other";
    while (file[at] === 0xff) at += 1;
    const marker = file[at];
    if (marker === undefined) return "cut";
    if (marker === END) return at + 1;
    at += 1;
    if (at + 2 > file.length) return "cut";
    const next = at + file.readUInt16BE(at);
    if (next > file.length) return isPlausible(file, marker, at + 2) ? "cut" : "other";
    at = marker === START_OF_SCAN ? endOfScan(file, next) : next;
  }
  return "cut";
}

/** A segment of 64 kB can be made up by any two bytes of rubbish: the first ones name their contents. */
const isPlausible = (file: Buffer, marker: number, at: number): boolean =>
  (marker & 0xfc) !== 0xe0 || /^(JFIF|JFXX|Exif|http|ICC_|MPF\0|FPXR)/.test(file.toString("latin1", at, at + 4));

/** Coded data goes on over stuffed bytes (FF 00) and restart markers (FF D0 … FF D7). */
function endOfScan(file: Buffer, from: number): number {
  let at = file.indexOf(0xff, from);
  while (at !== -1 && at + 1 < file.length) {
    const next = file[at + 1] as number;
    if (next !== 0 && (next < 0xd0 || next > 0xd7) && next !== 0xff) return at;
    at = file.indexOf(0xff, at + (next === 0xff ? 1 : 2));
  }
  return file.length;
}

/** Chunk by chunk (W3C PNG, 5.3). */
function ofPng(file: Buffer): number | "cut" | "other" {
  let at = 8;
  while (at + 8 <= file.length) {
    const kind = file.toString("latin1", at + 4, at + 8);
    if (!/^[A-Za-z]{4}$/.test(kind)) return "other";
    at += file.readUInt32BE(at) + 12;
    if (kind === "IEND") return at > file.length ? "cut" : at;
  }
  return "cut";
}

const TOP_BOXES = ["ftyp", "meta", "mdat", "moov", "free", "skip", "idat", "uuid", "wide", "mpvd", "sefd"];

/** Box by box at the top (ISO/IEC 14496-12, 4.2). */
function ofBoxes(file: Buffer): Ending {
  let at = 0;
  const seen = new Set<string>();
  while (at + 8 <= file.length) {
    const kind = file.toString("latin1", at + 4, at + 8);
    if (!TOP_BOXES.includes(kind)) return seen.has("mdat") ? "whole" : "other";
    seen.add(kind);
    const short = file.readUInt32BE(at);
    if (short === 0) return "other";
    if (short === 1 && at + 16 > file.length) return "cut";
    const size = short === 1 ? Number(file.readBigUInt64BE(at + 8)) : short;
    if (size < 8) return "other";
    at += size;
  }
  return at > file.length || file.length - at > 0 || !seen.has("meta") ? "cut" : "whole";
}
