import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

/** One part of what the owner's questions read of a job, as JSON. */
export interface ObservedRow {
  readonly job: string;
  readonly content: string;
}

export interface ObservedRows {
  /** Written after the job's findings in the same batch: kept only where those are of the same entry, so an older computation never stays. */
  put(place: Place, number: number, made: number, parts: Readonly<Record<string, string>>): readonly Statement[];
  /** One part of some jobs of a company in the order of their ids, after this one. */
  page(company: string, part: string, after: string): Promise<readonly ObservedRow[]>;
  ofJob(place: Place): Promise<Readonly<Record<string, string>> | undefined>;
  /** Jobs that have grown since, or whose rows have an older form: some of them, and how many they are. */
  behind(company: string, part: string, made: number, most: number): Promise<{ readonly jobs: readonly string[]; readonly count: number }>;
}

/** As many rows of a part as come in one answer: some megabytes at most. */
export const PAGE = 400;

const PUT = `INSERT INTO observed (company, part, job, number, made, content)
  SELECT ?1, p.key, ?2, ?3, ?4, p.value FROM json_each(?5) AS p
  WHERE (SELECT number FROM finding WHERE company = ?1 AND job = ?2) = ?3
  ON CONFLICT (company, part, job) DO UPDATE SET number = excluded.number, made = excluded.made, content = excluded.content`;
const PAGE_OF = "SELECT job, content FROM observed WHERE company = ?1 AND part = ?2 AND job > ?3 ORDER BY job LIMIT ?4";
const OF_JOB =
  "SELECT part, content FROM json_each(?3) AS asked CROSS JOIN observed AS o ON o.company = ?1 AND o.part = asked.value AND o.job = ?2";
const BEHIND = `FROM job AS j LEFT JOIN observed AS o ON o.company = j.company AND o.part = ?2 AND o.job = j.id
  WHERE j.company = ?1 AND (o.number IS NULL OR o.made <> ?3
    OR EXISTS (SELECT 1 FROM entry AS e WHERE e.company = j.company AND e.job = j.id AND e.number > o.number))`;

export const observedIn = (database: D1Database, partNames: readonly string[]): ObservedRows => ({
  put: ({ company, job }, number, made, parts) => [statement(database, PUT, company, job, number, made, JSON.stringify(parts))],
  page: async (company, part, after) => (await statement(database, PAGE_OF, company, part, after, PAGE).all<ObservedRow>()).results,
  async ofJob({ company, job }) {
    const { results } = await statement(database, OF_JOB, company, job, JSON.stringify(partNames)).all<{ part: string; content: string }>();
    return results.length === 0 ? undefined : Object.fromEntries(results.map(({ part, content }) => [part, content]));
  },
  async behind(company, part, made, most) {
    const [jobs, count] = await database.batch<{ job: string; count: number }>([
      statement(database, `SELECT j.id AS job ${BEHIND} LIMIT ?4`, company, part, made, most),
      statement(database, `SELECT count(*) AS count ${BEHIND}`, company, part, made),
    ]);
    return { jobs: (jobs?.results ?? []).map(({ job }) => job), count: count?.results[0]?.count ?? 0 };
  },
});
