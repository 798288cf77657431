import { readFile } from "node:fs/promises";
import { ok, refuse } from "#core/outcome/index.ts";
import type { Judging, KeyList, Means } from "#core/proof/index.ts";
import { signatureBy } from "#core/signature/index.ts";
import { digest } from "../node-digest.ts";

const rulesAt = (version: number): URL => new URL(`../rules/${version}.js`, import.meta.url);

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** What a check needs, on Node: rules files as they lie in the project. */
export const meansWith = (keys: readonly KeyList[]): Means => ({
  digest,
  signature: signatureBy(decode),
  decode,
  rules: async (version) => {
    const bytes = await readFile(rulesAt(version)).catch(() => undefined);
    if (bytes === undefined) return refuse("rules-unknown", "rules", { version });
    const judging = (await import(rulesAt(version).href)) as Judging;
    return ok({ digest: await digest(Uint8Array.from(bytes)), judging });
  },
  keys,
});
