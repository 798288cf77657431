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
  if (!isWellFormed(text)) throw new RangeError("utf8: lone surrogate");
  const bytes = new Uint8Array(text.length * 3);
  let at = 0;
  for (let i = 0; i < text.length; i += 1) {
    const point = text.codePointAt(i) as number;
    if (point < 0x80) {
      bytes[at++] = point;
    } else if (point < 0x800) {
      bytes[at++] = 0xc0 | (point >> 6);
      bytes[at++] = 0x80 | (point & 0x3f);
    } else if (point < 0x10000) {
      bytes[at++] = 0xe0 | (point >> 12);
      bytes[at++] = 0x80 | ((point >> 6) & 0x3f);
      bytes[at++] = 0x80 | (point & 0x3f);
    } else {
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

export const toHex = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** Bytes of an even number of hex digits, already checked. */
export function fromHex(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(text.length / 2);
  for (let i = 0; i < bytes.length; i += 1) bytes[i] = Number.parseInt(text.slice(2 * i, 2 * i + 2), 16);
  return bytes;
}

export function joinBytes(first: Uint8Array, second: Uint8Array): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  return joined;
}
