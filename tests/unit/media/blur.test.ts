import { createHash } from "node:crypto";
import sharp from "sharp";
import { expect, it } from "vitest";
import { blurPhoto } from "#functions/media/blur.ts";
import { blurredKey, renditionKey, renditionNames } from "#functions/shared/index.ts";
import { memoryStore } from "../../helpers/memory-store.ts";

const [sha, digest] = ["a".repeat(64), "b".repeat(64)];
const regions = [{ x: 0, y: 0, width: 500_000, height: 500_000 }];
const widths = { screen: 400, print: 320, column: 200 };

/** Stripes of two pixels: what is made unrecognisable has none of them. */
async function striped(width: number): Promise<Uint8Array> {
  const pixels = Buffer.alloc(width * width, 0);
  for (let at = 0; at < pixels.length; at += 1) pixels[at] = (at % width) % 4 < 2 ? 20 : 230;
  return new Uint8Array(
    await sharp(pixels, { raw: { width, height: width, channels: 1 } })
      .jpeg({ quality: 90 })
      .toBuffer(),
  );
}

async function storeOf(names: readonly (keyof typeof widths)[]) {
  const store = memoryStore();
  for (const name of names)
    store.objects.set(renditionKey("kettle", sha, name), { bytes: await striped(widths[name]), type: "image/jpeg" });
  return store;
}

const spread = async (jpeg: Uint8Array, left: number): Promise<number> => {
  const { channels } = await sharp(await sharp(jpeg).extract({ left, top: left, width: 60, height: 60 }).png().toBuffer()).stats();
  return channels[0]?.stdev ?? Number.NaN;
};

it("makes every rendition anew, each with the part unrecognisable and the rest as it was", async () => {
  const store = await storeOf(renditionNames);
  const made = await blurPhoto({ company: "kettle", sha, digest, regions }, store);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  expect(made.value.map(({ name, width }) => ({ name, width }))).toEqual(renditionNames.map((name) => ({ name, width: widths[name] })));
  for (const { name, sha256, bytes } of made.value) {
    const jpeg = store.objects.get(blurredKey("kettle", sha, name, digest))?.bytes as Uint8Array;
    expect([createHash("sha256").update(jpeg).digest("hex"), jpeg.length]).toEqual([sha256, bytes]);
    expect(await spread(jpeg, 10)).toBeLessThan(10);
    expect(await spread(jpeg, widths[name] - 70)).toBeGreaterThan(60);
  }
});

it("makes what there is of a photo that was read before there was one for a column", async () => {
  const store = await storeOf(["screen", "print"]);
  const made = await blurPhoto({ company: "kettle", sha, digest, regions }, store);
  expect(made.ok && made.value.map(({ name }) => name)).toEqual(["screen", "print"]);
  expect(store.objects.has(blurredKey("kettle", sha, "column", digest))).toBe(false);
});

it("refuses a photo that nobody has read", async () => {
  const made = await blurPhoto({ company: "kettle", sha, digest, regions }, await storeOf(["screen"]));
  expect(made).toMatchObject({ ok: false, refusal: { code: "photo-not-read-yet" } });
});
