import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface ListedRow {
  readonly job: string;
  /** Number of the ledger's last entry. */
  readonly head: number;
  /** Null where it is behind the job's ledger or the rules. */
  readonly content: string | null;
}

export interface ListedRows {
  /** Written after the job's findings in the same batch: kept only where those are of the same entry and rules. */
  put(place: Place, number: number, rules: number, content: string): Statement;
  /** Of every job of a company, the newest first. */
  all(company: string, rules: number): Promise<readonly ListedRow[]>;
}

const PUT = `INSERT INTO listed (company, job, number, rules, content) SELECT ?1, ?2, ?3, ?4, ?5
  WHERE EXISTS (SELECT 1 FROM finding WHERE company = ?1 AND job = ?2 AND number = ?3 AND rules = ?4)
  ON CONFLICT (company, job) DO UPDATE SET number = excluded.number, rules = excluded.rules, content = excluded.content`;
const ALL = `SELECT j.id AS job, j.head AS head, l.content AS content
  FROM (SELECT id, company, opened, (SELECT max(e.number) FROM entry AS e WHERE e.company = job.company AND e.job = job.id) AS head
      FROM job WHERE company = ?1) AS j
    LEFT JOIN listed AS l ON l.company = j.company AND l.job = j.id AND l.number = j.head AND l.rules = ?2
  ORDER BY j.opened DESC, j.id`;

export const listedIn = (database: D1Database): ListedRows => ({
  put: ({ company, job }, number, rules, content) => statement(database, PUT, company, job, number, rules, content),
  all: async (company, rules) => (await statement(database, ALL, company, rules).all<ListedRow>()).results,
});
