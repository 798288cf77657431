import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

const KEY = { name: "Ed25519" } as const;
const IV_BYTES = 12;

const toBase64Url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replaceAll("=", "");
const fromBase64Url = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (sign) => sign.charCodeAt(0));

/** The key that wraps keys, out of the environment's secret (HKDF, RFC 5869). */
async function wrappingKey(secret: string): Promise<CryptoKey> {
  const material = await crypto.subtle.importKey("raw", new TextEncoder().encode(secret), "HKDF", false, ["deriveKey"]);
  const how = { name: "HKDF", hash: "SHA-256", salt: new Uint8Array(32), info: new TextEncoder().encode("asburied seal key") };
  return crypto.subtle.deriveKey(how, material, { name: "AES-GCM", length: 256 }, false, ["wrapKey", "unwrapKey"]);
}

/** Wrapped for one company and one key: put into another's row it cannot be unwrapped. */
const wrapping = (iv: Uint8Array<ArrayBuffer>, company: string, kid: string) => ({
  name: "AES-GCM",
  iv,
  additionalData: new TextEncoder().encode(`${company}/${kid}`),
});

export interface MadeKey {
  readonly kid: string;
  readonly x: string;
  readonly wrapped: string;
}

/** A new Ed25519 key of a company, its private half wrapped. */
export async function makeKey(secret: string, company: string): Promise<MadeKey> {
  const pair = (await crypto.subtle.generateKey(KEY, true, ["sign", "verify"])) as CryptoKeyPair;
  const { x } = (await crypto.subtle.exportKey("jwk", pair.publicKey)) as JsonWebKey;
  if (x === undefined) throw new Error("a key without its public half");
  const { calculateJwkThumbprint } = await import("./jose.ts");
  const kid = await calculateJwkThumbprint({ kty: "OKP", crv: "Ed25519", x });
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const box = await crypto.subtle.wrapKey("pkcs8", pair.privateKey, await wrappingKey(secret), wrapping(iv, company, kid));
  return { kid, x, wrapped: toBase64Url(new Uint8Array([...iv, ...new Uint8Array(box as ArrayBuffer)])) };
}

/** The private half, that signs and cannot be taken out again. Refuses `seal-key-unreadable` when another secret wrapped it. */
export async function unwrapKey(secret: string, company: string, { kid, wrapped }: MadeKey): Promise<Outcome<CryptoKey>> {
  const bytes = fromBase64Url(wrapped);
  const [iv, box] = [bytes.slice(0, IV_BYTES), bytes.slice(IV_BYTES)];
  try {
    return ok(await crypto.subtle.unwrapKey("pkcs8", box, await wrappingKey(secret), wrapping(iv, company, kid), KEY, false, ["sign"]));
  } catch {
    return refuse("seal-key-unreadable", "key", {});
  }
}
