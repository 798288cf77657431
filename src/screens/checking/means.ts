import { digestBy } from "../../ledger/index.ts";
import { ok, refuse } from "../../outcome/index.ts";
import type { Judging, KeyList, Means } from "../../proof/index.ts";
import { signatureBy } from "../../signature/index.ts";
import { rulesAddress } from "./pdf.ts";

const sha256 = digestBy({
  sha256: (bytes) => crypto.subtle.digest("SHA-256", bytes),
  encode: (text) => new TextEncoder().encode(text),
});

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** What a check needs, in the browser: rules files as they lie beside the app. */
export const meansWith = (keys: readonly KeyList[]): Means => ({
  digest: sha256,
  signature: signatureBy(decode),
  decode,
  rules: async (version) => {
    try {
      const answer = await fetch(rulesAddress(version));
      // an address that is none is answered with the app's own page
      if (!answer.ok || !(answer.headers.get("content-type") ?? "").includes("javascript"))
        return refuse("rules-unknown", "rules", { version });
      const digest = await sha256(new Uint8Array(await answer.arrayBuffer()));
      return ok({ digest, judging: (await import(/* @vite-ignore */ rulesAddress(version))) as Judging });
    } catch {
      return refuse("rules-unknown", "rules", { version });
    }
  },
  keys,
});
