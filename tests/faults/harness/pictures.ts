import sharp from "sharp";
import { seeded } from "../seeded.ts";

const [ACROSS, DOWN, TIMES] = [24, 18, 14] as const;

/** A small picture that no other number has: grey patches drawn from it, as JPEG of some ten thousand bytes. */
export async function pictureOf(seed: number, number: number): Promise<Uint8Array<ArrayBuffer>> {
  const chance = seeded(Math.imul(seed + 1, 0x27d4eb2f) ^ Math.imul(number + 1, 0x165667b1));
  const grey = Uint8Array.from({ length: ACROSS * DOWN }, () => chance.whole(0, 255));
  const size = { width: ACROSS * TIMES, height: DOWN * TIMES, kernel: "cubic" } as const;
  const drawn = sharp(grey, { raw: { width: ACROSS, height: DOWN, channels: 1 } }).resize(size);
  return new Uint8Array(await drawn.jpeg({ quality: 85 }).toBuffer());
}

/** The beginning of a picture, as a camera that lost power leaves it. */
export const cutOff = (bytes: Uint8Array<ArrayBuffer>, share: number): Uint8Array<ArrayBuffer> =>
  new Uint8Array(bytes.subarray(0, Math.max(64, Math.floor(bytes.length * share))));
