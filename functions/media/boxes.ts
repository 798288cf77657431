import { ascii, view } from "./tiff-block.ts";

/** A box of an ISO base media file (ISO/IEC 14496-12, 4.2). */
export interface Box {
  readonly kind: string;
  /** Of its contents. */
  readonly start: number;
  /** May lie behind the end of the file, which then is cut off. */
  readonly end: number;
}

/** The boxes of a stretch (ISO/IEC 14496-12, 4.2), as far as they have a head. */
export function* boxes(bytes: Uint8Array, from: number, to: number): Generator<Box> {
  const data = view(bytes);
  for (let at = from; at + 8 <= Math.min(to, bytes.length); ) {
    const size = data.getUint32(at);
    const kind = ascii(bytes, at + 4, 4);
    const large = size === 1;
    if (large && at + 16 > bytes.length) return;
    const length = large ? Number(data.getBigUint64(at + 8)) : size === 0 ? to - at : size;
    const head = large ? 16 : 8;
    if (length < head) return;
    yield { kind, start: at + head, end: at + length };
    at += length;
  }
}

/** Reads numbers of a width that the file itself states; past the end of the file it throws, and the file is cut off. */
export class Cursor {
  readonly #data: DataView;
  #at: number;

  constructor(bytes: Uint8Array, at: number) {
    this.#data = view(bytes);
    this.#at = at;
  }

  get at(): number {
    return this.#at;
  }

  skip(bytes: number): void {
    this.#at += bytes;
  }

  /** A number of 0, 1, 2, 4 or 8 bytes. */
  next(width: number): number {
    let value = 0;
    for (let byte = 0; byte < width; byte += 1) value = value * 256 + this.#data.getUint8(this.#at + byte);
    this.#at += width;
    return value;
  }
}
