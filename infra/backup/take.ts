import { mkdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { copyObjects } from "./copy.ts";
import { erasedIn, writeErased } from "./erased-list.ts";
import { removeExpired, stampOf } from "./expire.ts";
import { flush, measured, writeFlushed } from "./files.ts";
import { BACKUP_KIND, type BackupList, DAY_MS, databaseName, KEPT_DAYS, LIST, SEAL } from "./list.ts";
import { namedObjects } from "./named-objects.ts";
import { sealOf } from "./seal.ts";
import { databasesIn, refuseMoving, saidBy, snapshotInto } from "./snapshot.ts";
import { openStore } from "./store.ts";

export interface BackupPlan {
  /** Of the stack; it may be running. */
  readonly directory: string;
  /** The folder of backups; the new one is a folder in it, named by the moment at which it began. */
  readonly out: string;
  /** Instants, milliseconds. */
  readonly clock: () => number;
  readonly log: (line: string) => void;
  /** Called when the rows are taken and no object is yet. */
  readonly rowsTaken?: () => Promise<void>;
}

export interface Taken {
  readonly folder: string;
  readonly list: BackupList;
  /** Names of backups that were past their day and are gone. */
  readonly expired: readonly string[];
}

function readFrom<T>(file: string, read: (database: DatabaseSync) => T): T {
  const database = new DatabaseSync(file, { readOnly: true, timeout: 10_000 });
  try {
    return read(database);
  } finally {
    database.close();
  }
}

async function databaseTaken(part: string, place: string, name: string) {
  const database = await measured(join(part, name));
  if (database === undefined) throw new Error(`${name} went away while the backup was taken.`);
  return { place, database: { name, ...database } };
}

/**
 * Takes a backup: the rows of one moment, then every object that they name. Objects are never changed and their rows are written after
 * them, so what was acknowledged later is not in it, and nothing that is named is missing. The list is written last: without it a
 * folder is no backup.
 * @throws where an object that the rows name is not there, or is not what its name says; no backup is left then
 */
export async function takeBackup({ directory, out, clock, log, rowsTaken }: BackupPlan): Promise<Taken> {
  const found = databasesIn(directory);
  const { store, secret, close } = await openStore(directory);
  const folder = join(out, stampOf(clock()));
  const part = `${folder}.part`;
  try {
    await mkdir(part, { recursive: true, mode: 0o700 });
    for (const { file } of found) readFrom(file, refuseMoving);
    for (const [n, { file }] of found.entries()) {
      snapshotInto(file, join(part, databaseName(n)));
      await flush(join(part, databaseName(n)));
    }
    const taken = clock();
    await rowsTaken?.();
    const read = found.map((_, n) =>
      readFrom(join(part, databaseName(n)), (database) => {
        refuseMoving(database);
        return { said: saidBy(database), named: namedObjects(database) };
      }),
    );
    // one that began while the rows of one database were taken and those of the next not yet
    for (const { file } of found) readFrom(file, refuseMoving);
    const named = read.flatMap((one) => one.named);
    const copied = await copyObjects(
      store,
      part,
      named,
      found.map(({ file }) => file),
    );
    const [first, ...further] = await Promise.all(found.map(({ place }, n) => databaseTaken(part, place, databaseName(n))));
    if (first === undefined) throw new Error("no database was taken");
    const list: BackupList = {
      kind: BACKUP_KIND,
      format: 1,
      taken,
      until: taken + KEPT_DAYS * DAY_MS,
      migrations: read[0]?.said.migrations ?? [],
      ledgers: read.flatMap(({ said }) => said.ledgers),
      ...first,
      ...(further.length === 0 ? {} : { further }),
      ...copied,
    };
    const text = `${JSON.stringify(list, undefined, 1)}\n`;
    await writeFlushed(join(part, SEAL), `${JSON.stringify(sealOf(new TextEncoder().encode(text), secret))}\n`);
    await writeFlushed(join(part, LIST), text);
    await rename(part, folder);
    await writeErased(
      out,
      found.flatMap(({ file }) => readFrom(file, erasedIn)),
      secret,
    );
    return { folder, list, expired: await removeExpired(out, clock(), log) };
  } catch (error) {
    await rm(part, { recursive: true, force: true });
    throw error;
  } finally {
    await close();
  }
}
