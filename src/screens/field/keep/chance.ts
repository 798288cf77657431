/** Random hexadecimal digits, two for each byte. */
export const chance = (bytes: number): string => hexOf(crypto.getRandomValues(new Uint8Array(bytes)));

export const hexOf = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

export const sha256 = async (bytes: Uint8Array<ArrayBuffer> | ArrayBuffer): Promise<Uint8Array> =>
  new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
