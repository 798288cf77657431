import { calculateJwkThumbprint, compactVerify, EmbeddedJWK } from "jose";
import type { Decode, Signature } from "../proof/index.ts";

/** A seal's signature by its own key: EdDSA (RFC 8037) alone, whatever its header asks for. The same on a page and in the terminal. */
export const signatureBy =
  (decode: Decode): Signature =>
  async (seal) => {
    try {
      const { payload, protectedHeader } = await compactVerify(seal, EmbeddedJWK, { algorithms: ["EdDSA"] });
      const { kty, crv, x } = protectedHeader.jwk ?? {};
      if (kty !== "OKP" || crv !== "Ed25519" || x === undefined) return undefined;
      return { payload: decode(payload), x, key: await calculateJwkThumbprint({ kty, crv, x }) };
    } catch {
      // not a JWS, another algorithm, or a signature that does not fit: all the same to whoever asks
      return undefined;
    }
  };
