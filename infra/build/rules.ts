import "../node-version.mjs";
import { mkdir, writeFile } from "node:fs/promises";
import { dirname, join, relative } from "node:path";
import { rulesDigests } from "#core/proof/index.ts";
import { project } from "./project.ts";
import { builtRules, digestOfText, digestsModule, rulesFile, rulesOf } from "./rules-file.ts";

/**
 * `npm run rules`: builds today's judging into the file of its version and notes its digest. A file by which a record was sealed
 * that somebody holds is never built again: raise RULES first.
 */
const code = await builtRules();
const version = await rulesOf(code);
const file = rulesFile(version);
await mkdir(dirname(file), { recursive: true });
await writeFile(file, code);
await writeFile(join(project, "src/proof/rules-digests.ts"), digestsModule({ ...rulesDigests, [version]: digestOfText(code) }));
console.log(`rules ${version}: ${relative(project, file)}, ${Math.round(code.length / 1024)} kB, SHA-256 ${digestOfText(code)}`);
