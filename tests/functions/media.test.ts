import { createHash, randomBytes } from "node:crypto";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { crc32, deflateSync } from "node:zlib";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { PhotoFacts } from "#core/photo/index.ts";
import { heicProfile } from "#functions/media/heic-profile.ts";
import { originalKey, type RenditionName, renditionKey, renditionNames } from "#functions/shared/keys.ts";
import { makeStore, type Store } from "#functions/shared/store.ts";
import { issueToken } from "#functions/shared/token.ts";
import { type Child, startChild } from "../helpers/children.ts";
import { exifBlock, jpegWith, TAG, triple } from "../helpers/photo-bytes.ts";

// Ids such as S01 are cases collected from public reports; each is rebuilt here from nothing.
const SECRET = "a service secret of this test";
const COMPANY = "garden";
const MINUTE = 60_000;
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const sample = (name: string) => readFile(new URL(`../samples/photos/${name}`, import.meta.url));

let directory: string;
let storeChild: Child;
let media: Child;
let store: Store;
/** A real scene's size, with edges and an uneven ground, so that its file is large enough to be cut. */
let scene: Buffer;

const storeEnvironment = () => ({
  STORE_DIRECTORY: join(directory, "objects"),
  STORE_PORT: "0",
  STORE_ACCESS_KEY: "local",
  STORE_SECRET_KEY: "secret",
  STORE_BUCKET: "asburied",
});
const mediaEnvironment = (storePort: number) => ({
  MEDIA_PORT: "0",
  SERVICE_SECRET: SECRET,
  STORE_ENDPOINT: `http://127.0.0.1:${storePort}`,
  STORE_REGION: "auto",
  STORE_BUCKET: "asburied",
  STORE_ACCESS_KEY: "local",
  STORE_SECRET_KEY: "secret",
});

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-media-"));
  storeChild = await startChild("infra/local/store.ts", storeEnvironment());
  media = await startChild("functions/media/main.ts", mediaEnvironment(storeChild.port));
  store = makeStore({
    endpoint: `http://127.0.0.1:${storeChild.port}`,
    region: "auto",
    bucket: "asburied",
    accessKeyId: "local",
    secretAccessKey: "secret",
  });
  scene = await drawn(3000, 2000).jpeg({ quality: 90 }).toBuffer();
});
afterAll(async () => {
  await Promise.all([media?.end(), storeChild?.end()]);
  await rm(directory, { recursive: true, force: true });
});

/** Grey ground with light posts and a red patch in the upper left corner. */
function drawn(width: number, height: number) {
  const posts = Array.from(
    { length: 30 },
    (_, at) => `<rect x="${(at * width) / 30}" y="${height / 2}" width="${width / 60}" height="${height / 3}" fill="#ddd"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="${width}" height="${height}" fill="#776"/>
    <rect width="${width / 4}" height="${height / 4}" fill="#f00"/>${posts.join("")}</svg>`;
  return sharp(Buffer.from(svg)).flatten();
}

const tokenFor = (company: string, hash: string, expires = Date.now() + MINUTE) =>
  issueToken(SECRET, { audience: "media", subject: `${company}/${hash}`, expires });

async function ask(hash: string, token?: string): Promise<Response> {
  const authorization = `Bearer ${token ?? (await tokenFor(COMPANY, hash))}`;
  const body = JSON.stringify({ company: COMPANY, sha: hash });
  return fetch(`http://127.0.0.1:${media.port}/read`, { method: "POST", headers: { authorization, connection: "close" }, body });
}

async function put(bytes: Uint8Array): Promise<string> {
  const hash = sha(bytes);
  const kept = await store.put(originalKey(COMPANY, hash), bytes, { length: bytes.length, type: "image/jpeg", sha256: hash });
  expect(kept.ok).toBe(true);
  return hash;
}

async function read(bytes: Uint8Array): Promise<PhotoFacts> {
  const response = await ask(await put(bytes));
  expect(response.status).toBe(200);
  return (await response.json()) as PhotoFacts;
}

async function rendition(hash: string, name: RenditionName): Promise<Buffer> {
  const found = await store.get(renditionKey(COMPANY, hash, name));
  const bytes = found.ok ? await found.value.bytes() : found;
  if (!bytes.ok) throw new Error(bytes.refusal.code);
  return Buffer.from(bytes.value);
}

/** Red, green and blue at a place given in shares of width and height. */
async function colourAt(jpeg: Buffer, across: number, down: number): Promise<readonly number[]> {
  const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true });
  const at = (Math.floor(down * info.height) * info.width + Math.floor(across * info.width)) * info.channels;
  return [...data.subarray(at, at + 3)];
}
const isRed = ([red = 0, green = 255, blue = 255]: readonly number[]): boolean => red > 245 && green < 12 && blue < 12;

describe("a photo that can be read", () => {
  it("gives its facts, and two renditions without any metadata", async () => {
    const block = exifBlock({
      ifd0: { [TAG.orientation]: 1 },
      exif: { [TAG.dateTimeOriginal]: "2026:05:04 10:22:31", [TAG.offsetTimeOriginal]: "-04:00" },
      gps: { 1: "N", 2: triple(41, 30, 36), 3: "W", 4: triple(73, 58, 12), [TAG.gpsError]: [[45, 10]] },
    });
    const bytes = jpegWith(scene, block);
    const facts = await read(bytes);
    expect(facts).toMatchObject({
      sha: sha(bytes),
      bytes: bytes.length,
      type: "image/jpeg",
      width: 3000,
      height: 2000,
      orientation: 1,
      taken: { text: "2026-05-04T10:22:31", offset: "-04:00", offsetFrom: "tag", source: "original" },
      position: { latitude: 415_100_000, longitude: -739_700_000, accuracy: 4500 },
      notes: [],
      renditions: [
        { name: "screen", width: 2048, height: 1365 },
        { name: "print", width: 1600, height: 1066 },
        { name: "column", width: 1000, height: 667 },
      ],
    });
    expect(facts.unreadable).toBeUndefined();
    expect(facts.sharpness).toBeGreaterThan(3000);
    expect(Number.isInteger(facts.sharpness)).toBe(true);
    for (const { name, bytes: length, sha256 } of facts.renditions) {
      const jpeg = await rendition(facts.sha, name);
      expect({ length: jpeg.length, sha256: sha(jpeg) }).toEqual({ length, sha256 });
      const { exif, icc, xmp, iptc, orientation, isProgressive, format, space } = await sharp(jpeg).metadata();
      expect({ exif, icc, xmp, iptc, orientation, isProgressive, format, space }).toEqual({
        isProgressive: false,
        format: "jpeg",
        space: "srgb",
      });
      expect(jpeg.includes("Exif")).toBe(false);
    }
  });

  it("gives the same facts a second time", async () => {
    const first = await read(scene);
    expect(await read(scene)).toEqual(first);
  });

  // The red patch is upper left when upright; where it lies in the stored pixels follows from each orientation.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])("S01, S02 turns orientation %d upright, with sizes as displayed", async (orientation) => {
    const upright = await drawn(300, 200).png().toBuffer();
    const stored = await storedAs(upright, orientation);
    const facts = await read(jpegWith(stored, exifBlock({ ifd0: { [TAG.orientation]: orientation } })));
    expect(facts).toMatchObject({ width: 300, height: 200, orientation });
    for (const name of renditionNames) {
      const jpeg = await rendition(facts.sha, name);
      const { width, height, orientation: tag } = await sharp(jpeg).metadata();
      expect({ width, height, tag }).toEqual({ width: 300, height: 200, tag: undefined });
      expect(await colourAt(jpeg, 0.1, 0.1)).toSatisfy(isRed);
    }
  });

  it.each([0, 256, 65535])("S15 leaves a photo with orientation %d as it is, noted", async (orientation) => {
    const bytes = jpegWith(
      await drawn(300, 200).jpeg({ chromaSubsampling: "4:4:4" }).toBuffer(),
      exifBlock({ ifd0: { [TAG.orientation]: orientation } }),
    );
    const facts = await read(bytes);
    expect(facts).toMatchObject({ width: 300, height: 200, orientation: 1 });
    expect(facts.notes).toContain("orientation-out-of-range");
    expect(await colourAt(await rendition(facts.sha, "screen"), 0.1, 0.1)).toSatisfy(isRed);
  });

  it("S07 brings wide colours to sRGB", async () => {
    // withIccProfile turns the numbers into Display P3; naive readers would show 234, 51, 35.
    const wide = await drawn(300, 200).withIccProfile("p3").jpeg({ quality: 95, chromaSubsampling: "4:4:4" }).toBuffer();
    const { data } = await sharp(wide, { ignoreIcc: true }).raw().toBuffer({ resolveWithObject: true });
    expect([...data.subarray(0, 3)]).not.toSatisfy(isRed);
    const facts = await read(wide);
    expect(await colourAt(await rendition(facts.sha, "print"), 0.1, 0.1)).toSatisfy(isRed);
  });

  it("S06, S07 reads a HEIC, by its container's turn and in sRGB", async () => {
    const facts = await read(await sample("drawn-wide-colours.heic"));
    expect(facts).toMatchObject({
      type: "image/heic",
      width: 800,
      height: 600,
      orientation: 1,
      taken: { text: "2026-05-04T10:22:31", offset: "-04:00" },
      position: { latitude: 415_100_000, longitude: -739_700_000, accuracy: 4500 },
      renditions: [
        { name: "screen", width: 800, height: 600 },
        { name: "print", width: 800, height: 600 },
        { name: "column", width: 800, height: 600 },
      ],
    });
    expect(await colourAt(await rendition(facts.sha, "print"), 0.1, 0.1)).toSatisfy(isRed);
  });

  it("S06, S07 finds the wide colours' profile of a phone's HEIC whose header the image library refuses", async () => {
    const bytes = await sample("park-cut-off.heic");
    await expect(sharp(bytes).metadata()).rejects.toThrow();
    const profile = Buffer.from(heicProfile(bytes) ?? []);
    expect(profile.length).toBe(548);
    expect(profile.includes("Display P3") || profile.includes(Buffer.from("Display P3", "utf16le").swap16())).toBe(true);
    expect(heicProfile(scene)).toBeUndefined();
  });

  it("S13 reads the base picture of a file with a film behind it", async () => {
    const bytes = Buffer.concat([scene, await drawn(60, 40).jpeg().toBuffer(), randomBytes(200_000), Buffer.from([7, 7])]);
    const facts = await read(bytes);
    expect(facts).toMatchObject({ sha: sha(bytes), bytes: bytes.length, width: 3000, height: 2000 });
    expect(facts.unreadable).toBeUndefined();
  });

  it.each(["png", "webp", "avif"] as const)("reads a %s, opaque on white", async (format) => {
    const half = await sharp({ create: { width: 400, height: 300, channels: 4, background: { r: 255, g: 0, b: 0, alpha: 0 } } })
      .toFormat(format)
      .toBuffer();
    const facts = await read(half);
    expect(facts).toMatchObject({ type: `image/${format}`, width: 400, height: 300 });
    expect((await colourAt(await rendition(facts.sha, "screen"), 0.5, 0.5)).every((step) => step > 250)).toBe(true);
  });

  it("S09 brings sixteen bits of grey to eight", async () => {
    const ramp = Uint16Array.from({ length: 400 * 400 }, (_, at) => (at % 400) * 160);
    const bytes = await sharp(ramp, { raw: { width: 400, height: 400, channels: 1 } })
      .toColourspace("grey16")
      .png()
      .toBuffer();
    const facts = await read(bytes);
    expect(facts).toMatchObject({ type: "image/png", width: 400, height: 400 });
    expect((await sharp(await rendition(facts.sha, "screen")).metadata()).depth).toBe("uchar");
  });

  it("tells a sharp picture from a blurred one, and a black one from both", async () => {
    const sharpOne = await read(scene);
    const blurred = await read(await sharp(scene).blur(20).jpeg().toBuffer());
    const black = await read(
      await sharp({ create: { width: 640, height: 480, channels: 3, background: "#000" } })
        .jpeg()
        .toBuffer(),
    );
    expect(blurred.sharpness).toBeLessThan((sharpOne.sharpness as number) / 20);
    expect(black).toMatchObject({ sharpness: 0, exposure: { dark: 1_000_000, bright: 0 } });
  });

  it("reads real photographs from small cameras", async () => {
    expect(await read(await sample("camera-640.jpg"))).toMatchObject({ width: 640, height: 480, taken: { text: "2003-05-24T16:40:33" } });
    expect(await read(await sample("turned-by-tag-4.jpg"))).toMatchObject({ width: 480, height: 640, orientation: 4 });
  });
});

describe("a photo that no picture can be made of is a fact", () => {
  const unreadable = async (bytes: Uint8Array) => {
    const facts = await read(bytes);
    expect(facts).toMatchObject({ sha: sha(bytes), bytes: bytes.length, renditions: [], sharpness: null, exposure: null });
    expect(await store.head(renditionKey(COMPANY, facts.sha, "screen"))).toMatchObject({ ok: false });
    return facts;
  };

  it("of zero bytes", async () => {
    expect(await unreadable(new Uint8Array())).toMatchObject({ type: null, unreadable: { code: "photo-empty" } });
  });
  it("of text under a photo's name", async () => {
    expect(await unreadable(Buffer.from("not a picture at all"))).toMatchObject({ type: null, unreadable: { code: "photo-type" } });
  });
  it.each([0.001, 0.05, 0.6, 0.98])("S04 cut off at %d of its length", async (share) => {
    const facts = await unreadable(scene.subarray(0, Math.round(scene.length * share)));
    expect(facts).toMatchObject({ type: "image/jpeg", unreadable: { code: "photo-not-whole" } });
    expect(facts.unreadable?.says).not.toMatch(/\/|\n/);
  });
  it("E19 cut off inside the camera's notes", async () => {
    const block = exifBlock({ exif: { [TAG.makerNote]: "m".repeat(20_000), [TAG.dateTimeOriginal]: "2025:06:01 10:00:00" } });
    expect(await unreadable(jpegWith(scene, block).subarray(0, 9_000))).toMatchObject({
      unreadable: { code: "photo-not-whole", figures: { percent: 0 } },
    });
  });
  it("S04 of a HEIC cut off, with what its camera noted", async () => {
    const facts = await unreadable(await sample("park-cut-off.heic"));
    expect(facts).toMatchObject({ type: "image/heic", taken: { text: "2018-04-07T11:24:11" }, unreadable: { code: "photo-not-whole" } });
  });
  it("of a JPEG's start in front of rubbish", async () => {
    const bytes = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), randomBytes(5_000)]);
    expect(await unreadable(bytes)).toMatchObject({ type: "image/jpeg", unreadable: { code: "photo-unreadable" } });
  });
  it("of a HEIC's start in front of rubbish", async () => {
    const bytes = Buffer.concat([Buffer.from([0, 0, 0, 0x18]), Buffer.from("ftypheic\0\0\0\0mif1heic"), randomBytes(5_000)]);
    expect(await unreadable(bytes)).toMatchObject({ type: "image/heic", unreadable: { code: "photo-unreadable" } });
  });
  it("S10 of a small file with an enormous picture, without decoding it", async () => {
    const enormous = blackPng(16_000, 16_000);
    expect(enormous.length).toBeLessThan(1_000_000);
    expect(await unreadable(enormous)).toMatchObject({
      type: "image/png",
      unreadable: { code: "photo-too-many-pixels", figures: { most: 60_000_000 } },
    });
  });
  it("and the next photo is read all the same", async () => {
    expect((await read(await sample("drawn-wide-colours.heic"))).renditions).toHaveLength(3);
    expect((await read(scene)).renditions).toHaveLength(3);
  });
});

describe("what is not the photo's fault", () => {
  const problemOf = async (response: Response) => {
    expect(response.headers.get("content-type")).toBe("application/problem+json");
    return { status: response.status, code: ((await response.json()) as { code: string }).code };
  };

  it("answers that it is well", async () => {
    const response = await fetch(`http://127.0.0.1:${media.port}/health`, { headers: { connection: "close" } });
    expect([response.status, await response.json()]).toEqual([200, { ok: true }]);
  });
  it("refuses without a good token for this very photo", async () => {
    const hash = await put(scene);
    const tokens = [
      "",
      "1.99.x",
      await tokenFor(COMPANY, "0".repeat(64)),
      await tokenFor("other", hash),
      await tokenFor(COMPANY, hash, Date.now() - 1),
      await issueToken("another secret", { audience: "media", subject: `${COMPANY}/${hash}`, expires: Date.now() + MINUTE }),
      await issueToken(SECRET, { audience: "print", subject: `${COMPANY}/${hash}`, expires: Date.now() + MINUTE }),
    ];
    for (const token of tokens) expect(await problemOf(await ask(hash, token))).toEqual({ status: 401, code: "service-token" });
  });
  it("refuses what is no request, and other routes", async () => {
    const url = `http://127.0.0.1:${media.port}/read`;
    const post = (body: string) => fetch(url, { method: "POST", body, headers: { connection: "close" } });
    for (const body of [
      "",
      "null",
      "{",
      '{"company":"../x","sha":"a"}',
      JSON.stringify({ company: COMPANY, sha: "A".repeat(64) }),
      "x".repeat(9_000),
    ]) {
      expect(await problemOf(await post(body))).toEqual({ status: 400, code: "request-shape" });
    }
    expect(await problemOf(await fetch(`${url}/other`, { headers: { connection: "close" } }))).toEqual({
      status: 404,
      code: "route-unknown",
    });
  });
  it("says that the photo is not in the store", async () => {
    expect(await problemOf(await ask("4".repeat(64)))).toEqual({ status: 404, code: "photo-unknown" });
  });
  it("says that the object is not what its name says", async () => {
    const hash = "5".repeat(64);
    await store.put(originalKey(COMPANY, hash), scene, { length: scene.length, type: "image/jpeg" });
    expect(await problemOf(await ask(hash))).toEqual({ status: 422, code: "photo-hash-differs" });
  });
  it("says that the store is down, and reads the photo when it is back", async () => {
    const hash = await put(scene);
    await media.end();
    const other = await startChild("infra/local/store.ts", storeEnvironment());
    media = await startChild("functions/media/main.ts", mediaEnvironment(other.port));
    await other.end("SIGKILL");
    expect(await problemOf(await ask(hash))).toEqual({ status: 503, code: "store-unavailable" });
    await media.end();
    media = await startChild("functions/media/main.ts", mediaEnvironment(storeChild.port));
    expect((await ask(hash)).status).toBe(200);
  });
  it("names what is missing in its environment and ends", async () => {
    await expect(startChild("functions/media/main.ts", { MEDIA_PORT: "0", STORE_REGION: "auto" })).rejects.toThrow(
      "missing in the environment: SERVICE_SECRET, STORE_ENDPOINT, STORE_BUCKET, STORE_ACCESS_KEY, STORE_SECRET_KEY",
    );
  });
  it("ends in order on SIGTERM", async () => {
    const one = await startChild("functions/media/main.ts", mediaEnvironment(storeChild.port));
    expect(await one.end()).toBe(0);
  });
});

/** The pixels as a camera that tags them with this orientation would have stored them (Exif 2.32, 4.6.4 A: Orientation). */
async function storedAs(upright: Buffer, orientation: number): Promise<Buffer> {
  const turned: Record<number, () => Promise<Buffer>> = {
    1: () => sharp(upright).png().toBuffer(),
    2: () => sharp(upright).flop().png().toBuffer(),
    3: () => sharp(upright).rotate(180).png().toBuffer(),
    4: () => sharp(upright).flip().png().toBuffer(),
    5: async () =>
      sharp(await sharp(upright).rotate(90).png().toBuffer())
        .flop()
        .png()
        .toBuffer(),
    6: () => sharp(upright).rotate(270).png().toBuffer(),
    7: async () =>
      sharp(await sharp(upright).rotate(270).png().toBuffer())
        .flop()
        .png()
        .toBuffer(),
    8: () => sharp(upright).rotate(90).png().toBuffer(),
  };
  const pixels = await (turned[orientation] as () => Promise<Buffer>)();
  return sharp(pixels).jpeg({ quality: 95, chromaSubsampling: "4:4:4" }).toBuffer();
}

/** A black PNG of one bit a pixel, written by hand: the image library would first need the memory of the whole picture. */
function blackPng(width: number, height: number): Buffer {
  const chunk = (kind: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(kind, "latin1"), data]);
    const framed = Buffer.alloc(body.length + 8);
    framed.writeUInt32BE(data.length);
    body.copy(framed, 4);
    framed.writeUInt32BE(crc32(body), body.length + 4);
    return framed;
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width);
  header.writeUInt32BE(height, 4);
  header[8] = 1;
  const rows = deflateSync(Buffer.alloc(height * (1 + width / 8)), { level: 1 });
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", header),
    chunk("IDAT", rows),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}
