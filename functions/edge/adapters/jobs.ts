import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

/** What is stored of a job's findings: JSON made by `computed.ts`. */
export interface StoredFindings {
  readonly number: number;
  readonly rules: number;
  readonly computed: string;
}

export interface Jobs {
  get(place: Place): Promise<StoredFindings | undefined>;
  /** Keeps what was computed from more entries, or by newer rules, with what goes with it. */
  put(place: Place, findings: StoredFindings, also?: readonly Statement[]): Promise<void>;
  hasJob(place: Place): Promise<boolean>;
  addJob(place: Place, opened: number): Statement;
  /** Every job of a company, the newest first. */
  jobs(company: string): Promise<readonly string[]>;
}

const GET = "SELECT number, rules, computed FROM finding WHERE company = ?1 AND job = ?2";
const PUT = `INSERT INTO finding (company, job, number, rules, computed) VALUES (?1, ?2, ?3, ?4, ?5)
  ON CONFLICT (company, job) DO UPDATE SET number = excluded.number, rules = excluded.rules, computed = excluded.computed
  WHERE excluded.rules > finding.rules OR (excluded.rules = finding.rules AND excluded.number >= finding.number)`;
const HAS = "SELECT 1 AS there FROM job WHERE company = ?1 AND id = ?2";
const ADD = "INSERT INTO job (company, id, opened) VALUES (?1, ?2, ?3) ON CONFLICT (company, id) DO NOTHING";
const JOBS = "SELECT id FROM job WHERE company = ?1 ORDER BY opened DESC, id";

export const jobsIn = (database: D1Database): Jobs => ({
  get: async ({ company, job }) => (await statement(database, GET, company, job).first<StoredFindings>()) ?? undefined,
  put: async ({ company, job }, { number, rules, computed }, also = []) => {
    await database.batch([statement(database, PUT, company, job, number, rules, computed), ...also]);
  },
  hasJob: async ({ company, job }) => (await statement(database, HAS, company, job).first()) !== null,
  addJob: ({ company, job }, opened) => statement(database, ADD, company, job, opened),
  jobs: async (company) => (await statement(database, JOBS, company).all<{ id: string }>()).results.map(({ id }) => id),
});
