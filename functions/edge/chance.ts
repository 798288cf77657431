/** 256 bits of chance as 64 hex digits: salts. */
export const salt = (): string => hex(crypto.getRandomValues(new Uint8Array(32)));

/** 128 bits of chance as 32 hex digits: ids. */
export const newId = (): string => hex(crypto.getRandomValues(new Uint8Array(16)));

/** 256 bits of chance, in letters that stand in an address as they are. */
export const newToken = (): string => base64Url(crypto.getRandomValues(new Uint8Array(32)));

export const sha256Hex = async (text: string): Promise<string> =>
  hex(new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text))));

export const hex = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** In constant time, whatever the lengths: the digests are compared, not the texts. */
export async function sameSecret(given: string, expected: string): Promise<boolean> {
  const [a, b] = await Promise.all([sha256Hex(given), sha256Hex(expected)]);
  let different = 0;
  for (let i = 0; i < a.length; i += 1) different |= a.charCodeAt(i) ^ b.charCodeAt(i);
  return different === 0;
}

const base64Url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replaceAll("=", "");
