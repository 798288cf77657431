import "../node-version.mjs";
import { forbiddenImports } from "./imports/index.ts";
import { project } from "./project.ts";

const { files, violations } = await forbiddenImports(project);
for (const { rule, from, to, comment } of violations) console.log(`${from} → ${to}\n  ${rule}: ${comment}`);
console.log(`${files} files, ${violations.length} forbidden imports`);
process.exitCode = violations.length === 0 ? 0 : 1;
