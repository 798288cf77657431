import type { PhotoHint } from "../environment.ts";
import { statement } from "./statement.ts";

export interface OwedRow {
  readonly kind: "read" | "tell" | "compare";
  readonly company: string;
  /** read, compare: the photo; tell: job and photo with a slash between. */
  readonly ref: string;
  readonly tries: number;
}

type Named = Pick<OwedRow, "kind" | "company" | "ref">;

export interface LateRow extends OwedRow {
  /** A refusal's code; `broke` for what threw; null where nothing was heard of it. */
  readonly why: string | null;
  readonly due: number;
}

export interface Owed {
  /** Claims what is due in one statement, so that two sweeps never take the same row within its time. */
  claim(now: number): Promise<readonly OwedRow[]>;
  /** What a company's photo is still owed to its jobs. */
  tellings(company: string, sha256: string): Promise<readonly string[]>;
  paid(row: Named): Promise<void>;
  /** Why this try came to nothing. */
  failed(row: Named, why: string): Promise<void>;
  /** What was tried several times, oftenest first, and how many rows that are in all. */
  late(company: string, most: number): Promise<{ readonly rows: readonly LateRow[]; readonly count: number }>;
  /** Due now and as if never tried: these, or all that are late. Gives those that were there. */
  again(company: string, now: number, rows: readonly Named[] | undefined): Promise<readonly Named[]>;
  /** Asks the queue to hurry; a queue that does not take it loses nothing. */
  hint(hints: readonly PhotoHint[]): Promise<void>;
}

/** From so many tries on a row is shown to the office: some four minutes after it was due. */
const LATE_TRIES = 3;
/** From so many on it is laid aside: some four hours after it was due. Tried once a day from then, or when the office says so. */
export const LAID_ASIDE_TRIES = 10;

/** Between two tries of the same row: half a minute, doubled up to about an hour; a day for what is laid aside. */
const PAUSE = `CASE WHEN tries + 1 >= ${LAID_ASIDE_TRIES} THEN 86400000 ELSE 30000 * (1 << min(tries, 7)) END`;
/** A row that is due later than its longest pause was given its time by a clock that ran ahead, and would wait for it in vain. */
const OUT_OF_REACH = `CASE WHEN tries >= ${LAID_ASIDE_TRIES} THEN 86460000 ELSE 3900000 END`;
const CLAIM = `UPDATE owed SET due = ?1 + ${PAUSE}, tries = tries + 1
  WHERE (kind, company, ref) IN (SELECT kind, company, ref FROM owed
    WHERE (due <= ?1 OR due > ?1 + ${OUT_OF_REACH}) AND company NOT IN (SELECT company FROM closed) ORDER BY due LIMIT 100)
  RETURNING kind, company, ref, tries`;
const FAILED = "UPDATE owed SET why = ?4 WHERE kind = ?1 AND company = ?2 AND ref = ?3";
const LATE = `FROM owed WHERE company = ?1 AND tries >= ${LATE_TRIES}`;
const AGAIN = "UPDATE owed SET due = ?2, tries = 0";

export const owedIn = (database: D1Database, queue: Queue<PhotoHint>): Owed => ({
  claim: async (now) => (await statement(database, CLAIM, now).all<OwedRow>()).results,
  tellings: async (company, sha256) => {
    const sql = "SELECT ref FROM owed WHERE kind = 'tell' AND company = ?1 AND ref LIKE '%/' || ?2";
    return (await statement(database, sql, company, sha256).all<{ ref: string }>()).results.map(({ ref }) => ref);
  },
  paid: async ({ kind, company, ref }) => {
    await statement(database, "DELETE FROM owed WHERE kind = ?1 AND company = ?2 AND ref = ?3", kind, company, ref).run();
  },
  failed: async ({ kind, company, ref }, why) => {
    await statement(database, FAILED, kind, company, ref, why).run();
  },
  late: async (company, most) => {
    const [rows, counted] = await database.batch([
      statement(database, `SELECT kind, company, ref, tries, why, due ${LATE} ORDER BY tries DESC, due, kind, ref LIMIT ?2`, company, most),
      statement(database, `SELECT count(*) AS count ${LATE}`, company),
    ]);
    const [first] = (counted?.results ?? []) as { count: number }[];
    return { rows: (rows?.results ?? []) as LateRow[], count: first?.count ?? 0 };
  },
  again: async (company, now, rows) => {
    const returning = "RETURNING kind, company, ref";
    const asked =
      rows === undefined
        ? statement(database, `${AGAIN} WHERE company = ?1 AND tries >= ${LATE_TRIES} ${returning}`, company, now)
        : statement(
            database,
            `${AGAIN} WHERE company = ?1 AND (kind, ref) IN (SELECT value->>'kind', value->>'ref' FROM json_each(?3)) ${returning}`,
            company,
            now,
            JSON.stringify(rows),
          );
    return (await asked.all<Named>()).results;
  },
  hint: async (hints) => {
    // a queue takes so many at a time
    for (let i = 0; i < hints.length; i += 100)
      await queue.sendBatch(hints.slice(i, i + 100).map((body) => ({ body }))).catch(() => undefined);
  },
});
