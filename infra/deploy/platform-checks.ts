import { mkdir, readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { gzipSync } from "node:zlib";
import { runTool } from "../build/index.ts";
import type { EnvironmentName } from "./environments.ts";
import { bindings } from "./platform.ts";

/** One line of `npm run deploy:check`. */
export interface Checked {
  readonly what: string;
  readonly good: boolean;
  /** The figure with its limit, or what is wrong. */
  readonly says: string;
}

export const from = (what: string, faults: readonly string[], says: string): Checked => ({
  what,
  good: faults.length === 0,
  says: faults.length === 0 ? says : faults.join("; "),
});

const WRANGLER = "node_modules/wrangler/bin/wrangler.js";

/** Without an account: nothing is asked of the network, its telemetry and its look for updates are off. */
export const wrangler = (words: readonly string[], logs: string) =>
  runTool(WRANGLER, words, false, {
    WRANGLER_SEND_METRICS: "false",
    WRANGLER_HIDE_BANNER: "true",
    WRANGLER_LOG_PATH: join(logs, "logs"),
    CLOUDFLARE_API_TOKEN: "",
    CI: "true",
    NO_COLOR: "1",
  });

/** Where a dry run left what would be deployed. */
export interface DryRun {
  readonly folder: string;
  readonly script: string;
  readonly bundle: string;
}

/** The platform's own dry run; a warning of it counts as a fault, because it says so of a field that it does not know. */
export async function dryRun(
  configuration: string,
  name: EnvironmentName,
  out: string,
  wanted: readonly string[],
): Promise<{ checked: Checked; left: DryRun }> {
  const folder = join(out, name, "worker");
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  const left = { folder, script: join(folder, "worker.js"), bundle: join(folder, "worker.bundle") };
  const words = ["deploy", "--dry-run", "--env", name, "--config", configuration, "--outdir", folder, "--outfile", left.bundle];
  const { code, output } = await wrangler(words, out);
  const faults = [
    ...(code === 0 ? [] : [`the platform's dry run ended with ${code}: ${output.trim().slice(-300)}`]),
    ...(/WARNING/.test(output) ? [/WARNING[\s\S]{0,300}/.exec(output)?.[0].replaceAll(/\s+/g, " ") ?? ""] : []),
    ...(code === 0 ? wanted.filter((one) => !output.includes(one)).map((one) => `the platform does not see ${one}`) : []),
  ];
  return { checked: from(`${name}: the platform's dry run`, faults, `${wanted.length} names seen`), left };
}

const MOST_BYTES = 1_000_000;

export const sizeOf = (script: Uint8Array, most: number = MOST_BYTES): Checked => {
  const bytes = gzipSync(script).length;
  return {
    what: "edge bundle, compressed",
    good: bytes < most,
    says: `${Math.round(bytes / 1000)} kB, less than ${Math.round(most / 1000)} kB`,
  };
};

/** The tables, indexes and triggers of a database, without the platform's own. */
const schemaOf = (database: DatabaseSync): readonly string[] =>
  database
    .prepare(
      "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE '\\_cf%' ESCAPE '\\' AND name NOT LIKE 'd1\\_%' ESCAPE '\\' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name",
    )
    .all()
    .map(
      (row) =>
        `${row.name} ${String(row.sql)
          .replaceAll(/--[^\n]*/g, " ")
          .replaceAll(/\s+/g, " ")
          .trim()}`,
    );

/** Applies every migration in the platform's way to an empty database, and compares what came of it with the files run one by one. */
export async function migrations(configuration: string, folder: string, out: string): Promise<Checked> {
  const what = "migrations, on an empty database in the platform's order";
  const names = (await readdir(folder)).filter((name) => name.endsWith(".sql")).sort();
  const persist = join(out, "database");
  await rm(persist, { recursive: true, force: true });
  const { code, output } = await wrangler(
    ["d1", "migrations", "apply", bindings.database, "--local", "--env", "staging", "--config", configuration, "--persist-to", persist],
    out,
  );
  if (code !== 0) return { what, good: false, says: `the platform stopped with ${code}: ${output.trim().slice(-400)}` };
  const files = (await readdir(persist, { recursive: true })).filter((name) => /[0-9a-f]{64}\.sqlite$/.test(name));
  const mine = new DatabaseSync(":memory:");
  for (const name of names) mine.exec(await readFile(join(folder, name), "utf8"));
  const platforms = new DatabaseSync(join(persist, files[0] ?? "none.sqlite"), { readOnly: true });
  const [own, theirs] = [schemaOf(mine), schemaOf(platforms)];
  const applied = platforms
    .prepare("SELECT name FROM d1_migrations ORDER BY id")
    .all()
    .map((row) => String(row.name));
  mine.close();
  platforms.close();
  await rm(persist, { recursive: true, force: true });
  const faults = [
    ...(files.length === 1 ? [] : [`${files.length} databases instead of one`]),
    ...(applied.join() === names.join() ? [] : [`the order was ${applied.join(", ")}`]),
    ...own.filter((one) => !theirs.includes(one)).map((one) => `missing: ${one.slice(0, 60)}`),
    ...theirs.filter((one) => !own.includes(one)).map((one) => `unexpected: ${one.slice(0, 60)}`),
  ];
  return from(what, faults, `${names.length} files, ${own.length} tables, indexes and triggers, the same both ways`);
}
