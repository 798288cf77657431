import "../node-version.mjs";
import { readFile } from "node:fs/promises";
import { relative } from "node:path";
import { gzipSync } from "node:zlib";
import { buildApp } from "./app.ts";
import { bundleEdge } from "./edge.ts";
import { project } from "./project.ts";

for (const entry of ["worker", "local"] as const) {
  const file = await bundleEdge(entry);
  const bytes = await readFile(file);
  console.log(
    `${relative(project, file)}: ${Math.round(bytes.length / 1024)} kB, ${Math.round(gzipSync(bytes).length / 1024)} kB compressed`,
  );
}
console.log(relative(project, await buildApp()));
