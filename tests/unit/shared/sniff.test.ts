import { readFile } from "node:fs/promises";
import fc from "fast-check";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { SNIFF_BYTES, sniff, whyNoPhoto } from "#functions/shared/sniff.ts";

const drawn = () => sharp({ create: { width: 20, height: 10, channels: 3, background: "#777" } });
const ftyp = (major: string, ...compatible: string[]) => {
  const body = Buffer.from(`ftyp${major}\0\0\0\0${compatible.join("")}`, "latin1");
  return Buffer.concat([Buffer.from([0, 0, 0, body.length + 4]), body, Buffer.from("\0\0\0\x10metaavif", "latin1")]);
};

describe("the kind of a photo by its first bytes", () => {
  it("knows what the image library writes", async () => {
    for (const format of ["jpeg", "png", "webp", "avif", "gif"] as const) {
      const bytes = await drawn().toFormat(format).toBuffer();
      expect(sniff(bytes.subarray(0, SNIFF_BYTES))).toBe(`image/${format}`);
    }
  });
  it("knows a phone's HEIC and a tool's", async () => {
    for (const name of ["park-cut-off.heic", "drawn-wide-colours.heic"]) {
      const bytes = await readFile(new URL(`../../samples/photos/${name}`, import.meta.url));
      expect(sniff(bytes.subarray(0, SNIFF_BYTES))).toBe("image/heic");
    }
  });
  it("looks for the coding behind a general brand, and no farther than the box", () => {
    expect(sniff(ftyp("mif1", "mif1", "heic"))).toBe("image/heic");
    expect(sniff(ftyp("mif1", "miaf", "avif"))).toBe("image/avif");
    expect(sniff(ftyp("mif1", "mif1"))).toBeUndefined();
    expect(sniff(ftyp("isom", "mp41"))).toBeUndefined();
  });
  it("knows nothing of other files, however short", async () => {
    const others = ["", "GIF90a", "<svg xmlns=", "%PDF-1.7", "RIFF....WAVE", "\xff\xd8", "\0\0\0\x18ftyp"].map((text) =>
      Buffer.from(text, "latin1"),
    );
    for (const bytes of others) expect(sniff(bytes)).toBeUndefined();
    expect(sniff(await drawn().tiff().toBuffer())).toBeUndefined();
  });
  it("tells films from other files that are no photos", () => {
    const film = [
      ftyp("isom", "iso2", "avc1", "mp41"),
      ftyp("mp42", "isom"),
      ftyp("qt  "),
      ftyp("3gp4", "3gp6"),
      ftyp("M4V ", "mp42"),
      Buffer.from("\0\0\0\x08wide\0\0\x10\0mdat", "latin1"),
      Buffer.from("\0\0\x10\0moov\0\0\0\x6cmvhd", "latin1"),
      Buffer.from("\x1a\x45\xdf\xa3\x9f\x42\x86\x81webm", "latin1"),
      Buffer.from("RIFF\0\0\x10\0AVI LIST", "latin1"),
    ];
    for (const bytes of film) expect([sniff(bytes), whyNoPhoto(bytes)]).toEqual([undefined, "photo-is-film"]);
    for (const words of ["", "%PDF-1.7", "RIFF....WAVE", "II*\0\x08\0\0\0"]) {
      expect(whyNoPhoto(Buffer.from(words, "latin1"))).toBe("photo-type");
    }
    // A still in a brand that is not read here is no film.
    expect(whyNoPhoto(ftyp("jxl ", "jxl "))).toBe("photo-type");
    expect(whyNoPhoto(ftyp("mif1", "mif1"))).toBe("photo-type");
  });
  it("never throws", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) =>
        [undefined, "image/jpeg", "image/png", "image/webp", "image/heic", "image/avif", "image/gif"].includes(sniff(bytes)),
      ),
    );
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 40 }),
        (bytes) => sniff(Buffer.concat([Buffer.from([0, 0, 0, 20]), Buffer.from("ftyp"), bytes])) !== "image/jpeg",
      ),
    );
  });
});
