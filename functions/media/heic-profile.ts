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
