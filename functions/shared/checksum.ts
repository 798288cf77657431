/** SHA-256 as 64 lower-case hex digits. */
export async function sha256Of(bytes: Uint8Array): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes as Uint8Array<ArrayBuffer>));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The bytes of an even number of hex digits as base64: how a checksum header spells a digest. */
export const base64Of = (hex: string): string =>
  btoa(String.fromCharCode(...(hex.match(/../g) ?? []).map((digits) => Number.parseInt(digits, 16))));
