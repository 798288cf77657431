import { createHash } from "node:crypto";
import { PDFDocument } from "@cantoo/pdf-lib";
import sharp, { type Sharp } from "sharp";
import { describe, expect, it } from "vitest";
import { jpegsIn } from "#core/proof/index.ts";
import { plainJpeg } from "#functions/print/plain-jpeg.ts";
import { putPictures, standInsFor } from "#functions/print/stand-ins.ts";

/** Red to green from left to right and black to blue downwards, made by the library. */
const picture = (width: number, height: number): Sharp => {
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      pixels.set([255 - Math.round((255 * x) / width), Math.round((255 * x) / width), Math.round((255 * y) / height)], (y * width + x) * 3);
  return sharp(pixels, { raw: { width, height, channels: 3 } });
};
const bytesOf = async (made: Sharp): Promise<Uint8Array> => new Uint8Array(await made.toBuffer());
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const served = (bytes: Uint8Array) => ({ type: "image/jpeg", bytes });
/** A segment behind the first two bytes (ITU T.81, B.1.1.4). */
const withSegment = (jpeg: Uint8Array, marker: number, data: string): Uint8Array =>
  new Uint8Array(
    Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, marker, 0, 2 + data.length]), Buffer.from(data, "latin1"), jpeg.subarray(2)]),
  );
/** Where a marker stands in the header. */
const placeOf = (jpeg: Uint8Array, marker: number): number => {
  let at = 2;
  while (jpeg[at + 1] !== marker) at += 2 + ((jpeg[at + 2] as number) << 8) + (jpeg[at + 3] as number);
  return at;
};
const changed = (jpeg: Uint8Array, at: number, byte: number): Uint8Array => {
  const other = jpeg.slice();
  other[at] = byte;
  return other;
};

const plain = await bytesOf(picture(90, 61).jpeg({ quality: 82 }));

describe("plainJpeg", () => {
  it("says the pixels of what the library writes, in one scan or in several, with a comment or a JFIF segment", async () => {
    const pixels = { width: 90, height: 61 };
    expect(plainJpeg(plain)).toEqual(pixels);
    expect(plainJpeg(await bytesOf(picture(90, 61).jpeg({ progressive: true })))).toEqual(pixels);
    expect(plainJpeg(await bytesOf(picture(90, 61).jpeg({ chromaSubsampling: "4:4:4" })))).toEqual(pixels);
    expect(plainJpeg(withSegment(plain, 0xfe, "of a test"))).toEqual(pixels);
    expect(plainJpeg(withSegment(plain, 0xe0, "JFIF\0\x01\x01\0\0\x01\0\x01\0\0"))).toEqual(pixels);
  });

  it("knows nothing of one that is turned, of other colours, or coded otherwise", async () => {
    expect(plainJpeg(await bytesOf(picture(90, 61).withMetadata({ orientation: 6 }).jpeg()))).toBeUndefined();
    expect(plainJpeg(await bytesOf(picture(90, 61).withIccProfile("p3").jpeg()))).toBeUndefined();
    expect(plainJpeg(await bytesOf(picture(90, 61).toColourspace("cmyk").jpeg()))).toBeUndefined();
    expect(plainJpeg(await bytesOf(picture(90, 61).toColourspace("b-w").jpeg()))).toBeUndefined();
    // Adobe's segment may say that the components are red, green and blue
    expect(plainJpeg(withSegment(plain, 0xee, "Adobe\0\x64\0\0\0\0\0"))).toBeUndefined();
    const frame = placeOf(plain, 0xc0);
    // arithmetic codes, twelve bits, components that have letters for names
    expect(plainJpeg(changed(plain, frame + 1, 0xc9))).toBeUndefined();
    expect(plainJpeg(changed(plain, frame + 4, 12))).toBeUndefined();
    expect(plainJpeg(changed(plain, frame + 10, "R".charCodeAt(0)))).toBeUndefined();
  });

  it("knows nothing of what is none, ends early or has a length that leads nowhere", () => {
    for (let length = 0; length < placeOf(plain, 0xda); length += 1) expect(plainJpeg(plain.slice(0, length))).toBeUndefined();
    expect(plainJpeg(new TextEncoder().encode("<svg/>"))).toBeUndefined();
    for (const byte of [0, 1, 0xff]) expect(plainJpeg(changed(changed(plain, 4, byte), 5, byte))).toBeUndefined();
  });
});

describe("standInsFor", () => {
  it("gives the browser a grey picture of the same size, another one for each picture", async () => {
    const other = await bytesOf(picture(90, 61).jpeg({ quality: 40 }));
    const asked = new Map(Object.entries({ a: served(plain), b: served(other) }));
    const { files, pictures } = await standInsFor(asked);
    const given = [...files.values()].map(({ bytes }) => bytes);
    expect([...files.keys()]).toEqual(["a", "b"]);
    expect([...pictures]).toEqual([
      [sha(given[0] as Uint8Array), plain],
      [sha(given[1] as Uint8Array), other],
    ]);
    for (const bytes of given) {
      const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
      expect([info.width, info.height, info.channels]).toEqual([90, 61, 3]);
      expect(new Set(data)).toEqual(new Set([0x88]));
    }
  });

  it("leaves to the browser what is not whole, what is turned and what is no picture", async () => {
    const half = plain.slice(0, plain.length >> 1);
    const turned = await bytesOf(picture(90, 61).withMetadata({ orientation: 6 }).jpeg());
    const none = new TextEncoder().encode("<svg/>");
    const asked = new Map([half, turned, none].map((bytes, at) => [String(at), served(bytes)] as const));
    const { files, pictures } = await standInsFor(asked);
    expect([...files]).toEqual([...asked]);
    expect(pictures.size).toBe(0);
  });
});

describe("putPictures", () => {
  it("puts each picture in the place of its stand-in and leaves others alone", async () => {
    const other = await bytesOf(picture(40, 30).jpeg());
    const { files, pictures } = await standInsFor(new Map([["a", served(plain)]]));
    const document = await PDFDocument.create();
    const page = document.addPage();
    for (const bytes of [files.get("a")?.bytes as Uint8Array, other]) page.drawImage(await document.embedJpg(bytes));
    await document.flush();
    putPictures(document, pictures);
    const inside = jpegsIn(new Uint8Array(await document.save({ useObjectStreams: false }))).map(sha);
    expect(inside).toEqual([sha(plain), sha(other)]);
    expect(() => putPictures(document, pictures)).toThrow("1 of 1 pictures have no place in the document");
  });
});
