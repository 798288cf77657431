/** Whether every surrogate of the text is half of a pair (String.prototype.isWellFormed is ES2024, the core is ES2023). */
export function isWellFormed(text: string): boolean {
  for (let i = 0; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    if (unit < 0xd800 || unit > 0xdfff) continue;
    const next = text.charCodeAt(i + 1); // NaN past the end, which fails the comparison below
    if (unit > 0xdbff || !(next >= 0xdc00 && next <= 0xdfff)) return false;
    i += 1;
  }
  return true;
}

/** UTF-8 (RFC 3629) of a well-formed text; a lone surrogate is a bug of the caller and throws. */
export function utf8(text: string): Uint8Array<ArrayBuffer> {
  // Most of what is hashed is ASCII: one byte each, and nothing to be cut off afterwards.
  const plain = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    if (unit > 0x7f) return longer(text, plain.subarray(0, i));
    plain[i] = unit;
  }
  return plain;
}

/** The same from the first sign on that is not ASCII. */
function longer(text: string, before: Uint8Array): Uint8Array<ArrayBuffer> {
  let at = before.length;
  const bytes = new Uint8Array(at + (text.length - at) * 3);
  bytes.set(before);
  for (let i = at; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    if (unit < 0x80) {
      bytes[at++] = unit;
    } else if (unit < 0x800) {
      bytes[at++] = 0xc0 | (unit >> 6);
      bytes[at++] = 0x80 | (unit & 0x3f);
    } else if (unit < 0xd800 || unit > 0xdfff) {
      bytes[at++] = 0xe0 | (unit >> 12);
      bytes[at++] = 0x80 | ((unit >> 6) & 0x3f);
      bytes[at++] = 0x80 | (unit & 0x3f);
    } else {
      const next = text.charCodeAt(i + 1); // NaN past the end, which fails the comparison below
      if (unit > 0xdbff || !(next >= 0xdc00 && next <= 0xdfff)) throw new RangeError("utf8: lone surrogate");
      const point = 0x10000 + ((unit & 0x3ff) << 10) + (next & 0x3ff);
      bytes[at++] = 0xf0 | (point >> 18);
      bytes[at++] = 0x80 | ((point >> 12) & 0x3f);
      bytes[at++] = 0x80 | ((point >> 6) & 0x3f);
      bytes[at++] = 0x80 | (point & 0x3f);
      i += 1; // the pair's second half
    }
  }
  return bytes.slice(0, at);
}

/** 32 bytes as 64 lower-case hex digits: the one spelling of a digest, hash or salt. */
export const isHex64 = (text: unknown): text is string => typeof text === "string" && /^[0-9a-f]{64}$/.test(text);

/** Every byte as two digits: a ledger is verified by thousands of digests. */
const digits: readonly string[] = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));

export function toHex(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 1) text += digits[bytes[i] as number];
  return text;
}

/** '0' to '9' end in their value; 'a' to 'f', and 'A' to 'F', in one to six. */
const digitAt = (text: string, at: number): number => {
  const unit = text.charCodeAt(at);
  return (unit & 15) + (unit > 57 ? 9 : 0);
};

/** Bytes of an even number of hex digits, already checked. */
export function fromHex(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(text.length / 2);
  for (let i = 0; i < bytes.length; i += 1) bytes[i] = (digitAt(text, 2 * i) << 4) | digitAt(text, 2 * i + 1);
  return bytes;
}

export function joinBytes(first: Uint8Array, second: Uint8Array): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  return joined;
}
