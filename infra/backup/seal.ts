import { createHash, createHmac, hkdfSync, timingSafeEqual } from "node:crypto";

/**
 * What stands beside a file of a backup: its digest, which everybody can compare, and two marks that only the holder of the secret can
 * make. `secret` is the same for every file of one secret, and tells a wrong secret from a changed file.
 */
export interface FileSeal {
  readonly sha256: string;
  readonly secret: string;
  readonly mac: string;
}

/** The key of the marks, out of the secret that wraps the seal keys (HKDF, RFC 5869); HMAC by RFC 2104. */
const keyOf = (secret: string): Buffer => Buffer.from(hkdfSync("sha256", secret, Buffer.alloc(32), "asburied backup list", 32));
const macOf = (key: Buffer, bytes: Uint8Array | string): string => createHmac("sha256", key).update(bytes).digest("hex");

export const sha256Of = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

export const sealOf = (bytes: Uint8Array, secret: string): FileSeal => {
  const key = keyOf(secret);
  return { sha256: sha256Of(bytes), secret: macOf(key, "asburied backup secret"), mac: macOf(key, bytes) };
};

const same = (a: string, b: string): boolean => {
  const [first, second] = [Buffer.from(a, "hex"), Buffer.from(b, "hex")];
  return first.length === second.length && first.length > 0 && timingSafeEqual(first, second);
};

/** How a file does not fit its seal; undefined where it does. Without a secret only the digest is compared. */
export function sealFault(bytes: Uint8Array, seal: unknown, secret: string | undefined): string | undefined {
  const held = seal as Partial<FileSeal> | null;
  if (typeof held?.sha256 !== "string" || typeof held.secret !== "string" || typeof held.mac !== "string") return "its seal cannot be read";
  if (held.sha256 !== sha256Of(bytes)) return "is not as it was written: its digest differs from the one in its seal";
  if (secret === undefined) return undefined;
  const own = sealOf(bytes, secret);
  if (!same(own.secret, held.secret)) return "was sealed with another secret than the one given, or its seal was changed";
  return same(own.mac, held.mac) ? undefined : "was changed together with its digest: the mark of the secret does not fit";
}
