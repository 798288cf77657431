/** Makes the metadata of test photos from nothing, so that each holds exactly what its case says and nothing else. */

export type Rational = readonly [number, number];
export type Value =
  | string
  | number
  | readonly Rational[]
  | { readonly long: number }
  /** Bytes as they stand, under a type of one byte each: 1 bytes, 2 text without a NUL of ours, 7 undefined. */
  | { readonly type: 1 | 2 | 7; readonly bytes: Uint8Array };

export interface ExifTags {
  readonly ifd0?: Readonly<Record<number, Value>>;
  readonly exif?: Readonly<Record<number, Value>>;
  readonly gps?: Readonly<Record<number, Value>>;
  /** The thumbnail's block. */
  readonly ifd1?: Readonly<Record<number, Value>>;
}

export const TAG = {
  orientation: 0x0112,
  dateTime: 0x0132,
  dateTimeOriginal: 0x9003,
  dateTimeDigitized: 0x9004,
  /** Of the file's last change. */
  offsetTime: 0x9010,
  offsetTimeOriginal: 0x9011,
  offsetTimeDigitized: 0x9012,
  makerNote: 0x927c,
  latitudeRef: 1,
  latitude: 2,
  longitudeRef: 3,
  longitude: 4,
  gpsTime: 7,
  /** Dilution of precision, a bare number. */
  gpsDilution: 11,
  gpsDate: 29,
  gpsError: 31,
} as const;

const EXIF_POINTER = 0x8769;
const GPS_POINTER = 0x8825;

/** A TIFF block with the given tags, in either byte order. */
export function exifBlock({ ifd0 = {}, exif, gps, ifd1 }: ExifTags, little = false): Buffer {
  const parts: Buffer[] = [];
  let at = 8;
  const u16 = (n: number) => (little ? le16(n) : be16(n));
  const u32 = (n: number) => (little ? le32(n) : be32(n));

  /** Writes one block at the end and returns its place. */
  const write = (tags: Readonly<Record<number, Value>>, next: number): number => {
    const sorted = Object.entries(tags).sort(([a], [b]) => Number(a) - Number(b));
    const place = at;
    let dataAt = place + 2 + sorted.length * 12 + 4;
    const data: Buffer[] = [];
    const entries = sorted.map(([tag, value]) => {
      const { type, count, bytes } = encode(value, u16, u32);
      if (bytes.length <= 4) return Buffer.concat([u16(Number(tag)), u16(type), u32(count), bytes, Buffer.alloc(4 - bytes.length)]);
      const field = u32(dataAt);
      const padded = bytes.length % 2 ? Buffer.concat([bytes, Buffer.alloc(1)]) : bytes;
      data.push(padded);
      dataAt += padded.length;
      return Buffer.concat([u16(Number(tag)), u16(type), u32(count), field]);
    });
    parts.push(u16(sorted.length), ...entries, u32(next), ...data);
    at = dataAt;
    return place;
  };

  const pointers: Record<number, Value> = {};
  if (exif) pointers[EXIF_POINTER] = { long: write(exif, 0) };
  if (gps) pointers[GPS_POINTER] = { long: write(gps, 0) };
  const second = ifd1 ? write(ifd1, 0) : 0;
  const first = write({ ...ifd0, ...pointers }, second);
  return Buffer.concat([Buffer.from(little ? "II" : "MM"), u16(42), u32(first), ...parts]);
}

function encode(value: Value, u16: (n: number) => Buffer, u32: (n: number) => Buffer): { type: number; count: number; bytes: Buffer } {
  if (typeof value === "string") {
    const bytes = Buffer.from(`${value}\0`, "latin1");
    return { type: 2, count: bytes.length, bytes };
  }
  if (typeof value === "number") return { type: 3, count: 1, bytes: u16(value) };
  if ("type" in value) return { type: value.type, count: value.bytes.length, bytes: Buffer.from(value.bytes) };
  if ("long" in value) return { type: 4, count: 1, bytes: u32(value.long) };
  return { type: 5, count: value.length, bytes: Buffer.concat(value.flatMap(([top, bottom]) => [u32(top), u32(bottom)])) };
}

const be16 = (n: number): Buffer => Buffer.from([n >> 8, n & 0xff]);
const le16 = (n: number): Buffer => be16(n).reverse();
const be32 = (n: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(n);
  return bytes;
};
const le32 = (n: number): Buffer => be32(n).reverse();

/** The JPEG with the block as its APP1 segment, right after the start marker. */
export function jpegWith(jpeg: Uint8Array, block: Uint8Array): Buffer {
  const length = block.length + 8;
  if (length > 0xffff) throw new RangeError("a segment holds 64 kB");
  const head = Buffer.concat([Buffer.from([0xff, 0xe1]), be16(length), Buffer.from("Exif\0\0", "latin1")]);
  return Buffer.concat([jpeg.subarray(0, 2), head, block, jpeg.subarray(2)]);
}

/** Whole degrees, minutes and seconds as rationals. */
export const triple = (degrees: number, minutes: number, seconds: number): readonly Rational[] => [
  [degrees, 1],
  [minutes, 1],
  [seconds, 1],
];
