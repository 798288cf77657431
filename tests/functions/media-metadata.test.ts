import { readFile } from "node:fs/promises";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import type { PhotoType } from "#core/photo/index.ts";
import { readMetadata } from "#functions/media/metadata.ts";
import { readTaken } from "#functions/media/taken.ts";
import { type ExifTags, exifBlock, jpegWith, type Rational, TAG, triple, type Value } from "../helpers/photo-bytes.ts";

// Ids such as E01 are cases collected from public reports; each is rebuilt here from nothing.
let plain: Buffer;
beforeAll(async () => {
  plain = await sharp({ create: { width: 30, height: 20, channels: 3, background: "#777" } })
    .jpeg()
    .toBuffer();
});
const sample = (name: string) => readFile(new URL(`../samples/photos/${name}`, import.meta.url));
const read = (tags: ExifTags, little = false) => readMetadata(jpegWith(plain, exifBlock(tags, little)), "image/jpeg", undefined);
const dated = (original: string, more: Readonly<Record<number, Value>> = {}) =>
  read({ exif: { [TAG.dateTimeOriginal]: original, ...more } });
const placed = (gps: Readonly<Record<number, Value>>) => read({ gps });

const PLACE = { [TAG.latitudeRef]: "N", [TAG.latitude]: triple(39, 44, 0), [TAG.longitudeRef]: "W", [TAG.longitude]: triple(104, 59, 0) };
const ZEROS: readonly Rational[] = [
  [0, 0],
  [0, 0],
  [0, 0],
];

describe("when: the camera's wall clock", () => {
  it("E01 keeps the text, whatever zone the machine is in", async () => {
    const zone = process.env.TZ;
    try {
      for (const [machine, minutes] of [
        ["UTC", 0],
        ["America/Denver", 360],
      ] as const) {
        process.env.TZ = machine;
        expect(new Date(2025, 5, 1).getTimezoneOffset()).toBe(minutes);
        expect(await dated("2025:06:01 10:00:00")).toMatchObject({
          taken: { text: "2025-06-01T10:00:00", source: "original" },
          notes: ["offset-missing", "position-missing"],
        });
      }
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
  });

  it.each([
    ["   :  ", undefined, "offset-missing"],
    ["Z", "+00:00", undefined],
    ["-0300", "-03:00", undefined],
    ["-5:00", "-05:00", undefined],
    ["+05:45", "+05:45", undefined],
    ["-04:00\0", "-04:00", undefined],
    ["+15:00", undefined, "offset-not-understood"],
    ["+02:07", undefined, "offset-not-understood"],
    ["EST", undefined, "offset-not-understood"],
  ])("E03, E04 reads an offset %j as %j", async (typed, offset, note) => {
    const { taken, notes } = await dated("2025:06:01 10:00:00", { [TAG.offsetTimeOriginal]: typed });
    expect(taken?.offset).toBe(offset);
    expect(notes.filter((one) => one.startsWith("offset"))).toEqual(note ? [note] : []);
  });

  it("E05 takes zeros for no time", async () => {
    expect(await dated("0000:00:00 00:00:00")).toMatchObject({ taken: null, notes: ["time-zeros", "position-missing"] });
  });

  it.each(["2025:13:45 27:61:61", "2025:02:30 10:00:00", "2025:06:01 24:00:00", "2025:06:01 10:00:60", "yesterday"])(
    "E07 refuses the date %j",
    async (text) => {
      expect(await dated(text)).toMatchObject({ taken: null, notes: ["time-impossible", "position-missing"] });
    },
  );

  it("takes the digitising's date where the other is missing, never the file's change", async () => {
    const digitized = await read({
      ifd0: { [TAG.dateTime]: "2026:01:01 00:00:00" },
      exif: { [TAG.dateTimeDigitized]: "2025:06:01 10:00:00" },
    });
    expect(digitized.taken).toEqual({ text: "2025-06-01T10:00:00", source: "digitized" });
    expect(await read({ ifd0: { [TAG.dateTime]: "2026:01:01 00:00:00" } })).toMatchObject({
      taken: null,
      notes: ["time-missing", "position-missing"],
    });
  });

  it("E13 puts the satellites' time on the day nearest the wall clock (real photos, one across midnight)", async () => {
    expect(await readMetadata(await sample("satellite-time.jpg"), "image/jpeg", undefined)).toMatchObject({
      taken: { text: "2012-12-23T14:47:49", offset: "-08:00", offsetFrom: "satellite" },
      satelliteTime: "2012-12-23T22:47:49Z",
    });
    expect(await readMetadata(await sample("across-midnight.jpg"), "image/jpeg", undefined)).toMatchObject({
      taken: { text: "2013-02-06T16:00:03", offset: "-08:00" },
      satelliteTime: "2013-02-07T00:00:02Z",
    });
  });

  it("E13 tells no zone from a satellites' time that is stale, and none without a wall clock", () => {
    const stale = readTaken({ original: "2025:06:01 10:07:00", gpsTime: [16, 0, 0] });
    expect(stale).toMatchObject({
      taken: { text: "2025-06-01T10:07:00" },
      satelliteTime: "2025-06-01T16:00:00Z",
      notes: ["offset-missing"],
    });
    expect(stale.taken?.offset).toBeUndefined();
    expect(readTaken({ gpsTime: [16, 0, 0] })).toEqual({ taken: null, satelliteTime: null, notes: ["time-missing"] });
  });
});

describe("where", () => {
  it("reads degrees as integers of 1e-7 with the hemisphere, and the error in millimetres", async () => {
    expect(await placed({ ...PLACE, [TAG.gpsError]: [[45, 10]] })).toMatchObject({
      position: { latitude: 397_333_333, longitude: -1_049_833_333, accuracy: 4500 },
    });
  });
  it("reads the southern and eastern halves", async () => {
    expect(await placed({ ...PLACE, [TAG.latitudeRef]: "S", [TAG.longitudeRef]: "E" })).toMatchObject({
      position: { latitude: -397_333_333, longitude: 1_049_833_333 },
    });
  });
  it.each([
    ["E09 0/0 rationals", { ...PLACE, [TAG.latitude]: ZEROS, [TAG.longitude]: ZEROS }, "position-broken"],
    [
      "E10 one broken rational",
      {
        ...PLACE,
        [TAG.latitude]: [
          [1, 0],
          [6, 0],
          [36, 1],
        ] as const,
      },
      "position-broken",
    ],
    ["E10 a latitude alone", { [TAG.latitudeRef]: "N", [TAG.latitude]: triple(39, 44, 0) }, "position-broken"],
    ["a latitude beyond the pole", { ...PLACE, [TAG.latitude]: triple(90, 0, 1) }, "position-broken"],
    ["E11 no hemisphere", { [TAG.latitude]: triple(39, 44, 0), [TAG.longitude]: triple(104, 59, 0) }, "position-unsigned"],
    ["E11 one hemisphere", { ...PLACE, [TAG.longitudeRef]: "" }, "position-unsigned"],
    [
      "B01 a block of zeros left by a phone that withholds the place",
      { 0: "", 1: "", 2: triple(0, 0, 0), 3: "", 4: triple(0, 0, 0), 7: triple(0, 0, 0), 29: "" },
      "position-withheld",
    ],
    ["zeros with hemispheres", { ...PLACE, [TAG.latitude]: triple(0, 0, 0), [TAG.longitude]: triple(0, 0, 0) }, "position-zero"],
  ])("%s is no position", async (_case, gps, note) => {
    const { position, notes } = await placed(gps);
    expect(position).toBeNull();
    expect(notes).toContain(note);
  });
});

describe("the camera's notes as a whole", () => {
  it("E15 follows the picture's orientation, not its thumbnail's", async () => {
    const both = await read({ ifd0: { [TAG.orientation]: 1 }, ifd1: { [TAG.orientation]: 6 } });
    expect(both).toMatchObject({ orientation: 1 });
    const reversed = await read({ ifd0: { [TAG.orientation]: 8 }, ifd1: { [TAG.orientation]: 1 } });
    expect(reversed).toMatchObject({ orientation: 8 });
  });
  it.each([0, 256, 65535])("S15 takes orientation %d for upright and says so", async (tag) => {
    const { orientation, notes } = await read({ ifd0: { [TAG.orientation]: tag } });
    expect(orientation).toBe(1);
    expect(notes).toContain("orientation-out-of-range");
  });
  it("E21, E22 reads the same from both byte orders, behind a maker's own 60 kB", async () => {
    const tags = {
      ifd0: { [TAG.orientation]: 6 },
      exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00", [TAG.makerNote]: "m".repeat(60_000) },
      gps: PLACE,
    };
    const big = await read(tags);
    expect(big).toMatchObject({ orientation: 6, taken: { text: "2025-06-01T10:00:00" }, position: { latitude: 397_333_333 } });
    expect(await read(tags, true)).toEqual(big);
  });
  it("B15 says that a photo has no notes, in one word", async () => {
    expect(await readMetadata(plain, "image/jpeg", undefined)).toMatchObject({ taken: null, position: null, notes: ["metadata-missing"] });
  });
  it("E17 reads the block of a WebP, PNG and AVIF that the image library lifts out", async () => {
    const tags = { IFD0: { Make: "drawn" }, IFD2: { DateTimeOriginal: "2025:06:01 10:00:00" } };
    for (const [type, coded] of [
      ["image/webp", sharp(plain).withExif(tags).webp()],
      ["image/png", sharp(plain).withExif(tags).png()],
      ["image/avif", sharp(plain).withExif(tags).avif({ effort: 0 })],
    ] as const) {
      const bytes = await coded.toBuffer();
      const { exif } = await sharp(bytes).metadata();
      expect(await readMetadata(bytes, type satisfies PhotoType, exif)).toMatchObject({ taken: { text: "2025-06-01T10:00:00" } });
    }
  });
  it("reads a phone's HEIC, its pixels cut off", async () => {
    expect(await readMetadata(await sample("park-cut-off.heic"), "image/heic", undefined)).toMatchObject({
      taken: { text: "2018-04-07T11:24:11" },
      position: { latitude: 476_358_333, longitude: -1_223_604_889, accuracy: 10_000 },
    });
  });
  it("takes a broken block for a note", async () => {
    const broken = Buffer.concat([Buffer.from("MM\0*"), Buffer.from([0, 0, 0, 8, 0xff, 0xff])]);
    const { taken, position, notes } = await readMetadata(jpegWith(plain, broken), "image/jpeg", undefined);
    expect({ taken, position }).toEqual({ taken: null, position: null });
    expect(notes.length).toBeGreaterThan(0);
  });
});
