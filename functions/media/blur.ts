import { createHash } from "node:crypto";
import sharp, { type Sharp } from "sharp";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { pixelsOf, type Region, type Rendition } from "#core/photo/index.ts";
import { blurredKey, renditionKey, renditionNames, type Store } from "#functions/shared/index.ts";
import { MOST_PIXELS } from "./decode.ts";

/** Cells that are left of a part's longer side: what is not kept cannot be brought back, as from a blur alone it can (own). */
const CELLS = 4;

const QUALITY: Readonly<Record<Rendition["name"], number>> = { screen: 80, print: 82, column: 80 };

const jpegOf = (bytes: Uint8Array): Sharp => sharp(bytes, { limitInputPixels: MOST_PIXELS, autoOrient: false });

/** One part of the picture as a few cells of mean colour, drawn out to its size again. */
async function coarse(bytes: Uint8Array, box: ReturnType<typeof pixelsOf>): Promise<Buffer> {
  const longer = Math.max(box.width, box.height);
  const cells = (side: number): number => Math.max(1, Math.round((side / longer) * CELLS));
  const size = { width: cells(box.width), height: cells(box.height) };
  const few = await jpegOf(bytes)
    .extract(box)
    .resize({ ...size, fit: "fill", kernel: "mitchell" })
    .png()
    .toBuffer();
  return sharp(few).resize({ width: box.width, height: box.height, fit: "fill", kernel: "cubic" }).png().toBuffer();
}

async function blurred(
  bytes: Uint8Array,
  name: Rendition["name"],
  regions: readonly Region[],
): Promise<{ facts: Rendition; jpeg: Uint8Array }> {
  const { width, height } = await jpegOf(bytes).metadata();
  const boxes = regions.map((region) => pixelsOf(region, { width, height }));
  const patches = await Promise.all(boxes.map(async (box) => ({ input: await coarse(bytes, box), left: box.left, top: box.top })));
  const jpeg = await jpegOf(bytes).composite(patches).jpeg({ quality: QUALITY[name], progressive: false }).toBuffer();
  return { facts: { name, width, height, bytes: jpeg.length, sha256: createHash("sha256").update(jpeg).digest("hex") }, jpeg };
}

export interface BlurAsked {
  readonly company: string;
  readonly sha: string;
  /** Names the new renditions. */
  readonly digest: string;
  readonly regions: readonly Region[];
}

/**
 * New renditions with parts made unrecognisable, beside the ones that are there; the original is not touched. Refused:
 * `photo-not-read-yet` where there is no rendition to begin with, `photo-unreadable`, `store-unavailable`.
 */
export async function blurPhoto({ company, sha, digest, regions }: BlurAsked, store: Store): Promise<Outcome<readonly Rendition[]>> {
  const made: Rendition[] = [];
  for (const name of renditionNames) {
    const object = await store.get(renditionKey(company, sha, name));
    // what was read before there was this one has none
    if (!object.ok && object.refusal.code === "photo-unknown" && name === "column") continue;
    if (!object.ok) return object.refusal.code === "photo-unknown" ? refuse("photo-not-read-yet", `photo/${sha}`) : object;
    const bytes = await object.value.bytes();
    if (!bytes.ok) return bytes;
    const drawn = await blurred(bytes.value, name, regions).catch(() => undefined);
    if (drawn === undefined) return refuse("photo-unreadable", `photo/${sha}`);
    const about = { length: drawn.jpeg.length, type: "image/jpeg", sha256: drawn.facts.sha256 };
    const put = await store.put(blurredKey(company, sha, name, digest), drawn.jpeg, about);
    if (!put.ok) return put;
    made.push(drawn.facts);
  }
  return ok(made);
}
