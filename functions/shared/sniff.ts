import type { PhotoType } from "#core/photo/index.ts";

/** As many first bytes as `sniff` ever looks at. */
export const SNIFF_BYTES = 64;

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEIC_BRANDS = ["heic", "heix", "heim", "heis", "hevc", "hevx", "hevm", "hevs"];
const AVIF_BRANDS = ["avif", "avis"];

const text = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, Math.min(to, bytes.length)));

/**
 * The kind of photo by its first bytes, whatever its name or declared type. Undefined for everything else. JPEG: ITU
 * T.81 start marker; PNG: W3C PNG signature; WebP: RIFF container; HEIC and AVIF: ISO/IEC 14496-12 `ftyp` brands.
 */
export function sniff(firstBytes: Uint8Array): PhotoType | undefined {
  if (firstBytes[0] === 0xff && firstBytes[1] === 0xd8 && firstBytes[2] === 0xff) return "image/jpeg";
  if (PNG.every((byte, at) => firstBytes[at] === byte)) return "image/png";
  if (text(firstBytes, 0, 4) === "RIFF" && text(firstBytes, 8, 12) === "WEBP") return "image/webp";
  if (text(firstBytes, 4, 8) === "ftyp") return byBrand(brands(firstBytes));
  return undefined;
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
