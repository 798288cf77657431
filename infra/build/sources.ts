import { createHash } from "node:crypto";
import { globSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { project } from "./project.ts";

/** SHA-256 over what something is built of, the lock file with it: whoever starts a stack need not build what is built already. */
export async function sourcesDigest(patterns: readonly string[]): Promise<string> {
  const files = patterns.flatMap((pattern) => globSync(pattern, { cwd: project })).sort();
  const hash = createHash("sha256");
  for (const file of [...files, "package-lock.json"]) hash.update(`${file}\0`).update(await readFile(join(project, file)));
  return hash.digest("hex");
}
