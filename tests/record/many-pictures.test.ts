import { createHash, randomBytes } from "node:crypto";
import sharp from "sharp";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { PictureView, RecordModel } from "#core/record/index.ts";
import { MOST_PICTURE_BYTES } from "#functions/print/fitted.ts";
import { blanked, imagesOf, readPdf } from "../helpers/pdf.ts";
import { type SamplePrinter, samplePrinter } from "../helpers/printer.ts";
import { sampleModel, samplePhotoCount } from "../samples/record-model.ts";
import { type SamplePhoto, samplePhotos } from "../samples/record-photos.ts";

const COUNT = 60;

/** As many bytes as a phone's photo has in its rendition for paper: structure at every size, and grain. */
async function photoLike(): Promise<Buffer> {
  const noise = (width: number, height: number) =>
    sharp(randomBytes(width * height * 3), { raw: { width, height, channels: 3 } })
      .resize(1600, 1200, { kernel: "cubic" })
      .png({ compressionLevel: 1 })
      .toBuffer();
  const grain = await noise(800, 600);
  const shapes = await noise(40, 30);
  return sharp(shapes)
    .composite([{ input: await sharp(grain).ensureAlpha(0.18).png({ compressionLevel: 1 }).toBuffer() }])
    .jpeg({ quality: 82 })
    .toBuffer();
}

/** A comment of its own in each file makes sixty different pictures of one (JPEG, ISO/IEC 10918-1 annex B: COM). */
const commented = (jpeg: Buffer, at: number): Buffer =>
  Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xfe, 0, 4, 48 + Math.floor(at / 10), 48 + (at % 10)]), jpeg.subarray(2)]);

let printer: SamplePrinter;
let photos: readonly SamplePhoto[];
let model: RecordModel;

beforeAll(async () => {
  const one = await photoLike();
  photos = Array.from({ length: COUNT }, (_, at) => {
    const bytes = new Uint8Array(commented(one, at));
    return { sha256: createHash("sha256").update(bytes).digest("hex"), bytes, width: 1600, height: 1200 };
  });
  const sample = sampleModel(await samplePhotos(samplePhotoCount));
  const pictures = photos.map(
    ({ sha256, width, height }, at): PictureView => ({
      title: `Picture ${at + 1} of the trench`,
      caption: "",
      photo: sha256,
      rendition: `kettle/renditions/${sha256}/print.jpg`,
      width,
      height,
      when: "made 12 May 2026, 9:10 EDT",
      place: "no position in the photo",
      lookedAt: "",
      alt: `Picture ${at + 1}`,
    }),
  );
  model = { ...sample, steps: sample.steps.map((step, at) => ({ ...step, pictures: at === 0 ? pictures : [] })) };
  printer = await samplePrinter(photos);
}, 60_000);
afterAll(() => printer.browser.close());

it("a record with 60 photos stays under 10 MB, every one of them in it with its caption, sharp enough for paper", async () => {
  const whole = photos.reduce((sum, { bytes }) => sum + bytes.length, 0);
  expect(whole).toBeGreaterThan(1.5 * MOST_PICTURE_BYTES);
  const printed = await printer.print(model);
  if (!printed.ok) throw new Error(JSON.stringify(printed.refusal));
  const { pdf, missing, shown } = printed.value;
  console.log(`60 photos: ${(whole / 1e6).toFixed(1)} MB as they were, record ${(pdf.length / 1e6).toFixed(2)} MB`);
  expect(missing).toEqual([]);
  expect(pdf.length).toBeLessThan(10_000_000);
  const images = await imagesOf(pdf);
  expect(images.map(({ filter }) => filter)).toEqual(photos.map(() => "/DCTDecode"));
  // 84 mm of paper: 650 pixels are close to 200 to the inch
  for (const { width } of images) expect(width).toBeGreaterThanOrEqual(650);
  // the seal names what was printed, not what it was made of
  const digests = new Set(images.map(({ bytes }) => createHash("sha256").update(bytes).digest("hex")));
  expect(Object.keys(shown?.pictures ?? {})).toHaveLength(COUNT);
  expect(Object.values(shown?.pictures ?? {}).filter((digest) => !digests.has(digest))).toEqual([]);
  const read = await readPdf(pdf);
  expect(read.painted.reduce((sum, count) => sum + count, 0)).toBe(COUNT);
  for (const [at, painted] of read.painted.entries())
    expect(read.pages[at]?.match(/Picture \d+ of the trench/g) ?? []).toHaveLength(painted);
  // pictures alone fill a page with four at the least
  expect(
    read.painted
      .filter((count) => count > 0)
      .slice(1, -1)
      .every((count) => count >= 4),
  ).toBe(true);
  expect(read.text).toContain(blanked("Picture 60 of the trench"));
}, 120_000);
