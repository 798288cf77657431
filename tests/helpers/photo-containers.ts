import { Buffer } from "node:buffer";

/** Puts Exif blocks into containers by hand, in the ways that different writers do. */

const u = (width: number, value: number): Buffer => {
  const bytes = Buffer.alloc(width);
  if (width === 8) bytes.writeBigUInt64BE(BigInt(value));
  else if (width > 0) bytes.writeUIntBE(value, 0, width);
  return bytes;
};
const le32 = (value: number): Buffer => u(4, value).reverse();
const text = (value: string): Buffer => Buffer.from(value, "latin1");

/** A JPEG segment behind the start marker. */
export function withSegment(jpeg: Uint8Array, marker: number, contents: Uint8Array): Buffer {
  return Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, marker]), u(2, contents.length + 2), contents, jpeg.subarray(2)]);
}

/** The PNG with a chunk in front of its last one, or right behind its header. The checksum stays 0: no reader of ours asks. */
export function pngWith(png: Uint8Array, kind: string, contents: Uint8Array, where: "first" | "last"): Buffer {
  const at = where === "first" ? 33 : png.length - 12;
  return Buffer.concat([png.subarray(0, at), u(4, contents.length), text(kind), contents, Buffer.alloc(4), png.subarray(at)]);
}

/** A RIFF container of chunks, padded to even lengths. */
export function webpOf(...chunks: readonly (readonly [kind: string, contents: Uint8Array])[]): Buffer {
  const inner = chunks.flatMap(([kind, contents]) => [text(kind), le32(contents.length), contents, Buffer.alloc(contents.length % 2)]);
  const body = Buffer.concat([text("WEBP"), ...inner]);
  return Buffer.concat([text("RIFF"), le32(body.length), body]);
}

export interface HeicForm {
  readonly brand?: "heic" | "avif";
  /** Version of the item locations; 2 has item ids of four bytes. */
  readonly version?: 0 | 1 | 2;
  /** The block lies inside the description instead of behind it. */
  readonly inside?: boolean;
  /** Into how many stretches the block is cut. */
  readonly parts?: number;
  /** Bytes of each offset and length. */
  readonly width?: 4 | 8;
  /** The description's box states its length in eight bytes. */
  readonly large?: boolean;
  /** What is written before the block: how far behind these four bytes it begins, and the bytes between. */
  readonly before?: Uint8Array;
  /** An Exif item of the thumbnail in front of the picture's own. */
  readonly thumbnail?: Uint8Array;
}

const box = (kind: string, ...contents: readonly Uint8Array[]): Buffer => {
  const inner = Buffer.concat(contents);
  return Buffer.concat([u(4, inner.length + 8), text(kind), inner]);
};
const fullBox = (kind: string, version: number, ...contents: readonly Uint8Array[]): Buffer =>
  box(kind, u(1, version), u(3, 0), ...contents);

/** The description and the Exif items of a HEIC or AVIF that has no pixels at all (ISO/IEC 14496-12, 8.11). */
export function boxesWith(block: Uint8Array, form: HeicForm = {}): Buffer {
  const { brand = "heic", version = 1, inside = false, parts = 1, width = 4, large = false, before = u(4, 0), thumbnail } = form;
  const payloads = [
    ...(thumbnail ? [{ id: 2, bytes: Buffer.concat([u(4, 0), thumbnail]) }] : []),
    { id: 3, bytes: Buffer.concat([before, block]) },
  ];
  const idWidth = version === 2 ? 4 : 2;
  const fileType = box("ftyp", text(brand), u(4, 0), text("mif1"), text(brand));
  const item = (id: number, kind: string) => fullBox("infe", version === 2 ? 3 : 2, u(idWidth, id), u(2, 0), text(kind), text("\0"));
  const kinds = [item(1, brand === "avif" ? "av01" : "hvc1"), ...payloads.map(({ id }) => item(id, "Exif"))];
  const information = fullBox("iinf", version === 2 ? 1 : 0, u(version === 2 ? 4 : 2, kinds.length), ...kinds);
  const describes = box("cdsc", u(idWidth, 3), u(2, 1), u(idWidth, 1));
  const references = fullBox("iref", version === 2 ? 1 : 0, describes);
  const data = Buffer.concat(payloads.map(({ bytes }) => bytes));

  const described = (start: number): Buffer => {
    let at = start;
    const places = payloads.map(({ id, bytes }) => {
      const stretch = Math.ceil(bytes.length / parts);
      const extents = Array.from({ length: parts }, (_, part) => {
        const length = Math.min(stretch, bytes.length - part * stretch);
        return Buffer.concat([u(width, at + part * stretch), u(width, length)]);
      });
      at += bytes.length;
      return Buffer.concat([u(idWidth, id), ...(version > 0 ? [u(2, inside ? 1 : 0)] : []), u(2, 0), u(2, parts), ...extents]);
    });
    const sizes = Buffer.from([(width << 4) | width, 0]);
    const locations = fullBox("iloc", version, sizes, u(version === 2 ? 4 : 2, places.length), ...places);
    const primary = fullBox("pitm", 0, u(2, 1));
    const contents = Buffer.concat([u(4, 0), primary, information, locations, references, ...(inside ? [box("idat", data)] : [])]);
    if (!large) return box("meta", contents);
    return Buffer.concat([u(4, 1), text("meta"), u(8, contents.length + 16), contents]);
  };
  // The description's length does not depend on where the data lies, so the first try measures it.
  const behind = fileType.length + described(0).length + 8;
  return Buffer.concat([fileType, described(inside ? 0 : behind), ...(inside ? [] : [box("mdat", data)])]);
}
