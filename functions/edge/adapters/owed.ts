import type { PhotoHint } from "../environment.ts";
import { statement } from "./statement.ts";

export interface OwedRow {
  readonly kind: "read" | "tell" | "compare";
  readonly company: string;
  /** read, compare: the photo; tell: job and photo with a slash between. */
  readonly ref: string;
  readonly tries: number;
}

export interface Owed {
  /** Claims what is due in one statement, so that two sweeps never take the same row within its time. */
  claim(now: number): Promise<readonly OwedRow[]>;
  /** What a company's photo is still owed to its jobs. */
  tellings(company: string, sha256: string): Promise<readonly string[]>;
  paid(row: Pick<OwedRow, "kind" | "company" | "ref">): Promise<void>;
  /** Asks the queue to hurry; a queue that does not take it loses nothing. */
  hint(hints: readonly PhotoHint[]): Promise<void>;
}

/** Between two tries of the same row: half a minute, doubled up to about an hour. */
const CLAIM = `UPDATE owed SET due = ?1 + 30000 * (1 << min(tries, 7)), tries = tries + 1
  WHERE (kind, company, ref) IN (SELECT kind, company, ref FROM owed WHERE due <= ?1 ORDER BY due LIMIT 100)
  RETURNING kind, company, ref, tries`;

export const owedIn = (database: D1Database, queue: Queue<PhotoHint>): Owed => ({
  claim: async (now) => (await statement(database, CLAIM, now).all<OwedRow>()).results,
  tellings: async (company, sha256) => {
    const sql = "SELECT ref FROM owed WHERE kind = 'tell' AND company = ?1 AND ref LIKE '%/' || ?2";
    return (await statement(database, sql, company, sha256).all<{ ref: string }>()).results.map(({ ref }) => ref);
  },
  paid: async ({ kind, company, ref }) => {
    await statement(database, "DELETE FROM owed WHERE kind = ?1 AND company = ?2 AND ref = ?3", kind, company, ref).run();
  },
  hint: async (hints) => {
    if (hints.length === 0) return;
    await queue.sendBatch(hints.map((body) => ({ body }))).catch(() => undefined);
  },
});
