import { statement } from "./statement.ts";

export interface WaitingWork {
  readonly kind: string;
  readonly rows: number;
  /** Of the row that was tried most often. */
  readonly mostTries: number;
  /** How long the one that is due longest has been due, in milliseconds; 0 where none is due yet. */
  readonly lateBy: number;
}

/** What the edge still owes its photos, over all companies and shards: numbers, no names. */
export async function waitingWork(shards: readonly D1Database[], now: number): Promise<readonly WaitingWork[]> {
  const sql = `SELECT kind, count(*) AS rows, max(tries) AS mostTries, max(0, ?1 - min(due)) AS lateBy FROM owed
    WHERE company NOT IN (SELECT company FROM closed) GROUP BY kind ORDER BY kind`;
  const lists = await Promise.all(shards.map((shard) => statement(shard, sql, now).all<WaitingWork>()));
  const byKind = new Map<string, WaitingWork>();
  for (const row of lists.flatMap(({ results }) => results)) {
    const before = byKind.get(row.kind) ?? { kind: row.kind, rows: 0, mostTries: 0, lateBy: 0 };
    byKind.set(row.kind, {
      kind: row.kind,
      rows: before.rows + row.rows,
      mostTries: Math.max(before.mostTries, row.mostTries),
      lateBy: Math.max(before.lateBy, row.lateBy),
    });
  }
  return [...byKind.values()].sort((a, b) => (a.kind < b.kind ? -1 : 1));
}
