import type { NewSite } from "#core/wire/index.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface SiteRow {
  readonly id: string;
  /** Of the entry in the company's ledger. */
  readonly number: number;
  readonly content: Omit<NewSite, "id">;
}

export interface Sites {
  get(company: string, site: string): Promise<SiteRow | undefined>;
  /** Every site, the newest first, with its jobs. */
  all(company: string): Promise<readonly (SiteRow & { readonly jobs: readonly string[] })[]>;
  jobsAt(company: string, site: string): Promise<readonly string[]>;
  put(company: string, row: SiteRow): Statement;
  place(at: Place, site: string): Statement;
}

interface Row {
  readonly id: string;
  readonly number: number;
  readonly content: string;
}
const ALL = `SELECT s.id, s.number, s.content, (SELECT json_group_array(j.job) FROM job_site AS j WHERE j.company = s.company AND j.site = s.id) AS jobs
  FROM site AS s WHERE s.company = ?1 ORDER BY s.number DESC`;
const PUT = `INSERT INTO site (company, id, number, content) VALUES (?1, ?2, ?3, ?4)
  ON CONFLICT (company, id) DO UPDATE SET number = excluded.number, content = excluded.content`;
const PLACE = "INSERT INTO job_site (company, site, job) VALUES (?1, ?2, ?3) ON CONFLICT (company, site, job) DO NOTHING";

const read = ({ id, number, content }: Row): SiteRow => ({ id, number, content: JSON.parse(content) as SiteRow["content"] });

export const sitesIn = (database: D1Database): Sites => ({
  async get(company, site) {
    const row = await statement(
      database,
      "SELECT id, number, content FROM site WHERE company = ?1 AND id = ?2",
      company,
      site,
    ).first<Row>();
    return row ? read(row) : undefined;
  },
  all: async (company) =>
    (await statement(database, ALL, company).all<Row & { jobs: string }>()).results.map(({ jobs, ...row }) => ({
      ...read(row),
      jobs: JSON.parse(jobs) as string[],
    })),
  jobsAt: async (company, site) =>
    (
      await statement(database, "SELECT job FROM job_site WHERE company = ?1 AND site = ?2 ORDER BY job", company, site).all<{
        job: string;
      }>()
    ).results.map(({ job }) => job),
  put: (company, { id, number, content }) => statement(database, PUT, company, id, number, JSON.stringify(content)),
  place: ({ company, job }, site) => statement(database, PLACE, company, site, job),
});
