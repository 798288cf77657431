import { readFile } from "node:fs/promises";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import type { PhotoType } from "#core/photo/index.ts";
import { readMetadata } from "#functions/media/metadata.ts";
import { offsetBetween } from "#functions/media/offset.ts";
import { readTaken } from "#functions/media/taken.ts";
import { type ExifTags, exifBlock, jpegWith, type Rational, TAG, triple, type Value } from "../../helpers/photo-bytes.ts";

// Ids such as E01 are cases collected from public reports; each is rebuilt here from nothing.
let plain: Buffer;
beforeAll(async () => {
  plain = await sharp({ create: { width: 30, height: 20, channels: 3, background: "#777" } })
    .jpeg()
    .toBuffer();
});
const sample = (name: string) => readFile(new URL(`../../samples/photos/${name}`, import.meta.url));
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
  it.each([
    ["   :  ", undefined, "offset-missing"],
    ["Z", "+00:00", undefined],
    ["-0300", "-03:00", undefined],
    ["-5:00", "-05:00", undefined],
    ["+05:45", "+05:45", undefined],
    ["-04:00\0", "-04:00", undefined],
    ["-04:00\0+09:00", "-04:00", undefined],
    ["", undefined, "offset-missing"],
    ["+00:00", "+00:00", undefined],
    ["-00:00", "+00:00", undefined],
    ["+14:00", "+14:00", undefined],
    ["-12:15", undefined, "offset-not-understood"],
    ["+05:75", undefined, "offset-not-understood"],
    ["NaN", undefined, "offset-not-understood"],
    ["+15:00", undefined, "offset-not-understood"],
    ["+02:07", undefined, "offset-not-understood"],
    ["EST", undefined, "offset-not-understood"],
  ])("E03, E04 reads an offset %j as %j", async (typed, offset, note) => {
    const { taken, notes } = await dated("2025:06:01 10:00:00", { [TAG.offsetTimeOriginal]: typed });
    expect(taken?.offset).toBe(offset);
    expect(notes.filter((one) => one.startsWith("offset"))).toEqual(note ? [note] : []);
  });

  it("E03 reads an offset and a date without their NUL, and ones declared as bare bytes", async () => {
    for (const type of [1, 2, 7] as const) {
      const exif = {
        [TAG.dateTimeOriginal]: { type, bytes: Buffer.from("2025:06:01 10:00:00") },
        [TAG.offsetTimeOriginal]: { type, bytes: Buffer.from("-05:00") },
      };
      expect((await read({ exif })).taken).toEqual({
        text: "2025-06-01T10:00:00",
        source: "original",
        offset: "-05:00",
        offsetFrom: "tag",
      });
    }
  });

  it("E04 takes no other time's offset: not that of the last change, not the digitising's for the exposure", async () => {
    for (const tag of [TAG.offsetTime, TAG.offsetTimeDigitized]) {
      expect(await dated("2025:06:01 10:00:00", { [tag]: "+02:00" })).toMatchObject({
        taken: { text: "2025-06-01T10:00:00", source: "original" },
        notes: ["offset-missing", "position-missing"],
      });
    }
    const digitized = {
      [TAG.dateTimeDigitized]: "2025:06:01 10:00:00",
      [TAG.offsetTimeDigitized]: "+02:00",
      [TAG.offsetTimeOriginal]: "-07:00",
    };
    expect((await read({ exif: digitized })).taken).toMatchObject({ source: "digitized", offset: "+02:00" });
    expect((await dated("2025:06:01 10:00:00", { [TAG.offsetTimeOriginal]: "00:47:40+02:00" })).notes).toContain("offset-not-understood");
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

  it.each([
    "",
    "    :  :     :  :  ",
    "                   ",
    "2025:06:01   :  :  ",
    "    :  :   10:00:00",
    "2025:06:01 10:00:  ",
    "2025:06:01",
  ])("takes the date %j for left blank, in whole or in part", async (text) => {
    expect(await dated(text)).toMatchObject({ taken: null, notes: ["time-missing", "position-missing"] });
  });

  it.each([
    ["2024:02:29 23:59:59", "2024-02-29T23:59:59"],
    ["2025:06:01 10:00:00.250", "2025-06-01T10:00:00"],
    ["2025-06-01T10:00:00", "2025-06-01T10:00:00"],
    ["2025/06/01 10:00:00", "2025-06-01T10:00:00"],
    ["2025: 6: 1  9: 5: 3", "2025-06-01T09:05:03"],
    // T09: a camera's clock may be years off; it is kept and shown.
    ["2099:08:12 19:59:29", "2099-08-12T19:59:29"],
    ["9999:12:31 23:59:59", "9999-12-31T23:59:59"],
  ])("reads the date %j as %s", async (text, wallClock) => {
    expect((await dated(text)).taken).toEqual({ text: wallClock, source: "original" });
  });

  it("takes an offset that stands in the date's own tag, after the offset's own", async () => {
    expect((await dated("2025:06:01 10:00:00-06:00")).taken).toMatchObject({
      text: "2025-06-01T10:00:00",
      offset: "-06:00",
      offsetFrom: "tag",
    });
    expect((await dated("2025:06:01 10:00:00-06:00", { [TAG.offsetTimeOriginal]: "+01:00" })).taken).toMatchObject({ offset: "+01:00" });
  });

  it("E07 goes on to the digitising's date where the exposure's is none, and says why", async () => {
    expect(await dated("0000:00:00 00:00:00", { [TAG.dateTimeDigitized]: "2025:06:01 10:00:00" })).toMatchObject({
      taken: { text: "2025-06-01T10:00:00", source: "digitized" },
      notes: ["time-zeros", "offset-missing", "position-missing"],
    });
  });

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
      notes: ["satellite-date-missing", "offset-missing"],
    });
    expect(stale.taken?.offset).toBeUndefined();
    expect(readTaken({ gpsTime: [16, 0, 0] })).toEqual({ taken: null, satelliteTime: null, notes: ["time-missing"] });
  });

  it.each([
    // A clock 13 hours ahead shows what one 11 hours behind does: 07:00 against 18:00 UTC.
    ["2025:01:10 07:00:00", [18, 0, 0], undefined, "2025-01-10T18:00:00Z", "-11:00"],
    ["2025:01:10 07:00:00", [18, 0, 0], 174.8, "2025-01-09T18:00:00Z", "+13:00"],
    ["2025:01:10 07:00:00", [18, 0, 0], -170.7, "2025-01-10T18:00:00Z", "-11:00"],
    // 12 hours apart: nobody lives at −12.
    ["2025:06:10 09:00:00", [21, 0, 0], undefined, "2025-06-09T21:00:00Z", "+12:00"],
    ["2025:06:10 09:00:00", [21, 0, 30.9], 178, "2025-06-09T21:00:30Z", "+12:00"],
    ["2025:06:01 15:45:00", [10, 0, 0], undefined, "2025-06-01T10:00:00Z", "+05:45"],
    ["2025:01:01 00:30:00", [23, 30, 0], undefined, "2024-12-31T23:30:00Z", "+01:00"],
    ["2024:02:28 18:00:10", [0, 0, 10], undefined, "2024-02-29T00:00:10Z", "-06:00"],
    // Two minutes off an hour is the fix's age; three are no zone.
    ["2025:06:01 10:02:00", [16, 0, 0], undefined, "2025-06-01T16:00:00Z", "-06:00"],
    ["2025:06:01 10:03:00", [16, 0, 0], undefined, "2025-06-01T16:00:00Z", undefined],
    // A fix a quarter of an hour old: nobody keeps −05:45.
    ["2025:06:01 10:15:00", [16, 0, 0], undefined, "2025-06-01T16:00:00Z", undefined],
    ["9999:12:31 23:00:00", [1, 0, 0], undefined, null, "-02:00"],
  ])("E13 %s, satellites %j, %s° east: %s, %s", (original, gpsTime, longitude, satelliteTime, offset) => {
    const time = readTaken({ original, gpsTime }, longitude);
    expect([time.satelliteTime, time.taken?.offset]).toEqual([satelliteTime, offset]);
  });

  it("E13 goes by the satellites' own date where there is one, and not by one that is none", () => {
    const original = "2025:06:01 18:30:00";
    expect(readTaken({ original, gpsTime: [0, 30, 0], gpsDate: "2025:06:02" })).toEqual({
      taken: { text: "2025-06-01T18:30:00", source: "original", offset: "-06:00", offsetFrom: "satellite" },
      satelliteTime: "2025-06-02T00:30:00Z",
      notes: [],
    });
    // A receiver whose week counter rolled over is 1024 weeks back: its time is told, and tells no zone.
    expect(readTaken({ original, gpsTime: [0, 30, 0], gpsDate: "2005:10:17" })).toMatchObject({
      satelliteTime: "2005-10-17T00:30:00Z",
      notes: ["offset-missing"],
    });
    for (const gpsDate of ["2025:13:02", "0000:00:00", "today"]) {
      expect(readTaken({ original, gpsTime: [0, 30, 0], gpsDate })).toMatchObject({ satelliteTime: null, notes: ["offset-missing"] });
    }
  });

  it.each([
    [[Number.NaN, 0, 0]],
    [[24, 0, 0]],
    [[0, 60, 0]],
    [[0, 0, 60]],
    [[-1, 0, 0]],
    [[1, 2]],
    ["01:02:03"],
    [[Number.POSITIVE_INFINITY, 0, 0]],
  ])("E09, E13 takes the satellites' time %j for none", (gpsTime) => {
    expect(readTaken({ original: "2025:06:01 10:00:00", gpsTime, gpsDate: "2025:06:01" })).toMatchObject({
      satelliteTime: null,
      notes: ["offset-missing"],
    });
  });

  it("B01 makes no zone of the zeros that a phone leaves where it withholds the place", async () => {
    const blanked = { 0: "", 1: "", 2: triple(0, 0, 0), 3: "", 4: triple(0, 0, 0), 7: triple(0, 0, 0), 29: "" };
    expect(await read({ exif: { [TAG.dateTimeOriginal]: "2025:06:01 18:00:00" }, gps: blanked })).toMatchObject({
      taken: { text: "2025-06-01T18:00:00", source: "original" },
      satelliteTime: null,
      notes: ["offset-missing", "position-withheld"],
    });
  });

  it("the offsets off the full hour are those of the IANA time zone data base since 1990, as this machine has it", () => {
    const kept = new Set<number>();
    for (const zone of Intl.supportedValuesOf("timeZone")) {
      const format = new Intl.DateTimeFormat("en-US", { timeZone: zone, timeZoneName: "longOffset" });
      for (let month = 0; month < 36 * 4; month += 1) {
        const name = format.formatToParts(Date.UTC(1990, month * 3, 1)).find(({ type }) => type === "timeZoneName")?.value ?? "";
        const parts = /^GMT([+-])(\d\d):(\d\d)/.exec(name);
        const minutes = parts ? (parts[1] === "-" ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3])) : 0;
        if (minutes % 60 !== 0) kept.add(minutes);
      }
    }
    const quarters = Array.from({ length: 105 }, (_, n) => -720 + n * 15).filter((minutes) => minutes % 60 !== 0);
    const taken = quarters.filter((minutes) => offsetBetween(minutes * 60_000, 0) !== undefined);
    expect(taken).toEqual([...kept].sort((a, b) => a - b));
  });
});

describe("where", () => {
  it("reads degrees as integers of 1e-7 with the hemisphere, and the error in millimetres", async () => {
    expect(await placed({ ...PLACE, [TAG.gpsError]: [[45, 10]] })).toMatchObject({
      position: { latitude: 397_333_333, longitude: -1_049_833_333, accuracy: 4500 },
    });
  });
  it.each([
    ["a dilution of precision", { [TAG.gpsDilution]: [[15, 10]] as const }],
    ["0 m", { [TAG.gpsError]: [[0, 1]] as const }],
    ["0/0 m", { [TAG.gpsError]: [[0, 0]] as const }],
    ["1/0 m", { [TAG.gpsError]: [[1, 0]] as const }],
    ["less than half a millimetre", { [TAG.gpsError]: [[1, 10_000]] as const }],
    ["more than round the earth", { [TAG.gpsError]: [[4_000_000_000, 1]] as const }],
    ["a text", { [TAG.gpsError]: "5 m" }],
  ])("makes no accuracy of %s", async (_case, gps) => {
    const { position } = await placed({ ...PLACE, ...gps });
    expect(position).toEqual({ latitude: 397_333_333, longitude: -1_049_833_333 });
  });
  it("reads degrees with a fraction, minutes with a fraction, and the equator without a sign", async () => {
    const fraction: readonly Rational[] = [
      [397_333_333, 10_000_000],
      [0, 1],
      [0, 1],
    ];
    expect(await placed({ ...PLACE, [TAG.latitude]: fraction })).toMatchObject({ position: { latitude: 397_333_333 } });
    const equator = await placed({ ...PLACE, [TAG.latitudeRef]: "S", [TAG.latitude]: triple(0, 0, 0) });
    expect(equator.position).toEqual({ latitude: 0, longitude: -1_049_833_333 });
    expect(Object.is(equator.position?.latitude, 0)).toBe(true);
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
    [
      "E10 a second that is none",
      {
        ...PLACE,
        [TAG.longitude]: [
          [104, 1],
          [59, 1],
          [0, 0],
        ] as const,
      },
      "position-broken",
    ],
    [
      "E10 two numbers for three",
      {
        ...PLACE,
        [TAG.longitude]: [
          [104, 1],
          [59, 1],
        ] as const,
      },
      "position-broken",
    ],
    ["E10 a text", { ...PLACE, [TAG.longitude]: "104.98" }, "position-broken"],
    ["E11 a hemisphere that is none", { ...PLACE, [TAG.latitudeRef]: "X" }, "position-unsigned"],
    ["a longitude beyond the date line", { ...PLACE, [TAG.longitude]: triple(180, 0, 1) }, "position-broken"],
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
    expect(await read({ ifd0: {}, ifd1: { [TAG.orientation]: 6 } })).toMatchObject({ orientation: 1 });
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
    const long = { ...tags, ifd0: { [TAG.orientation]: { long: 6 } } };
    expect(await read(long)).toEqual(big);
    expect(await read(long, true)).toEqual(big);
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
