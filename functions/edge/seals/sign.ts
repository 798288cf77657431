import type { RecordSeal } from "#core/proof/index.ts";
import type { SigningKey } from "./keys.ts";

/** The seal as compact JWS (RFC 7515), alg EdDSA (RFC 8037), with the public key in its header: it can be checked without signal. */
export async function signed(seal: RecordSeal, { kid, x, signs }: SigningKey): Promise<string> {
  const { CompactSign } = await import("./jose.ts");
  return new CompactSign(new TextEncoder().encode(JSON.stringify(seal)))
    .setProtectedHeader({ alg: "EdDSA", typ: "asburied-seal", kid, jwk: { kty: "OKP", crv: "Ed25519", x } })
    .sign(signs);
}
