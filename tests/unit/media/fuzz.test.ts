import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import type { PhotoType } from "#core/photo/index.ts";
import { photoFacts } from "#core/wire/index.ts";
import { readMetadata } from "#functions/media/metadata.ts";
import { byteChange, bytesChanged } from "../../helpers/damage.ts";
import { fuzz, patience, RUNS } from "../../helpers/fuzz.ts";
import { exifBlock, jpegWith, TAG, triple } from "../../helpers/photo-bytes.ts";
import { boxesWith, pngWith, webpOf } from "../../helpers/photo-containers.ts";

const packaged = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url));
const BLOCK = exifBlock(
  {
    ifd0: { [TAG.orientation]: 6 },
    exif: { [TAG.dateTimeOriginal]: "2025:06:01 10:00:00", [TAG.offsetTimeOriginal]: "-06:00" },
    gps: {
      [TAG.latitudeRef]: "N",
      [TAG.latitude]: triple(39, 44, 0),
      [TAG.longitudeRef]: "W",
      [TAG.longitude]: triple(104, 59, 0),
      [TAG.gpsTime]: triple(16, 0, 0),
      [TAG.gpsDate]: "2025:06:01",
      [TAG.gpsError]: [[45, 10]],
    },
    ifd1: { [TAG.orientation]: 3 },
  },
  true,
);
const PNG = Buffer.concat([
  Buffer.from("89504e470d0a1a0a0000000d49484452", "hex"),
  Buffer.alloc(17),
  Buffer.from("0000000049454e4400000000", "hex"),
]);

/** Real photographs cut to what is before their pixels, and every container made by hand. */
const SAMPLES: readonly (readonly [PhotoType, Uint8Array])[] = [
  ...["test1", "test2", "test3", "right", "down-mirrored", "evil1", "lens_info", "short-ascii-MM", "short-ascii-II"].map(
    (name) => ["image/jpeg", packaged(`node_modules/exif/test/${name}.jpg`).subarray(0, 24_000)] as const,
  ),
  ["image/jpeg", packaged("node_modules/exif-parser/test/starfish.jpg").subarray(0, 24_000)],
  ["image/jpeg", packaged("node_modules/exif-parser/test/test.jpg")],
  ["image/jpeg", jpegWith(Buffer.from("ffd8ffda", "hex"), BLOCK)],
  ["image/heic", packaged("tests/samples/photos/park-cut-off.heic")],
  ["image/heic", packaged("tests/samples/photos/drawn-wide-colours.heic")],
  ["image/heic", boxesWith(BLOCK, { parts: 3, width: 8, large: true })],
  ["image/heic", boxesWith(BLOCK, { version: 2, thumbnail: BLOCK })],
  ["image/avif", boxesWith(BLOCK, { brand: "avif", inside: true })],
  ["image/png", pngWith(PNG, "eXIf", BLOCK, "first")],
  ["image/webp", webpOf(["VP8X", Buffer.alloc(10)], ["EXIF", BLOCK])],
];

it(
  "damaged files without a throw, a hang or a number that is none",
  async () => {
    let told = 0;
    await fuzz({
      kind: "files",
      inputs: fc.tuple(fc.nat(SAMPLES.length - 1), fc.array(byteChange, { minLength: 1, maxLength: 6 })),
      async read([sample, changes]) {
        const [type, original] = SAMPLES[sample] ?? ["image/jpeg", new Uint8Array()];
        const file = bytesChanged(original, changes);
        const metadata = await readMetadata(file, type, undefined);
        const facts = { ...metadata, sha: "0".repeat(64), bytes: file.length };
        // The same shape that the edge asks for; a NaN is no integer to it, and would not come back out of JSON either.
        expect(photoFacts.parse(facts)).toEqual(JSON.parse(JSON.stringify(facts)));
        expect(new Set(metadata.notes).size).toBe(metadata.notes.length);
        if (metadata.taken === null && metadata.position === null) expect(metadata.notes).not.toEqual([]);
        told += metadata.taken || metadata.position ? 1 : 0;
        return "taken" as const;
      },
      least: { taken: 1, refused: 0 },
    });
    // The damage must be of both kinds, or nothing is tried.
    expect(told).toBeGreaterThan(RUNS * 0.1);
    expect(told).toBeLessThan(RUNS * 0.9);
  },
  patience(20),
);
