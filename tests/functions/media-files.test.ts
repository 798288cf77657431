import { createHash, randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { crc32, deflateSync } from "node:zlib";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CardReader, HeicDecoder, type Looked, lookAt } from "#functions/media/index.ts";
import { heicGrid } from "#infra/bench/heic-grid.ts";
import { exifBlock, TAG } from "../helpers/photo-bytes.ts";
import { photographs } from "../helpers/photographs.ts";

// Ids such as S04 are cases collected from public reports; each is rebuilt here from nothing.
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const threads = { heic: new HeicDecoder(), cards: new CardReader() };
const look = (bytes: Uint8Array): Promise<Looked> => lookAt(sha(bytes), bytes, threads);
const END = Buffer.from([0xff, 0xd9]);
const cut = (bytes: Buffer, share: number): Buffer => bytes.subarray(0, Math.round(bytes.length * share));
const patched = (bytes: Buffer, at: number, ...values: number[]): Buffer => {
  const copy = Buffer.from(bytes);
  copy.set(values, at);
  return copy;
};

let photo: Buffer;
/** 800 × 600, of one piece. */
let tile: Buffer;

beforeAll(async () => {
  photo = await sharp(photographs[0]?.file as string)
    .resize(1600, 1200, { fit: "fill" })
    .jpeg({ quality: 90 })
    .toBuffer();
  tile = await readFile(new URL("../samples/photos/roofs-tile.heic", import.meta.url));
});
afterAll(() => Promise.all([threads.heic.close(), threads.cards.close()]));

const even = (background: string, width = 400, height = 300) => sharp({ create: { width, height, channels: 3, background } });

const mean = async (jpeg: Uint8Array): Promise<readonly number[]> =>
  (await sharp(jpeg).stats()).channels.map((one) => Math.round(one.mean));

async function colour({ pictures }: Looked, name: "screen" | "print" = "screen"): Promise<readonly number[]> {
  const jpeg = pictures?.renditions.find(({ facts }) => facts.name === name)?.jpeg;
  if (!jpeg) throw new Error("no rendition");
  return mean(jpeg);
}

/** A `colr` box (ISO/IEC 14496-12, 12.1.5). */
function colourBox(contents: Buffer): Buffer {
  const size = Buffer.alloc(4);
  size.writeUInt32BE(contents.length + 8);
  return Buffer.concat([size, Buffer.from("colr"), contents]);
}

/** A PNG of sixteen bits a channel in Display P3, whose numbers are those of sRGB's red: 234, 51, 35 of 255. */
async function sixteenBits(): Promise<Buffer> {
  const numbers = [234, 51, 35].map((step) => step * 257);
  const pixels = Uint16Array.from({ length: 400 * 300 * 3 }, (_, n) => numbers[n % 3] as number);
  const png = await sharp(pixels, { raw: { width: 400, height: 300, channels: 3 } })
    .toColourspace("rgb16")
    .png()
    .toBuffer();
  const { icc } = await sharp(await even("#f00").withIccProfile("p3").png().toBuffer()).metadata();
  // Written by hand, because the library writes sixteen bits with a profile wrongly (W3C PNG, 11.3.2.3).
  const chunk = Buffer.concat([Buffer.from("iCCPp3\0\0", "latin1"), deflateSync(icc as Buffer)]);
  const framed = Buffer.alloc(chunk.length + 8);
  framed.writeUInt32BE(chunk.length - 4);
  chunk.copy(framed, 4);
  framed.writeUInt32BE(crc32(chunk), chunk.length + 4);
  return Buffer.concat([png.subarray(0, 33), framed, png.subarray(33)]);
}

/** Rows at the top that are the same as those of the whole picture: counted without the code under test. */
async function sameRows(whole: Buffer, damaged: Buffer): Promise<number> {
  const pixels = async (bytes: Buffer) => sharp(bytes, { failOn: "none" }).raw().toBuffer({ resolveWithObject: true });
  const [a, b] = [await pixels(whole), await pixels(damaged)];
  const row = a.info.width * a.info.channels;
  let rows = 0;
  while (rows < a.info.height && a.data.subarray(rows * row, (rows + 1) * row).equals(b.data.subarray(rows * row, (rows + 1) * row)))
    rows += 1;
  return rows;
}

const refused = async (bytes: Uint8Array) => {
  const { facts, pictures } = await look(bytes);
  expect({ pictures, sharpness: facts.sharpness, likeness: facts.likeness, renditions: facts.renditions }).toEqual({
    pictures: undefined,
    sharpness: null,
    likeness: null,
    renditions: [],
  });
  return facts.unreadable;
};

describe("S04 a file that is not whole is told as such, with the share of its rows that can be read", () => {
  it.each([0.25, 0.6, 0.9])("a JPEG cut at %d", async (share) => {
    const rows = await sameRows(photo, cut(photo, share));
    const found = await refused(cut(photo, share));
    expect(found).toMatchObject({ code: "photo-not-whole", figures: { height: 1200 } });
    // Counted to a hundredth of the height; the rows of the block that is cut through are lost with it.
    expect(Math.abs((found?.figures.rows as number) - rows)).toBeLessThanOrEqual(1200 / 100 + 16);
    expect(found?.figures.percent).toBe(Math.floor((found?.figures.rows as number) / 12));
  });
  it("a JPEG that was damaged and not cut gives no share, since nobody can tell where its rows go wrong", async () => {
    const holed = Buffer.from(photo).fill(0, photo.length >> 1, (photo.length >> 1) + 4096);
    const closed = Buffer.concat([cut(photo, 0.6), END]);
    for (const bytes of [holed, closed]) {
      // The image library's ordinary setting passes it.
      expect((await sharp(bytes, { failOn: "error" }).raw().toBuffer()).length).toBe(1600 * 1200 * 3);
      expect(await refused(bytes)).toMatchObject({ code: "photo-unreadable", figures: {} });
    }
  });
  it("a progressive JPEG, whose rows all need the whole file", async () => {
    const progressive = await sharp(photo).jpeg({ progressive: true }).toBuffer();
    expect(await refused(cut(progressive, 0.6))).toMatchObject({ code: "photo-not-whole", figures: { percent: 0, rows: 0, height: 1200 } });
  });
  it("a PNG", async () => {
    const png = await sharp(photo).png().toBuffer();
    const found = await refused(cut(png, 0.5));
    expect(found?.code).toBe("photo-not-whole");
    expect(Math.abs((found?.figures.rows as number) - (await sameRows(png, cut(png, 0.5))))).toBeLessThanOrEqual(13);
  });
  it.each(["webp", "avif", "gif"] as const)("a %s, of which the decoder gives nothing", async (format) => {
    const whole = await sharp(photo).resize(400).toFormat(format).toBuffer();
    expect((await look(whole)).facts.unreadable).toBeUndefined();
    expect(await refused(cut(whole, 0.6))).toMatchObject({ code: "photo-not-whole", figures: { percent: 0 } });
  });
  it("a phone's HEIC, whose lost tiles a lenient decoder fills with black", async () => {
    const whole = heicGrid(tile, { columns: 3, rows: 4 });
    expect((await look(whole)).facts).toMatchObject({ width: 2400, height: 2400, type: "image/heic" });
    // Twelve tiles: half the file is a few bytes less than six of them, so one row of three is whole; nine tenths hold ten.
    expect(await refused(cut(whole, 0.49))).toMatchObject({ code: "photo-not-whole", figures: { percent: 25, rows: 600, height: 2400 } });
    expect(await refused(cut(whole, 0.9))).toMatchObject({ code: "photo-not-whole", figures: { percent: 75, rows: 1800 } });
  });
  it("a HEIC turned by its container: rows as stored", async () => {
    const turned = heicGrid(tile, { columns: 3, rows: 2, quarterTurns: 1 });
    const { unreadable, ...facts } = (await look(cut(turned, 0.9))).facts;
    expect(facts).toMatchObject({ width: 1200, height: 2400 });
    expect(unreadable).toMatchObject({ code: "photo-not-whole", figures: { percent: 50, rows: 600, height: 1200 } });
  });
  it("a HEIC of one piece", async () => {
    expect(await refused(cut(tile, 0.8))).toMatchObject({ code: "photo-not-whole", figures: { percent: 0 } });
  });
  it("yet a JPEG that lacks nothing but its end mark is read", async () => {
    const { facts, pictures } = await look(photo.subarray(0, -2));
    expect(facts.unreadable).toBeUndefined();
    expect(pictures?.pixels).toBe((await look(photo)).pictures?.pixels);
  });
  it("and stray bytes between two segments cost nothing", async () => {
    const strayed = Buffer.concat([photo.subarray(0, -2), Buffer.from([1, 2, 3]), END]);
    const { facts, pictures } = await look(strayed);
    expect(facts.unreadable).toBeUndefined();
    expect(pictures?.pixels).toBe((await look(photo)).pictures?.pixels);
  });
});

describe("S10 an enormous picture is refused by its header", () => {
  const tooMany = { code: "photo-too-many-pixels", figures: { most: 60_000_000 } };
  it("JPEG of 30,000 × 19,000", async () => {
    const small = await even("#777").jpeg().toBuffer();
    const frame = small.indexOf(Buffer.from([0xff, 0xc0]));
    expect(await refused(patched(small, frame + 5, 19_000 >> 8, 19_000 & 255, 30_000 >> 8, 30_000 & 255))).toMatchObject(tooMany);
  });
  it("WebP of 16,383 × 16,383", async () => {
    const small = await even("#777").webp().toBuffer();
    // VP8 key frame: width and height in 14 bits each behind the start code 9d 01 2a (RFC 6386, 9.1).
    const frame = small.indexOf(Buffer.from([0x9d, 0x01, 0x2a]));
    expect(await refused(patched(small, frame + 3, 0xff, 0x3f, 0xff, 0x3f))).toMatchObject(tooMany);
  });
  it("HEIC of 8,000 × 8,000 in the header of its grid", async () => {
    const grid = heicGrid(tile, { columns: 10, rows: 14, told: { width: 8000, height: 8000 } });
    expect(await refused(grid)).toMatchObject(tooMany);
  });
  it("the most that is taken is taken", async () => {
    expect((await look(await even("#777", 7500, 8000).jpeg().toBuffer())).facts.unreadable).toBeUndefined();
    expect(await refused(await even("#777", 7500, 8001).jpeg().toBuffer())).toMatchObject(tooMany);
  });
});

describe("any phone's file opens, its renditions upright, tagless and in sRGB", () => {
  it("S06 a HEIC of tiles, as phones store it", async () => {
    const { facts, pictures } = await look(heicGrid(tile, { columns: 2, rows: 1 }));
    expect(facts).toMatchObject({
      type: "image/heic",
      width: 1600,
      height: 600,
      renditions: [{ width: 1600, height: 600 }, { width: 1600 }, { width: 1000, height: 375 }],
    });
    const { data, info } = await sharp(pictures?.renditions[0]?.jpeg).raw().toBuffer({ resolveWithObject: true });
    // The same tile twice: pixels 800 apart are the same but for the JPEG's rounding.
    const differences = Array.from({ length: 700 }, (_, x) =>
      Math.abs((data[x * info.channels] ?? 0) - (data[(x + 800) * info.channels] ?? 255)),
    );
    expect(differences.reduce((sum, one) => sum + one, 0) / 700).toBeLessThan(4);
  });
  it.each([1, 2, 3])("S02 a HEIC turned by its container, %d quarters", async (quarterTurns) => {
    const { facts, pictures } = await look(heicGrid(tile, { columns: 2, rows: 1, quarterTurns }));
    expect(facts).toMatchObject(quarterTurns === 2 ? { width: 1600, height: 600 } : { width: 600, height: 1600 });
    const upright = await look(heicGrid(tile, { columns: 2, rows: 1 }));
    // `irot` turns anti-clockwise (ISO/IEC 23008-12, 6.5.10): turned back, the pixels agree.
    const back = await sharp(pictures?.renditions[0]?.jpeg)
      .rotate(90 * quarterTurns)
      .raw()
      .toBuffer();
    const same = await sharp(upright.pictures?.renditions[0]?.jpeg).raw().toBuffer();
    expect(back.length).toBe(same.length);
    expect(back.reduce((sum, step, n) => sum + Math.abs(step - (same[n] as number)), 0) / back.length).toBeLessThan(4);
  });
  it.each(["jpeg", "png", "webp"] as const)("S01 a %s turned by its tag", async (format) => {
    const withTag = sharp(
      await sharp({ create: { width: 400, height: 300, channels: 3, background: "#00f" } })
        .composite([{ input: await even("#f00", 100, 300).png().toBuffer(), left: 0, top: 0 }])
        .png()
        .toBuffer(),
    );
    const bytes = await withTag
      .withExif({ IFD0: { Orientation: "6" } })
      .withMetadata({ orientation: 6 })
      .toFormat(format)
      .toBuffer();
    const { facts, pictures } = await look(bytes);
    expect(facts).toMatchObject({ width: 300, height: 400, orientation: 6 });
    // Left becomes top when the picture is turned clockwise.
    const top = await sharp(pictures?.renditions[0]?.jpeg).extract({ left: 20, top: 20, width: 260, height: 50 }).toBuffer();
    const below = await sharp(pictures?.renditions[0]?.jpeg).extract({ left: 20, top: 150, width: 260, height: 200 }).toBuffer();
    expect([await mean(top), await mean(below)].map(([red = 0, , blue = 0]) => [red > 245, blue > 245])).toEqual([
      [true, false],
      [false, true],
    ]);
  });
  it("a CMYK JPEG", async () => {
    const bytes = await even("#f00").toColourspace("cmyk").jpeg().toBuffer();
    expect((await sharp(bytes).metadata()).space).toBe("cmyk");
    const [red, green, blue] = await colour(await look(bytes));
    expect(red).toBeGreaterThan(215);
    expect(Math.max(green as number, blue as number)).toBeLessThan(60);
    const white = await colour(await look(await even("#fff").toColourspace("cmyk").jpeg().toBuffer()));
    expect(Math.min(...white)).toBeGreaterThan(245);
  });
  it("a progressive JPEG", async () => {
    expect(await colour(await look(await even("#f00").jpeg({ progressive: true, chromaSubsampling: "4:4:4" }).toBuffer()))).toEqual([
      254, 0, 0,
    ]);
  });
  it("S07 a HEIC whose wide colours are told by a profile, or by numbers alone", async () => {
    const { icc } = await sharp(await even("#f00").withIccProfile("p3").png().toBuffer()).metadata();
    // Primaries 12, transfer 13, matrix 6, full range (ITU-T H.273).
    const byNumbers = heicGrid(tile, { columns: 1, rows: 1, colour: colourBox(Buffer.from("nclx\0\x0c\0\x0d\0\x06\x80", "latin1")) });
    const byProfile = heicGrid(tile, { columns: 1, rows: 1, colour: colourBox(Buffer.concat([Buffer.from("prof"), icc as Buffer])) });
    const plain = await look(heicGrid(tile, { columns: 1, rows: 1 }));
    const [numbers, profile] = [await look(byNumbers), await look(byProfile)];
    expect(numbers.facts.pixels).toBe(profile.facts.pixels);
    expect(numbers.facts.pixels).not.toBe(plain.facts.pixels);
  });
  it("S07, S09 a PNG of sixteen bits in wide colours", async () => {
    const bytes = await sixteenBits();
    expect(await sharp(bytes).metadata()).toMatchObject({ depth: "ushort", hasProfile: true });
    const looked = await look(bytes);
    const [red, green, blue] = await colour(looked, "print");
    expect([(red as number) > 250, (green as number) < 5, (blue as number) < 5]).toEqual([true, true, true]);
    const { depth, icc, exif, space } = await sharp(looked.pictures?.renditions[0]?.jpeg).metadata();
    expect({ depth, icc, exif, space }).toEqual({ depth: "uchar", icc: undefined, exif: undefined, space: "srgb" });
  });
  it.each(["gif", "webp"] as const)("an animated %s, by its first picture", async (format) => {
    const pages = await Promise.all(["#f00", "#00f", "#0f0"].map((one) => even(one).png().toBuffer()));
    const bytes = await sharp(pages, { join: { animated: true } })
      .toFormat(format, { loop: 0 })
      .toBuffer();
    expect((await sharp(bytes).metadata()).pages).toBe(3);
    const looked = await look(bytes);
    expect(looked.facts).toMatchObject({ type: `image/${format}`, width: 400, height: 300 });
    const [red, , blue] = await colour(looked);
    expect([(red as number) > 245, (blue as number) < 10]).toEqual([true, true]);
  });
  it("S13, D10 a picture with another picture and a film behind it, whose pixels are the same", async () => {
    const behind = Buffer.concat([
      photo,
      await even("#000").jpeg().toBuffer(),
      Buffer.from("\0\0\0\x18ftypmp42"),
      randomBytes(200_000),
      Buffer.from([7, 7]),
    ]);
    const [alone, together] = [await look(photo), await look(behind)];
    expect(together.facts.unreadable).toBeUndefined();
    expect(together.facts).toMatchObject({ sha: sha(behind), bytes: behind.length, width: 1600, height: 1200 });
    expect(together.facts.sha).not.toBe(alone.facts.sha);
    expect(together.facts.pixels).toMatch(/^[0-9a-f]{64}$/);
    expect({ ...together.facts, sha: "", bytes: 0 }).toEqual({ ...alone.facts, sha: "", bytes: 0 });
    // Cut off in the film, which is no part of the picture.
    expect((await look(behind.subarray(0, -100_000))).facts.pixels).toBe(alone.facts.pixels);
  });
  it("a still out of a film, without any notes of a camera", async () => {
    const { facts } = await look(await sharp(photo).resize(1280, 720, { fit: "fill" }).jpeg().toBuffer());
    expect(facts).toMatchObject({ width: 1280, height: 720, taken: null, position: null, notes: ["metadata-missing"] });
    expect(facts.renditions).toHaveLength(3);
  });
  it("but a film is refused by its name", async () => {
    const film = Buffer.concat([Buffer.from("\0\0\0\x1cftypmp42\0\0\0\0mp42isomavc1", "latin1"), randomBytes(2_000)]);
    expect(await refused(film)).toMatchObject({ code: "photo-is-film" });
    expect((await look(film)).facts.type).toBeNull();
  });
});

it("one decode gives everything: renditions, sharpness, exposure, likeness and the pixels' hash", async () => {
  const { facts } = await look(photo);
  expect(facts.renditions.map(({ name, width }) => [name, width])).toEqual([
    ["screen", 1600],
    ["print", 1600],
    ["column", 1000],
  ]);
  expect(facts.sharpness).toBeGreaterThan(0);
  expect(facts.exposure?.dark).toBeGreaterThanOrEqual(0);
  expect(facts.likeness?.hashes.length).toBeGreaterThan(0);
  expect(facts.pixels).toMatch(/^[0-9a-f]{64}$/);
});

it("E15 the thumbnail's orientation turns nothing", async () => {
  const block = exifBlock({ ifd0: { [TAG.orientation]: 1 }, ifd1: { [TAG.orientation]: 6 } });
  const bytes = Buffer.concat([
    photo.subarray(0, 2),
    Buffer.from([0xff, 0xe1, (block.length + 8) >> 8, (block.length + 8) & 255]),
    Buffer.from("Exif\0\0", "latin1"),
    block,
    photo.subarray(2),
  ]);
  expect((await look(bytes)).facts).toMatchObject({ width: 1600, height: 1200, orientation: 1 });
});
