import { Buffer } from "node:buffer";

const COLOUR_BOX = Buffer.from("colrprof", "latin1");
const PROFILE_MARK = Buffer.from("acsp", "latin1");
/** Where an ICC profile (ICC.1:2010, 7.2) has its mark, and its least length: the header. */
const MARK_AT = 36;
const HEADER = 128;

/**
 * The colour profile of a HEIC: the `colr` box of type `prof` (ISO/IEC 14496-12, 12.1.5). The decoder gives bare pixels
 * and the image library refuses the headers of some phones, so it is looked for here; the first whole one counts.
 */
export function heicProfile(bytes: Uint8Array): Uint8Array | undefined {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let box = file.indexOf(COLOUR_BOX); box !== -1; box = file.indexOf(COLOUR_BOX, box + 1)) {
    if (box < 4) continue;
    const profile = file.subarray(box + 8, box - 4 + file.readUInt32BE(box - 4));
    const whole = profile.length >= HEADER && profile.readUInt32BE(0) === profile.length;
    if (whole && profile.subarray(MARK_AT, MARK_AT + 4).equals(PROFILE_MARK)) return profile;
  }
  return undefined;
}

const NUMBERS_BOX = Buffer.from("colrnclx", "latin1");
/** SMPTE EG 432-1, the primaries of Display P3 (ITU-T H.273, table 2). */
const P3_PRIMARIES = 12;
/** Transfer by PQ and by hybrid log-gamma (the same, table 3): pictures of another range of brightness, which no profile here fits. */
const WIDE_RANGE = [16, 18];

/** Whether a HEIC says by numbers alone, without a profile, that its colours are those of Display P3. */
export function isWideByNumbers(bytes: Uint8Array): boolean {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const box = file.indexOf(NUMBERS_BOX);
  if (box === -1 || box + 12 > file.length) return false;
  return file.readUInt16BE(box + 8) === P3_PRIMARIES && !WIDE_RANGE.includes(file.readUInt16BE(box + 10));
}
