import type { ObservedRow } from "../questions/parts.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface ObservedRows {
  /** Written after the job's findings in the same batch: kept only where those are of the same entry, so an older computation never stays. */
  put(place: Place, number: number, made: number, parts: Readonly<Record<string, string>>): readonly Statement[];
  /** Some jobs of a company in the order of their ids, after this one: a list for each part, all of them of the same jobs. */
  page(company: string, parts: readonly string[], after: string): Promise<readonly (readonly ObservedRow[])[]>;
  ofJob(place: Place): Promise<Readonly<Record<string, string>>>;
}

/** Jobs that have grown since, or whose rows have an older form: some of them, and how many they are. */
export interface LateJobs {
  readonly jobs: readonly string[];
  readonly count: number;
}

/** As many jobs as come in one answer: some megabytes at most. */
export const PAGE = 200;

const PUT = `INSERT INTO observed (company, part, job, number, made, content)
  SELECT ?1, p.key, ?2, ?3, ?4, p.value FROM json_each(?5) AS p
  WHERE (SELECT number FROM finding WHERE company = ?1 AND job = ?2) = ?3
  ON CONFLICT (company, part, job) DO UPDATE SET number = excluded.number, made = excluded.made, content = excluded.content`;
const CAUGHT_UP = `DELETE FROM observed_late WHERE company = ?1 AND job = ?2 AND number <= ?3
  AND (SELECT number FROM finding WHERE company = ?1 AND job = ?2) = ?3`;
/** Every part of a job is written in one batch, so lists of as many jobs after the same one are of the same jobs. */
export const PAGE_OF = "SELECT job, content FROM observed WHERE company = ?1 AND part = ?2 AND job > ?3 ORDER BY job LIMIT ?4";
const OF_JOB =
  "SELECT part, content FROM json_each(?3) AS asked CROSS JOIN observed AS o ON o.company = ?1 AND o.part = asked.value AND o.job = ?2";
// the company's own ledger grows as well, and is no job
const BEHIND = `SELECT job, count(*) OVER () AS count FROM (
    SELECT l.job FROM observed_late AS l JOIN job AS j ON j.company = l.company AND j.id = l.job WHERE l.company = ?1
    UNION SELECT job FROM observed WHERE company = ?1 AND part = ?2 AND made <> ?3)
  LIMIT ?4`;

export const pageStatements = (database: D1Database, company: string, parts: readonly string[], after: string): readonly Statement[] =>
  parts.map((part) => statement(database, PAGE_OF, company, part, after, PAGE));

/** `part`: the one of which every job has a row; `made`: the form that rows have now; `most`: as many jobs as are named. */
export const lateStatement = (database: D1Database, company: string, part: string, made: number, most: number): Statement =>
  statement(database, BEHIND, company, part, made, most);

export const lateIn = (rows: readonly { readonly job: string; readonly count: number }[]): LateJobs => ({
  jobs: rows.map(({ job }) => job),
  count: rows[0]?.count ?? 0,
});

export const observedIn = (database: D1Database, partNames: readonly string[]): ObservedRows => ({
  put: ({ company, job }, number, made, parts) => [
    statement(database, PUT, company, job, number, made, JSON.stringify(parts)),
    statement(database, CAUGHT_UP, company, job, number),
  ],
  async page(company, parts, after) {
    const lists = await database.batch<ObservedRow>([...pageStatements(database, company, parts, after)]);
    return lists.map(({ results }) => results);
  },
  async ofJob({ company, job }) {
    const { results } = await statement(database, OF_JOB, company, job, JSON.stringify(partNames)).all<{ part: string; content: string }>();
    return Object.fromEntries(results.map(({ part, content }) => [part, content]));
  },
});
