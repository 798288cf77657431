import { join } from "node:path";
import type { DatabaseSync } from "node:sqlite";
import { bytesOf, jsonIn, writeFlushed } from "./files.ts";
import { sealFault, sealOf } from "./seal.ts";

/** One thing that was erased, as the table of that name says it (migration 0017). */
export interface Erased {
  readonly company: string;
  readonly kind: string;
  readonly ref: string;
  readonly content: string | null;
  readonly at: number;
}

/** Beside the backups of a folder: everything that was erased until the newest of them. */
export const ERASED = "erased.json";
const ERASED_SEAL = "erased-seal.json";

const hasTable = (database: DatabaseSync): boolean =>
  database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'erased'").get() !== undefined;

/** Nothing in a database from before anything could be erased. */
export function erasedIn(database: DatabaseSync): readonly Erased[] {
  if (!hasTable(database)) return [];
  const rows = database.prepare("SELECT company, kind, ref, content, at FROM erased ORDER BY at, company, kind, ref").all();
  return rows.map((row) => ({ ...row })) as unknown as readonly Erased[];
}

export async function writeErased(folder: string, erased: readonly Erased[], secret: string): Promise<void> {
  const text = `${JSON.stringify({ kind: "asburied erased", format: 1, erased }, undefined, 1)}\n`;
  const seal = sealOf(new TextEncoder().encode(text), secret);
  await writeFlushed(join(folder, ERASED), text);
  await writeFlushed(join(folder, ERASED_SEAL), `${JSON.stringify(seal)}\n`);
}

/**
 * What lies beside the backups; nothing where there is no such file.
 * @throws where the file does not fit its seal: what it says would be taken out of everything
 */
export async function readErased(folder: string, secret: string | undefined): Promise<readonly Erased[] | undefined> {
  const [bytes, seal] = await Promise.all([bytesOf(join(folder, ERASED)), bytesOf(join(folder, ERASED_SEAL))]);
  if (bytes === undefined) return undefined;
  const fault = seal === undefined ? "has no seal" : sealFault(bytes, jsonIn(seal), secret);
  if (fault !== undefined) throw new Error(`${ERASED} ${fault}.`);
  const list = jsonIn(bytes) as { erased?: unknown } | undefined;
  if (!Array.isArray(list?.erased)) throw new Error(`${ERASED} cannot be read.`);
  return list.erased as readonly Erased[];
}
