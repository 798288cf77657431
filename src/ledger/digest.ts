import type { Digest } from "./envelope.ts";

/** What a browser and a worker have; both are the platform's own, and quicker than anything written here. */
export interface Hashing {
  /** SHA-256 of the bytes, 32 bytes. */
  readonly sha256: (bytes: Uint8Array<ArrayBuffer>) => Promise<ArrayBuffer>;
  /** UTF-8 of a text. */
  readonly encode: (text: string) => Uint8Array;
}

/** Every byte as two digits: a ledger is verified by thousands of digests. */
const digits: readonly string[] = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));

function toHex(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 1) text += digits[bytes[i] as number];
  return text;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((length, piece) => length + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** A `Digest` where SHA-256 is taken of one row of bytes. */
export const digestBy =
  ({ sha256, encode }: Hashing): Digest =>
  async (...pieces) => {
    const rows = pieces.map((piece) => (typeof piece === "string" ? encode(piece) : piece));
    // one row is hashed as it lies, and no encoder writes into shared memory
    const bytes = (rows.length === 1 && rows[0]) || joined(rows);
    return toHex(new Uint8Array(await sha256(bytes as Uint8Array<ArrayBuffer>)));
  };
