import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { fileURLToPath } from "node:url";
import { chain, genesis, type Head, headAfter, type Json, seal } from "#core/ledger/index.ts";
import { makeStore, originalKey, type Store } from "#functions/shared/index.ts";
import { BUCKET, REGION, secretsIn, startStore } from "#infra/local/index.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { digest } from "#infra/node-digest.ts";
import { d1Over } from "./d1-over-sqlite.ts";
import { salt, sha256 } from "./edge.ts";

export const migrations = fileURLToPath(new URL("../../infra/migrations", import.meta.url));
export const D1_PLACE = `d1/miniflare-D1DatabaseObject/${"5a".repeat(32)}.sqlite`;

/** A stack's folder without the stack: its database, and its store while it is open. */
export class StackFolder {
  readonly directory: string;
  readonly database: DatabaseSync;
  #head: Head = genesis;

  private constructor(directory: string, database: DatabaseSync) {
    this.directory = directory;
    this.database = database;
  }

  static async made(directory: string): Promise<StackFolder> {
    const file = join(directory, "edge", D1_PLACE);
    await mkdir(join(file, ".."), { recursive: true });
    await secretsIn(directory);
    const database = new DatabaseSync(file);
    // as the platform's own database writes
    database.exec("PRAGMA journal_mode = WAL");
    await migrate(d1Over(database) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
    return new StackFolder(directory, database);
  }

  /** An entry at the end of the one ledger, with what it says. */
  async enter(id: string, what: Json, who?: Json): Promise<void> {
    const contents = who === undefined ? { what } : { what, who };
    const salts = who === undefined ? { what: salt() } : { what: salt(), who: salt() };
    const author = { person: "p1", phone: "f1" };
    const sealed = await seal(digest, { job: "j1", id, kind: "note-for-record", author, run: 0, made: 1, contents, salts });
    if (!sealed.ok) throw new Error(sealed.refusal.code);
    const envelope = chain(this.#head, sealed.value.sealed, 1, 2);
    const head = await headAfter(digest, envelope);
    if (!head.ok) throw new Error(head.refusal.code);
    this.#head = head.value;
    this.database
      .prepare("INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body) VALUES ('c1', 'j1', ?, ?, ?, ?, ?, ?, ?)")
      .run(
        envelope.number,
        id,
        envelope.kind,
        sealed.value.digest,
        head.value.hash,
        JSON.stringify(envelope),
        JSON.stringify(sealed.value.body),
      );
  }

  /** A photo as the edge takes one: its bytes into the store, then its row. */
  async photo(bytes: Uint8Array): Promise<string> {
    const sha = sha256(bytes);
    await this.stored(async (store) => {
      await store.put(originalKey("c1", sha), bytes, { length: bytes.length, type: "image/jpeg" });
    });
    this.database
      .prepare("INSERT INTO photo (company, sha256, bytes, type, state, stored) VALUES ('c1', ?, ?, 'image/jpeg', 'stored', 1)")
      .run(sha, bytes.length);
    return sha;
  }

  stored = <T>(use: (store: Store) => Promise<T>): Promise<T> => inStore(this.directory, use);
}

/** The store of a folder in which no stack runs, opened for this alone. */
export async function inStore<T>(directory: string, use: (store: Store) => Promise<T>): Promise<T> {
  const { storeAccessKey: accessKeyId, storeSecretKey: secretAccessKey } = await secretsIn(directory);
  const keys = { accessKeyId, secretAccessKey };
  const server = await startStore({ directory: join(directory, "store"), port: 0, bucket: BUCKET, ...keys });
  try {
    return await use(makeStore({ endpoint: server.endpoint, region: REGION, bucket: BUCKET, ...keys }));
  } finally {
    await server.close();
  }
}

/** Every row of every table, in the order of its primary key or its place. */
export function allRows(file: string): Readonly<Record<string, readonly unknown[]>> {
  const database = new DatabaseSync(file, { readOnly: true });
  try {
    const tables = database.prepare("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name").all();
    return Object.fromEntries(
      tables.map(({ name }) => [
        String(name),
        database
          .prepare(`SELECT * FROM "${String(name)}"`)
          .all()
          .map((row) => JSON.stringify(row))
          .sort(),
      ]),
    );
  } finally {
    database.close();
  }
}
