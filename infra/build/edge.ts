import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { basename, dirname, extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { compatibility, keepNames } from "../deploy/index.ts";
import { sourcesDigest } from "./sources.ts";

const project = fileURLToPath(new URL("../../", import.meta.url));

/** `worker` is what is deployed; `local` is the same with the demo company's sign-in links. */
export type EdgeEntry = "worker" | "local";

/** Runs the platform's own bundler without deploying. Its telemetry and its look for updates are switched off. */
async function bundle(configuration: string, outdir: string): Promise<void> {
  const wrangler = join(dirname(createRequire(import.meta.url).resolve("wrangler/package.json")), "bin/wrangler.js");
  const environment = {
    ...process.env,
    WRANGLER_SEND_METRICS: "false",
    WRANGLER_HIDE_BANNER: "true",
    WRANGLER_LOG_PATH: outdir,
    CI: "true",
  };
  const said: Buffer[] = [];
  const child = spawn(process.execPath, [wrangler, "deploy", "--dry-run", "--outdir", outdir, "--config", configuration], {
    cwd: project,
    env: environment,
  });
  child.stdout.on("data", (words: Buffer) => said.push(words));
  child.stderr.on("data", (words: Buffer) => said.push(words));
  const code = await new Promise<number | null>((resolve, reject) => child.on("error", reject).on("close", resolve));
  if (code !== 0) throw new Error(`The worker could not be bundled:\n${Buffer.concat(said).toString("utf8")}`);
}

/** All that the worker is made of. */
const sources = ["src/**/*.*", "functions/**/*.ts", "templates/**/*.ts", "infra/build/edge.ts", "infra/deploy/platform.ts"];

/**
 * Bundles the edge function into one file, `out/edge/<entry>.js`, unless it lies there already, made of the same sources; or another
 * entry and file for tests, anew each time.
 * @returns the file's path
 */
export const bundleEdge = async (
  entry: EdgeEntry,
  source: string = join(project, `functions/edge/${entry}.ts`),
  file: string = join(project, `out/edge/${entry}.js`),
): Promise<string> => {
  await mkdir(dirname(file), { recursive: true });
  const stamp = `${file}.sources`;
  const digest = source.startsWith(join(project, "functions/edge/")) ? await sourcesDigest(sources) : undefined;
  const bundledFrom = existsSync(file) ? await readFile(stamp, "utf8").catch(() => undefined) : undefined;
  if (digest !== undefined && bundledFrom === digest) return file;
  // several stacks may be starting: each bundles into a folder of its own, and none of them may load half a file
  const part = await mkdtemp(`${file}.`);
  try {
    const configuration = join(part, "wrangler.json");
    const settings = {
      name: "edge",
      main: source,
      compatibility_date: compatibility.date,
      compatibility_flags: compatibility.flags,
      minify: entry === "worker",
      keep_names: keepNames,
    };
    await writeFile(configuration, JSON.stringify(settings));
    await bundle(configuration, join(part, "bundled"));
    await rename(join(part, "bundled", `${basename(source, extname(source))}.js`), file);
    if (digest !== undefined) await writeFile(stamp, digest);
    return file;
  } finally {
    await rm(part, { recursive: true, force: true });
  }
};
