import { Buffer } from "node:buffer";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { readMetadata } from "#functions/media/metadata.ts";
import { exifBlock, jpegWith, TAG, triple } from "../../helpers/photo-bytes.ts";
import { boxesWith, type HeicForm, pngWith, webpOf, withSegment } from "../../helpers/photo-containers.ts";

// Ids such as E17 are cases collected from public reports; each is rebuilt here from nothing.
const BLOCK = exifBlock({
  ifd0: { [TAG.orientation]: 6 },
  exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00", [TAG.offsetTimeOriginal]: "-06:00" },
  gps: { [TAG.latitudeRef]: "N", [TAG.latitude]: triple(39, 44, 0), [TAG.longitudeRef]: "W", [TAG.longitude]: triple(104, 59, 0) },
});
const OTHER = exifBlock({ exif: { [TAG.dateTimeOriginal]: "2001:01:01 01:01:01" } });
const WHOLE = {
  taken: { text: "2025-06-01T10:00:00", source: "original", offset: "-06:00", offsetFrom: "tag" },
  satelliteTime: null,
  position: { latitude: 397_333_333, longitude: -1_049_833_333 },
  orientation: 6,
  notes: [],
};
const noted = (note: string) => ({ taken: null, satelliteTime: null, position: null, orientation: 1, notes: [note] });

let jpeg: Buffer;
let png: Buffer;
beforeAll(async () => {
  const drawn = sharp({ create: { width: 30, height: 20, channels: 3, background: "#777" } });
  [jpeg, png] = await Promise.all([drawn.clone().jpeg().toBuffer(), drawn.clone().png().toBuffer()]);
});

describe("JPEG", () => {
  const read = (bytes: Uint8Array) => readMetadata(bytes, "image/jpeg", undefined);

  it("E21 finds the block behind half a megabyte of other segments", async () => {
    let padded = jpegWith(jpeg, BLOCK);
    for (let segment = 0; segment < 8; segment += 1) padded = withSegment(padded, 0xe2, Buffer.alloc(65_000, 0xff));
    expect(padded.length).toBeGreaterThan(520_000);
    expect(await read(padded)).toEqual(WHOLE);
  });
  it("E21 finds the place behind a maker's own 60 kB, wherever that stands", async () => {
    const large = exifBlock({
      exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00", [TAG.makerNote]: "m".repeat(60_000) },
      gps: { [TAG.latitudeRef]: "S", [TAG.latitude]: triple(1, 2, 3), [TAG.longitudeRef]: "E", [TAG.longitude]: triple(4, 5, 6) },
    });
    // 1 + 2/60 + 3/3600 = 1.03416667; 4 + 5/60 + 6/3600 = 4.085
    expect(await read(jpegWith(jpeg, large))).toMatchObject({ position: { latitude: -10_341_667, longitude: 40_850_000 } });
  });
  it("E19 says that a file ends inside its notes, and does not say that it has none", async () => {
    const long = exifBlock({ exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00", [TAG.makerNote]: "m".repeat(20_000) } });
    const cut = await read(jpegWith(jpeg, long).subarray(0, 9_000));
    expect(cut.taken).toBeNull();
    expect(cut.notes[0]).toBe("metadata-cut-off");
    const whole = jpegWith(jpeg, BLOCK);
    for (const length of [2, 3, 4, 5, 6, 10, 12, 20, 12 + BLOCK.length - 1]) {
      expect((await read(whole.subarray(0, length))).notes[0]).toBe("metadata-cut-off");
    }
  });
  it("S13 asks no second picture behind the first for its notes", async () => {
    expect(await read(Buffer.concat([jpeg, jpegWith(jpeg, BLOCK)]))).toEqual(noted("metadata-missing"));
    expect(await read(Buffer.concat([jpegWith(jpeg, BLOCK), jpegWith(jpeg, OTHER), Buffer.alloc(200_000, 7)]))).toEqual(WHOLE);
  });
  it("takes the first of two blocks, and the second where the first is none", async () => {
    expect(await read(jpegWith(jpegWith(jpeg, OTHER), BLOCK))).toEqual(WHOLE);
    expect(await read(jpegWith(jpegWith(jpeg, BLOCK), Buffer.from("no block at all")))).toEqual(WHOLE);
    expect(await read(jpegWith(jpeg, Buffer.from("no block at all")))).toEqual(noted("metadata-broken"));
  });
  it("B03, B15 says in one word that a file has none, whether its segments are few or many", async () => {
    expect(await read(jpeg)).toEqual(noted("metadata-missing"));
    expect(await read(withSegment(jpeg, 0xe1, Buffer.from("http://ns.adobe.com/xap/1.0/\0<x/>")))).toEqual(noted("metadata-missing"));
  });
});

describe("E17 PNG", () => {
  const read = (bytes: Uint8Array) => readMetadata(bytes, "image/png", undefined);
  it.each(["first", "last"] as const)("reads the block that stands %s", async (where) => {
    expect(await read(pngWith(png, "eXIf", BLOCK, where))).toEqual(WHOLE);
  });
  it("E21 reads a block of more than 64 kB", async () => {
    const large = exifBlock({ exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00", [TAG.makerNote]: "m".repeat(90_000) } });
    expect(await read(pngWith(png, "eXIf", large, "last"))).toMatchObject({ taken: { text: "2025-06-01T10:00:00" } });
  });
  it("says of a file that is cut off that it is, not that it has none", async () => {
    expect(await read(png)).toEqual(noted("metadata-missing"));
    expect(await read(png.subarray(0, 60))).toEqual(noted("metadata-cut-off"));
  });
});

describe("E17 WebP", () => {
  const read = (bytes: Uint8Array) => readMetadata(bytes, "image/webp", undefined);
  const pixels = ["VP8X", Buffer.alloc(10)] as const;
  it("reads the block with and without its old heading, behind chunks of odd length", async () => {
    expect(await read(webpOf(pixels, ["ICCP", Buffer.alloc(7)], ["EXIF", BLOCK]))).toEqual(WHOLE);
    expect(await read(webpOf(pixels, ["EXIF", Buffer.concat([Buffer.from("Exif\0\0"), BLOCK])]))).toEqual(WHOLE);
  });
  it("tells none, broken and cut off apart", async () => {
    expect(await read(webpOf(pixels))).toEqual(noted("metadata-missing"));
    expect(await read(webpOf(pixels, ["EXIF", Buffer.from("not a block")]))).toEqual(noted("metadata-broken"));
    expect(await read(webpOf(pixels, ["EXIF", BLOCK]).subarray(0, 34))).toEqual(noted("metadata-cut-off"));
  });
});

describe("E17 HEIC and AVIF", () => {
  const forms: readonly [string, HeicForm][] = [
    ["as most write them", {}],
    ["AVIF", { brand: "avif" }],
    ["item locations of version 0", { version: 0 }],
    ["item ids of four bytes", { version: 2 }],
    ["the block inside the description", { inside: true }],
    ["the block in three stretches", { parts: 3 }],
    ["offsets of eight bytes", { width: 8, large: true }],
    ["the old heading, counted", { before: Buffer.from("\0\0\0\x06Exif\0\0", "latin1") }],
    ["the old heading, not counted", { before: Buffer.from("\0\0\0\0Exif\0\0", "latin1") }],
    ["no count at all", { before: Buffer.alloc(0) }],
    ["a thumbnail's block in front", { thumbnail: OTHER }],
  ];
  it.each(forms)("reads the block: %s", async (_form, form) => {
    expect(await readMetadata(boxesWith(BLOCK, form), form.brand === "avif" ? "image/avif" : "image/heic", undefined)).toEqual(WHOLE);
  });
  it("tells broken, cut off and none apart", async () => {
    const read = (bytes: Uint8Array) => readMetadata(bytes, "image/heic", undefined);
    const whole = boxesWith(BLOCK);
    expect(await read(boxesWith(Buffer.from("no block at all")))).toEqual(noted("metadata-broken"));
    expect((await read(whole.subarray(0, whole.length - 10))).notes).toContain("metadata-cut-off");
    expect(await read(whole.subarray(0, 60))).toEqual(noted("metadata-cut-off"));
    const none = Buffer.from(whole);
    none.write("mime", none.indexOf("Exif"), "latin1");
    expect(await read(none)).toEqual(noted("metadata-missing"));
  });
  it("E17 takes the block that another reader lifted out where the file shows none", async () => {
    expect(await readMetadata(png, "image/png", BLOCK)).toEqual(WHOLE);
  });
});

describe("a block whose one tag is broken", () => {
  it("costs that tag and no other", async () => {
    const block = Buffer.from(BLOCK);
    // The entry of the orientation: its type becomes 14, which there is not.
    const entry = block.indexOf(Buffer.from([0x01, 0x12, 0, 3, 0, 0, 0, 1]));
    expect(entry).toBeGreaterThan(0);
    block[entry + 3] = 14;
    const read = await readMetadata(jpegWith(jpeg, block), "image/jpeg", undefined);
    expect(read).toEqual({ ...WHOLE, orientation: 1, notes: ["metadata-broken"] });
  });

  it.each([1, 2, 3, 4, 5, 7, 9, 10, 11, 12, 13])("sets nothing aside for a count that is not there, type %d", async (type) => {
    // DateTimeOriginal that declares four thousand million values; its entry is where its number, type and count stand.
    const block = Buffer.from(BLOCK);
    const entry = block.indexOf(Buffer.from([0x90, 0x03, 0, 2, 0, 0, 0, 20]));
    expect(entry).toBeGreaterThan(0);
    block.writeUInt16BE(type, entry + 2);
    block.writeUInt32BE(0xffff_ffff, entry + 4);
    const before = performance.now();
    const read = await readMetadata(jpegWith(jpeg, block), "image/jpeg", undefined);
    expect(performance.now() - before).toBeLessThan(1_000);
    expect(read).toEqual({ ...WHOLE, taken: null, notes: ["metadata-broken", "time-missing"] });
  });
  it("is not caught in a block that points at itself", async () => {
    const loop = exifBlock({ ifd0: { [TAG.orientation]: 6, 34665: { long: 8 }, 34853: { long: 8 } }, ifd1: {} });
    loop.writeUInt32BE(8, loop.length - 4);
    expect(await readMetadata(jpegWith(jpeg, loop), "image/jpeg", undefined)).toMatchObject({
      orientation: 6,
      taken: null,
      position: null,
    });
  });
});
