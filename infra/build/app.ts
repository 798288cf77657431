import { rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { build } from "vite";
import { project } from "./project.ts";

/**
 * Builds the web app into `out/app`: files with their hash in the name, and `_headers` with the content security policy.
 * Nothing is put inline, since the policy allows none of it.
 */
export async function buildApp(folder: string = join(project, "out/app")): Promise<void> {
  // built beside and moved at once: a stack may be serving what was built before
  const part = `${folder}.${process.pid}.part`;
  await build({
    configFile: false,
    root: join(project, "src/screens"),
    publicDir: join(project, "src/screens/public"),
    logLevel: "warn",
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
    build: {
      outDir: part,
      emptyOutDir: true,
      target: "es2022",
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
    },
  });
  await rm(folder, { recursive: true, force: true });
  await rename(part, folder);
}
