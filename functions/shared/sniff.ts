import type { RefusalCode } from "#core/outcome/index.ts";
import type { PhotoType } from "#core/photo/index.ts";

/** As many first bytes as `sniff` ever looks at. */
export const SNIFF_BYTES = 64;

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEIC_BRANDS = ["heic", "heix", "heim", "heis", "hevc", "hevx", "hevm", "hevs"];
const AVIF_BRANDS = ["avif", "avis"];
/** Brands of films: ISO/IEC 14496-12 and 14496-14, QuickTime, 3GPP TS 26.244; those with a digit at their end by their start. */
const FILM_BRANDS = ["isom", "iso", "mp4", "mp7", "avc", "qt  ", "3g", "M4V", "MSNV", "mmp4", "dash", "hvc1", "f4v"];
/** A QuickTime file without `ftyp` begins with one of these boxes. */
const FILM_BOXES = ["moov", "mdat", "wide", "skip", "pnot"];
/** Matroska and WebM, MPEG program stream, ASF, FLV, Ogg. */
const FILM_STARTS = ["\x1a\x45\xdf\xa3", "\0\0\x01\xba", "\x30\x26\xb2\x75", "FLV\x01", "OggS"];

const text = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, Math.min(to, bytes.length)));

/**
 * The kind of photo by its first bytes, whatever its name or declared type. Undefined for everything else. JPEG: ITU
 * T.81 start marker; PNG: W3C PNG signature; WebP: RIFF container; GIF: GIF89a, 17; HEIC and AVIF: ISO/IEC 14496-12 `ftyp` brands.
 */
export function sniff(firstBytes: Uint8Array): PhotoType | undefined {
  if (firstBytes[0] === 0xff && firstBytes[1] === 0xd8 && firstBytes[2] === 0xff) return "image/jpeg";
  if (PNG.every((byte, at) => firstBytes[at] === byte)) return "image/png";
  if (text(firstBytes, 0, 4) === "RIFF" && text(firstBytes, 8, 12) === "WEBP") return "image/webp";
  if (/^GIF8[79]a$/.test(text(firstBytes, 0, 6))) return "image/gif";
  if (text(firstBytes, 4, 8) === "ftyp") return byBrand(brands(firstBytes));
  return undefined;
}

/** Why first bytes that `sniff` does not know are refused: a film has another way to be put right than any other file. */
export function whyNoPhoto(firstBytes: Uint8Array): Extract<RefusalCode, "photo-is-film" | "photo-type"> {
  const box = text(firstBytes, 4, 8);
  const film =
    box === "ftyp"
      ? brands(firstBytes).some((brand) => FILM_BRANDS.some((known) => brand.startsWith(known)))
      : FILM_BOXES.includes(box) ||
        FILM_STARTS.some((start) => text(firstBytes, 0, start.length) === start) ||
        (text(firstBytes, 0, 4) === "RIFF" && text(firstBytes, 8, 12) === "AVI ");
  return film ? "photo-is-film" : "photo-type";
}

/** Major brand, then the compatible ones, which start after the minor version. */
function brands(bytes: Uint8Array): readonly string[] {
  const size = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0);
  const end = Math.min(size, bytes.length, SNIFF_BYTES);
  const found = [text(bytes, 8, 12)];
  for (let at = 16; at + 4 <= end; at += 4) found.push(text(bytes, at, at + 4));
  return found;
}

/** A general major brand (`mif1`, `msf1`) says nothing about the coding: the first brand that names one decides. */
function byBrand(found: readonly string[]): PhotoType | undefined {
  for (const brand of found) {
    if (HEIC_BRANDS.includes(brand)) return "image/heic";
    if (AVIF_BRANDS.includes(brand)) return "image/avif";
  }
  return undefined;
}
