import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { ok, refuse } from "#core/outcome/index.ts";
import type { Judging, KeyList, Means } from "#core/proof/index.ts";
import { signature } from "./signature.ts";

const rulesAt = (version: number): URL => new URL(`../rules/${version}.js`, import.meta.url);
const sha256 = (bytes: Uint8Array): Uint8Array => new Uint8Array(createHash("sha256").update(bytes).digest());

/** What a check needs, on Node: rules files as they lie in the project. */
export const meansWith = (keys: readonly KeyList[]): Means => ({
  digest: async (bytes) => sha256(bytes),
  signature,
  decode: (bytes) => new TextDecoder().decode(bytes),
  rules: async (version) => {
    const bytes = await readFile(rulesAt(version)).catch(() => undefined);
    if (bytes === undefined) return refuse("rules-unknown", "rules", { version });
    const judging = (await import(rulesAt(version).href)) as Judging;
    return ok({ digest: Buffer.from(sha256(bytes)).toString("hex"), judging });
  },
  keys,
});
