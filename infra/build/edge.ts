import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { build } from "esbuild";
import { asWritten, compatibility } from "../deploy/index.ts";
import { project } from "./project.ts";
import { sourcesDigest } from "./sources.ts";

/** `worker` is what is deployed; `local` is the same with the demo company's sign-in links. */
export type EdgeEntry = "worker" | "local";

const entryFile = (entry: EdgeEntry): string => join(project, `functions/edge/${entry}.ts`);

/** Runs the platform's own bundler without deploying. Its telemetry and its look for updates are switched off. */
async function bundleAsDeployed(file: string, folder: string): Promise<void> {
  const configuration = join(folder, "wrangler.json");
  const settings = {
    name: "edge",
    main: entryFile("worker"),
    compatibility_date: compatibility.date,
    compatibility_flags: compatibility.flags,
    minify: asWritten.minify,
    keep_names: asWritten.keepNames,
  };
  await writeFile(configuration, JSON.stringify(settings));
  const wrangler = join(dirname(createRequire(import.meta.url).resolve("wrangler/package.json")), "bin/wrangler.js");
  const outdir = join(folder, "bundled");
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
  await rename(join(outdir, "worker.js"), file);
}

/** What the platform's bundler is made of, without its start of several seconds: for what is never deployed. */
async function bundleForHere(source: string, outfile: string): Promise<void> {
  await build({
    entryPoints: [source],
    outfile,
    bundle: true,
    format: "esm",
    platform: "browser",
    conditions: ["workerd", "worker", "browser"],
    external: ["node:*", "cloudflare:*"],
    ...asWritten,
    logLevel: "error",
  });
}

/** All that the worker is made of. */
const sources = ["src/**/*.*", "functions/**/*.ts", "templates/**/*.ts", "infra/build/edge.ts", "infra/deploy/platform.ts"];

/** Several stacks may be starting: each makes its file in a folder of its own, and none of them may load half a one. */
async function made(file: string, make: (part: string, folder: string) => Promise<void>): Promise<void> {
  await mkdir(dirname(file), { recursive: true });
  const folder = await mkdtemp(`${file}.`);
  try {
    await make(join(folder, "part.js"), folder);
    await rename(join(folder, "part.js"), file);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/**
 * Bundles the edge function into one file, `out/edge/<entry>.js`, unless it lies there already, made of the same sources: `worker` as
 * it is deployed, `local` by the plain bundler.
 * @returns the file's path
 */
export async function bundleEdge(entry: EdgeEntry): Promise<string> {
  const file = join(project, `out/edge/${entry}.js`);
  const stamp = `${file}.sources`;
  const digest = await sourcesDigest(sources);
  const bundledFrom = existsSync(file) ? await readFile(stamp, "utf8").catch(() => undefined) : undefined;
  if (bundledFrom === digest) return file;
  await made(file, (part, folder) => (entry === "worker" ? bundleAsDeployed(part, folder) : bundleForHere(entryFile(entry), part)));
  await writeFile(stamp, digest);
  return file;
}

/**
 * Bundles an entry of a test's own, anew each time.
 * @returns the file's path
 */
export async function bundleEntry(source: string, file: string): Promise<string> {
  await made(file, (part) => bundleForHere(source, part));
  return file;
}
