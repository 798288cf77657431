import { ok, refuse } from "../../outcome/index.ts";
import type { Judging, KeyList, Means } from "../../proof/index.ts";
import { signatureBy } from "../../signature/index.ts";
import { digest } from "../parts/digest.ts";
import { rulesAddress } from "./pdf.ts";

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** What a check needs, in the browser: rules files as they lie beside the app. */
export const meansWith = (keys: readonly KeyList[]): Means => ({
  digest,
  signature: signatureBy(decode),
  decode,
  rules: async (version) => {
    try {
      const answer = await fetch(rulesAddress(version));
      // an address that is none is answered with the app's own page
      if (!answer.ok || !(answer.headers.get("content-type") ?? "").includes("javascript"))
        return refuse("rules-unknown", "rules", { version });
      const found = await digest(new Uint8Array(await answer.arrayBuffer()));
      return ok({ digest: found, judging: (await import(/* @vite-ignore */ rulesAddress(version))) as Judging });
    } catch {
      return refuse("rules-unknown", "rules", { version });
    }
  },
  keys,
});
