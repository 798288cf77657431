import { createHash } from "node:crypto";
import sharp, { type Sharp } from "sharp";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { markKeys, type Store } from "#functions/shared/index.ts";
import { markFault, markType } from "./mark-form.ts";

/** Of what is kept, pixels: on paper 34 mm wide, more than 600 to the inch. Own. */
const KEPT = { width: 900, height: 360 } as const;
const MOST_PIXELS = 40_000_000;
const SECONDS = 10;
/** A drawing without pixels of its own is drawn so finely; its unit is a 72nd of an inch in the library. */
const FINEST = 1_200;

export interface MarkDrawn {
  readonly width: number;
  readonly height: number;
}

async function opened(bytes: Uint8Array, drawn: boolean): Promise<Sharp> {
  const limits = { limitInputPixels: MOST_PIXELS, failOn: "error", autoOrient: true } as const;
  if (!drawn) return sharp(bytes, limits).timeout({ seconds: SECONDS });
  const { width, height } = await sharp(bytes, limits).metadata();
  const times = Math.max(1, Math.min(KEPT.width / width, KEPT.height / height));
  return sharp(bytes, { ...limits, density: Math.min(FINEST, Math.ceil(72 * times)) }).timeout({ seconds: SECONDS });
}

/**
 * Draws a company's mark anew from the pixels of what was sent, so that nothing else of the file goes on: as PNG for screens, as
 * JPEG on white for paper. Refuses `mark-type`, `mark-more-than-picture`, `mark-unreadable`, `mark-too-large`, `mark-unknown`,
 * `store-unavailable`.
 */
export async function drawMark(company: string, sha: string, store: Store): Promise<Outcome<MarkDrawn>> {
  const keys = markKeys(company, sha);
  const object = await store.get(keys.sent);
  if (!object.ok) return object.refusal.code === "photo-unknown" ? refuse("mark-unknown", "mark") : object;
  const read = await object.value.bytes();
  if (!read.ok) return read;
  const type = markType(read.value);
  if (type === undefined) return refuse("mark-type", "mark");
  const fault = markFault(read.value, type);
  if (fault !== undefined) return refuse(fault, "mark");
  let made: { screen: { data: Buffer; info: { width: number; height: number } }; paper: Buffer };
  try {
    const small = (await opened(read.value, type === "image/svg+xml"))
      .resize({ ...KEPT, fit: "inside", withoutEnlargement: true })
      .toColourspace("srgb");
    const screen = await small.png({ compressionLevel: 9 }).toBuffer({ resolveWithObject: true });
    // print puts a JPEG into the file as it is, and so it can be sealed
    const paper = await sharp(screen.data).flatten({ background: "#ffffff" }).jpeg({ quality: 92, chromaSubsampling: "4:4:4" }).toBuffer();
    made = { screen, paper };
  } catch (thrown) {
    const large = /pixel limit/i.test((thrown as Error).message);
    return large ? refuse("mark-too-large", "mark", { most: MOST_PIXELS }) : refuse("mark-unreadable", "mark");
  }
  for (const [key, bytes, kind] of [
    [keys.screen, made.screen.data, "image/png"],
    [keys.paper, made.paper, "image/jpeg"],
  ] as const) {
    const about = { length: bytes.length, type: kind, sha256: createHash("sha256").update(bytes).digest("hex") };
    const put = await store.put(key, bytes, about);
    if (!put.ok) return put;
  }
  return ok({ width: made.screen.info.width, height: made.screen.info.height });
}
