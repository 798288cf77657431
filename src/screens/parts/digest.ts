import { type Digest, digestBy } from "../../ledger/index.ts";

/** SHA-256 as the browser has it. */
export const digest: Digest = digestBy({
  sha256: (bytes) => crypto.subtle.digest("SHA-256", bytes),
  encode: (text) => new TextEncoder().encode(text),
});
