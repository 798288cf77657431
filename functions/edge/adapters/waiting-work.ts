import { statement } from "./statement.ts";

export interface WaitingWork {
  readonly kind: string;
  readonly rows: number;
  /** Of the row that was tried most often. */
  readonly mostTries: number;
  /** How long the one that is due longest has been due, in milliseconds; 0 where none is due yet. */
  readonly lateBy: number;
}

/** What the edge still owes its photos, over all companies: numbers, no names. */
export async function waitingWork(database: D1Database, now: number): Promise<readonly WaitingWork[]> {
  const sql = `SELECT kind, count(*) AS rows, max(tries) AS mostTries, max(0, ?1 - min(due)) AS lateBy FROM owed GROUP BY kind ORDER BY kind`;
  return (await statement(database, sql, now).all<WaitingWork>()).results;
}
