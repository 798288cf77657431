import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import type { PhotoType } from "#core/photo/index.ts";
import { photoFacts } from "#core/wire/index.ts";
import { readMetadata } from "#functions/media/metadata.ts";
import { exifBlock, jpegWith, TAG, triple } from "../../helpers/photo-bytes.ts";
import { boxesWith, pngWith, webpOf } from "../../helpers/photo-containers.ts";

// FUZZ_RUNS=200000 FUZZ_SEED=7 npx vitest run --project unit tests/unit/media/fuzz.test.ts: the long form.
const RUNS = Number(process.env.FUZZ_RUNS ?? 2_000);
const SEED = Number(process.env.FUZZ_SEED ?? 20_251_125);
/** Of one file; a reader that takes longer hangs. A slow machine's pause is no hang. */
const LONGEST_MS = 2_000;

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

type Change =
  | { readonly how: "flip"; readonly at: number; readonly bit: number }
  | { readonly how: "set"; readonly at: number; readonly bytes: Uint8Array }
  | { readonly how: "cut"; readonly at: number };

/** Places crowd towards the front, where heads, lengths and offsets are. */
const place = fc.oneof(
  fc.double({ min: 0, max: 0.02, noNaN: true }),
  fc.double({ min: 0, max: 0.2, noNaN: true }),
  fc.double({ min: 0, max: 1, noNaN: true }),
);
const bytes = fc.oneof(
  fc.uint8Array({ minLength: 1, maxLength: 8 }),
  fc.constantFrom("ffffffff", "00000000", "7fffffff", "80000000", "ffff", "0000", "ffffffffffffffff").map((hex) => Buffer.from(hex, "hex")),
);
const change: fc.Arbitrary<Change> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ how: fc.constant("flip" as const), at: place, bit: fc.nat(7) }) },
  { weight: 4, arbitrary: fc.record({ how: fc.constant("set" as const), at: place, bytes }) },
  { weight: 1, arbitrary: fc.record({ how: fc.constant("cut" as const), at: place }) },
);

function changed(original: Uint8Array, changes: readonly Change[]): Uint8Array {
  let file = Buffer.from(original);
  for (const one of changes) {
    const at = Math.max(0, Math.floor(one.at * (file.length - 1)));
    if (one.how === "cut") file = file.subarray(0, at);
    else if (one.how === "set") file.set(one.bytes.subarray(0, file.length - at), at);
    else if (file.length > 0) file[at] = (file[at] ?? 0) ^ (1 << one.bit);
  }
  return file;
}

it(
  `reads ${RUNS} damaged files without a throw, a hang or a number that is none`,
  async () => {
    let [told, longest] = [0, 0];
    await fc.assert(
      fc.asyncProperty(fc.nat(SAMPLES.length - 1), fc.array(change, { minLength: 1, maxLength: 6 }), async (sample, changes) => {
        const [type, original] = SAMPLES[sample] ?? ["image/jpeg", new Uint8Array()];
        const file = changed(original, changes);
        const before = performance.now();
        const metadata = await readMetadata(file, type, undefined);
        longest = Math.max(longest, performance.now() - before);
        const facts = { ...metadata, sha: "0".repeat(64), bytes: file.length };
        // The same shape that the edge asks for; a NaN is no integer to it, and would not come back out of JSON either.
        expect(photoFacts.parse(facts)).toEqual(JSON.parse(JSON.stringify(facts)));
        expect(new Set(metadata.notes).size).toBe(metadata.notes.length);
        if (metadata.taken === null && metadata.position === null) expect(metadata.notes).not.toEqual([]);
        told += metadata.taken || metadata.position ? 1 : 0;
      }),
      { numRuns: RUNS, seed: SEED },
    );
    console.info(`fuzz: ${RUNS} files, seed ${SEED}, ${told} still told a time or a place, longest ${Math.round(longest)} ms`);
    expect(longest).toBeLessThan(LONGEST_MS);
    // The damage must be of both kinds, or nothing is tried.
    expect(told).toBeGreaterThan(RUNS * 0.1);
    expect(told).toBeLessThan(RUNS * 0.9);
  },
  60_000 + RUNS * 20,
);
