import { type Digest, digestBy } from "../../../ledger/index.ts";

/** Random hexadecimal digits, two for each byte. */
export const chance = (bytes: number): string => hexOf(crypto.getRandomValues(new Uint8Array(bytes)));

export const hexOf = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

export const sha256: Digest = digestBy({
  sha256: (bytes) => crypto.subtle.digest("SHA-256", bytes),
  encode: (text) => new TextEncoder().encode(text),
});
