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

/** 32 bytes as 64 lower-case hex digits: the one spelling of a digest, hash or salt. */
export const isHex64 = (text: unknown): text is string => typeof text === "string" && /^[0-9a-f]{64}$/.test(text);

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
