import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { statements } from "./statements.ts";

interface Statement {
  bind(...values: unknown[]): Statement;
  run(): Promise<unknown>;
  all(): Promise<{ results: unknown[] }>;
}

/** As much of D1 as is needed to build it up. */
export interface Database {
  prepare(sql: string): Statement;
  batch(list: Statement[]): Promise<unknown>;
}

const TABLE =
  "CREATE TABLE IF NOT EXISTS migration (name TEXT PRIMARY KEY, digest TEXT NOT NULL, applied TEXT NOT NULL) STRICT, WITHOUT ROWID";

/**
 * Brings the database up to the files of `folder`, in the order of their names, each in one batch with the row that
 * says so, so that a file is there whole or not at all.
 * @returns the names applied now
 * @throws when a file that was applied before has changed since, or is gone
 */
export const migrate = async (database: Database, folder: string, at: string): Promise<string[]> => {
  await database.prepare(TABLE).run();
  const names = existsSync(folder) ? (await readdir(folder)).filter((name) => name.endsWith(".sql")).sort() : [];
  const { results } = await database.prepare("SELECT name, digest FROM migration ORDER BY name").all();
  const before = new Map((results as { name: string; digest: string }[]).map((row) => [row.name, row.digest]));
  for (const name of before.keys()) {
    if (!names.includes(name)) throw new Error(`The database was built with ${name}, which is not in ${folder} any more.`);
  }
  const applied: string[] = [];
  for (const name of names) {
    const sql = await readFile(join(folder, name), "utf8");
    const digest = createHash("sha256").update(sql).digest("hex");
    const held = before.get(name);
    if (held === digest) continue;
    if (held !== undefined) throw new Error(`${name} has changed since the database was built with it. Write the change into a new file.`);
    const note = database.prepare("INSERT INTO migration (name, digest, applied) VALUES (?, ?, ?)").bind(name, digest, at);
    await database.batch([...statements(sql).map((text) => database.prepare(text)), note]);
    applied.push(name);
  }
  return applied;
};
