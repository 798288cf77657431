import { mkdir, rename, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const project = fileURLToPath(new URL("../../", import.meta.url));

/** `worker` is what is deployed; `local` is the same with the demo company's sign-in links. */
export type EdgeEntry = "worker" | "local";

/**
 * Bundles the edge function into one file, `out/edge/<entry>.js`, or another entry and file for tests.
 * @returns the file's path
 */
export const bundleEdge = async (
  entry: EdgeEntry,
  source: string = join(project, `functions/edge/${entry}.ts`),
  file: string = join(project, `out/edge/${entry}.js`),
): Promise<string> => {
  const { outputFiles } = await build({
    entryPoints: [source],
    absWorkingDir: project,
    bundle: true,
    write: false,
    format: "esm",
    target: "es2024",
    // not "node": that takes the S3 client's Node half, which does not run in workerd
    platform: "browser",
    conditions: ["workerd", "worker", "browser"],
    external: ["node:*", "cloudflare:*"],
    minify: entry === "worker",
    keepNames: true,
    legalComments: "none",
    loader: { ".sql": "text", ".woff2": "binary", ".css": "text" },
    logLevel: "warning",
  });
  const [output] = outputFiles;
  if (output === undefined) throw new Error(`Nothing came out of bundling ${source}.`);
  await mkdir(dirname(file), { recursive: true });
  // several stacks may be starting: none of them may load half a file
  const part = `${file}.${process.pid}.${Math.random().toString(36).slice(2)}.part`;
  await writeFile(part, output.contents);
  await rename(part, file);
  return file;
};
