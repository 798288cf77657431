import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface AfterWorkRows {
  /** Written after the job's findings in the same batch: kept only where those are of the same entry. */
  put(place: Place, number: number, content: string): Statement;
  get(place: Place): Promise<string | undefined>;
  /** Of every job of a company, the newest first; `content` is null where it is behind the job's ledger. */
  all(company: string): Promise<readonly { readonly job: string; readonly content: string | null }[]>;
}

const PUT = `INSERT INTO after_work (company, job, number, content) SELECT ?1, ?2, ?3, ?4
  WHERE (SELECT number FROM finding WHERE company = ?1 AND job = ?2) = ?3
  ON CONFLICT (company, job) DO UPDATE SET number = excluded.number, content = excluded.content`;
const GET = "SELECT content FROM after_work WHERE company = ?1 AND job = ?2";
const ALL = `SELECT j.id AS job, a.content AS content FROM job AS j LEFT JOIN after_work AS a ON a.company = j.company AND a.job = j.id
    AND a.number = (SELECT max(e.number) FROM entry AS e WHERE e.company = j.company AND e.job = j.id)
  WHERE j.company = ?1 ORDER BY j.opened DESC, j.id`;

export const afterWorkIn = (database: D1Database): AfterWorkRows => ({
  put: ({ company, job }, number, content) => statement(database, PUT, company, job, number, content),
  get: async ({ company, job }) => (await statement(database, GET, company, job).first<{ content: string }>())?.content,
  all: async (company) => (await statement(database, ALL, company).all<{ job: string; content: string | null }>()).results,
});
