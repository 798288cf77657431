/** 256 bits of chance as 64 hex digits: salts. */
export const salt = (): string => hex(crypto.getRandomValues(new Uint8Array(32)));

/** 128 bits of chance as 32 hex digits: ids. */
export const newId = (): string => hex(crypto.getRandomValues(new Uint8Array(16)));

/** 256 bits of chance, in letters that stand in an address as they are. */
export const newToken = (): string => base64Url(crypto.getRandomValues(new Uint8Array(32)));

/** Twelve digits: 10^12 of them. What a 64-bit number favours among them is less than a part in ten million. */
export const newDigits = (): string =>
  String((crypto.getRandomValues(new BigUint64Array(1))[0] ?? 0n) % 1_000_000_000_000n).padStart(12, "0");

/** A digest that nobody can try out who has the database alone: for what is short enough to be guessed. */
export async function keyedHex(secret: string, about: string, text: string): Promise<string> {
  const bytes = (of: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(of));
  const key = await crypto.subtle.importKey("raw", bytes(`${about} ${secret}`), { name: "HMAC", hash: "SHA-256" }, false, ["sign"]);
  return hex(new Uint8Array(await crypto.subtle.sign("HMAC", key, bytes(text))));
}

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
