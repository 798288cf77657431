import { createHash } from "node:crypto";
import { copyFile, mkdir, readdir, readFile, rename, rm, rmdir, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { RESTORED, type Secrets, secretsIn } from "../local/index.ts";
import { checkBackup } from "./check.ts";
import { type Erased, erasedIn, readErased } from "./erased-list.ts";
import { backupsIn, beganAt } from "./expire.ts";
import { bytesOf, flush } from "./files.ts";
import { type BackupList, DAY_MS, databasesOf, KEPT_DAYS, LIST } from "./list.ts";
import { openStore } from "./store.ts";
import { erasedKeys, takeOut } from "./take-out.ts";

export interface RestorePlan {
  /** A backup, or a folder of backups: then its newest. */
  readonly from: string;
  /** Of the new stack: not there yet, or empty. */
  readonly directory: string;
  /** The secret that wrapped the seal keys. Undefined: it is lost; nobody can then say who wrote the list, and old keys seal no more. */
  readonly secret: string | undefined;
  /** Of this program's migrations. */
  readonly migrations: string;
  readonly clock: () => number;
  readonly log: (line: string) => void;
}

export interface Restored {
  readonly folder: string;
  readonly list: BackupList;
  /** What had been erased since the backup was taken, and was taken out of it. */
  readonly erased: number;
}

/** A reason for which nothing was read back, to be shown as it is. */
export class NotRestored extends Error {}

async function chosen(from: string): Promise<string> {
  if ((await bytesOf(join(from, LIST))) !== undefined || beganAt(basename(from)) !== undefined) return from;
  const [newest] = await backupsIn(from);
  if (newest === undefined) throw new NotRestored(`There is no backup in ${from}.`);
  return join(from, newest);
}

async function refuseFilled(directory: string): Promise<void> {
  const there = await readdir(directory).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return [];
    throw error;
  });
  if (there.length > 0) throw new NotRestored(`${directory} is not empty: a backup is read back into a folder of its own.`);
}

/** A database that was built by files which this program does not have, or has otherwise, cannot be carried on. */
async function refuseForeign(list: BackupList, folder: string): Promise<void> {
  for (const { name, digest } of list.migrations) {
    const sql = /^[\w-]+\.sql$/.test(name) ? await bytesOf(join(folder, name)) : undefined;
    if (sql === undefined) throw new NotRestored(`The backup was built with ${name}, which this version of the program does not have.`);
    if (createHash("sha256").update(sql).digest("hex") !== digest)
      throw new NotRestored(`The backup was built with another ${name} than this version of the program has.`);
  }
}

/** Secrets of its own for the new stack, but the one that the seal keys are wrapped with. */
async function secretsFor(directory: string, secret: string | undefined): Promise<Secrets> {
  const made = await secretsIn(directory);
  if (secret === undefined) return made;
  const kept = { ...made, sealSecret: secret };
  await writeFile(join(directory, "secrets.json"), `${JSON.stringify(kept, undefined, 2)}\n`, { mode: 0o600 });
  return kept;
}

/** What must not come back: all that was erased until the newest backup beside this one. */
async function erasedBeside(folder: string, secret: string | undefined): Promise<readonly Erased[]> {
  return (await readErased(dirname(folder), secret)) ?? [];
}

async function rowsRestored(folder: string, directory: string, list: BackupList, erased: readonly Erased[]): Promise<number> {
  const all = databasesOf(list);
  let count = 0;
  for (const { place, database: taken } of all) {
    const file = join(directory, "edge", place);
    await mkdir(dirname(file), { recursive: true });
    await copyFile(join(folder, taken.name), file);
    const database = new DatabaseSync(file);
    try {
      const known = new Set(erasedIn(database).map(({ company, kind, ref }) => JSON.stringify([company, kind, ref])));
      // of several databases one has the company
      const lies = database.prepare("SELECT 1 FROM company WHERE id = ?");
      const since = erased.filter(
        ({ company, kind, ref }) =>
          !known.has(JSON.stringify([company, kind, ref])) && (all.length === 1 || lies.get(company) !== undefined),
      );
      if (since.length > 0) takeOut(database, since);
      count += since.length;
    } finally {
      database.close();
      await flush(file);
    }
  }
  return count;
}

async function objectsRestored(folder: string, directory: string, list: BackupList, erased: readonly Erased[]): Promise<void> {
  const { store, close } = await openStore(directory);
  const gone = erasedKeys(erased);
  try {
    for (const { key, name, type, sha256 } of list.objects) {
      if (gone.has(key)) continue;
      const bytes = new Uint8Array(await readFile(join(folder, name)));
      const put = await store.put(key, bytes, { length: bytes.length, type, sha256 });
      if (!put.ok) throw new Error(`${key} could not be put into the new store (${put.refusal.code}).`);
    }
  } finally {
    await close();
  }
}

/**
 * Reads a backup back into an empty folder, from which a stack can then be started. Every byte is checked first; what was erased since
 * is left out. The folder is there whole or not at all.
 * @throws NotRestored with the reason, naming every file that is missing, altered or too many
 */
export async function restoreBackup({ from, directory, secret, migrations, clock, log }: RestorePlan): Promise<Restored> {
  await refuseFilled(directory);
  const folder = await chosen(from);
  const { list, faults } = await checkBackup(folder, secret);
  if (list === undefined || faults.length > 0)
    throw new NotRestored(`${folder} is not whole:\n${faults.map(({ file, how }) => `  ${file} ${how}.`).join("\n")}`);
  if (clock() > list.until)
    throw new NotRestored(
      `${folder} is older than ${KEPT_DAYS} days. What was erased since ${new Date(list.until - KEPT_DAYS * DAY_MS).toISOString()} would come back; remove it.`,
    );
  await refuseForeign(list, migrations);
  const erased = await erasedBeside(folder, secret).catch((error: Error) => {
    throw new NotRestored(`In ${dirname(folder)}: ${error.message}`);
  });
  if (secret === undefined)
    log(
      "Without its secret nobody can say who wrote this backup. The keys that sealed records stay readable, and seal no more: make a new one.",
    );
  const part = `${directory}.part`;
  await rm(part, { recursive: true, force: true });
  try {
    await mkdir(part, { recursive: true, mode: 0o700 });
    await secretsFor(part, secret);
    await objectsRestored(folder, part, list, erased);
    const since = await rowsRestored(folder, part, list, erased);
    await writeFile(join(part, RESTORED), `${JSON.stringify({ taken: list.taken, read: clock() })}\n`, { mode: 0o600 });
    await rmdir(directory).catch(() => {});
    await mkdir(dirname(directory), { recursive: true });
    await rename(part, directory);
    return { folder, list, erased: since };
  } catch (error) {
    await rm(part, { recursive: true, force: true });
    throw error;
  }
}
