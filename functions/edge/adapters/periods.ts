import type { CompanyRow } from "./companies.ts";
import { statement } from "./statement.ts";

export interface PeriodRows {
  /** When somebody last entered something in each job of a company; what the program says and withholds counts as nothing. Milliseconds. */
  lastEntered(company: string): Promise<ReadonlyMap<string, number>>;
  /** Companies with the day on which their periods were last looked at. */
  companies(): Promise<readonly (Pick<CompanyRow, "id" | "zone"> & { readonly day: string | null })[]>;
  /** When the oldest job of a company was opened, milliseconds; undefined where it has none. */
  oldest(company: string): Promise<number | undefined>;
  /** Takes the look of a day: false where another has it. */
  take(company: string, day: string): Promise<boolean>;
}

const LAST = `SELECT e.job, max(e.envelope ->> 'received') AS at FROM job AS j JOIN entry AS e ON e.company = j.company AND e.job = j.id
  WHERE j.company = ?1 AND e.kind NOT IN ('body-withheld', 'picture-read', 'rules-moved') GROUP BY e.job`;
const COMPANIES = `SELECT c.id, c.zone, p.day FROM company AS c LEFT JOIN period_day AS p ON p.company = c.id
  WHERE c.id NOT IN (SELECT company FROM closed) ORDER BY c.id`;
const TAKE = `INSERT INTO period_day (company, day) VALUES (?1, ?2)
  ON CONFLICT (company) DO UPDATE SET day = excluded.day WHERE period_day.day <> excluded.day RETURNING company`;

export const periodsIn = (database: D1Database): PeriodRows => ({
  lastEntered: async (company) =>
    new Map((await statement(database, LAST, company).all<{ job: string; at: number }>()).results.map(({ job, at }) => [job, at])),
  oldest: async (company) =>
    (await statement(database, "SELECT min(opened) AS at FROM job WHERE company = ?1", company).first<{ at: number | null }>())?.at ??
    undefined,
  companies: async () => (await statement(database, COMPANIES).all<{ id: string; zone: string; day: string | null }>()).results,
  take: async (company, day) => (await statement(database, TAKE, company, day).first()) !== null,
});
