import { calculateJwkThumbprint, compactVerify, EmbeddedJWK } from "jose";
import { ok, refuse } from "../../outcome/index.ts";
import type { Judging, KeyList, Means, Signature } from "../../proof/index.ts";
import { rulesAddress } from "./pdf.ts";

/** A seal's signature by its own key: EdDSA (RFC 8037) alone, whatever its header asks for. */
const signature: Signature = async (seal) => {
  try {
    const { payload, protectedHeader } = await compactVerify(seal, EmbeddedJWK, { algorithms: ["EdDSA"] });
    const { kty, crv, x } = protectedHeader.jwk ?? {};
    if (kty !== "OKP" || crv !== "Ed25519" || x === undefined) return undefined;
    return { payload: new TextDecoder().decode(payload), x, key: await calculateJwkThumbprint({ kty, crv, x }) };
  } catch {
    // not a JWS, another algorithm, or a signature that does not fit: all the same to whoever asks
    return undefined;
  }
};

const sha256 = async (bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> => new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
const hex = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** What a check needs, in the browser: rules files as they lie beside the app. */
export const meansWith = (keys: readonly KeyList[]): Means => ({
  digest: sha256,
  signature,
  decode: (bytes) => new TextDecoder().decode(bytes),
  rules: async (version) => {
    try {
      const answer = await fetch(rulesAddress(version));
      // an address that is none is answered with the app's own page
      if (!answer.ok || !(answer.headers.get("content-type") ?? "").includes("javascript"))
        return refuse("rules-unknown", "rules", { version });
      const digest = hex(await sha256(new Uint8Array(await answer.arrayBuffer())));
      return ok({ digest, judging: (await import(/* @vite-ignore */ rulesAddress(version))) as Judging });
    } catch {
      return refuse("rules-unknown", "rules", { version });
    }
  },
  keys,
});
