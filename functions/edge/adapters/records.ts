import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface RecordRow {
  readonly id: string;
  readonly job: string;
  readonly version: number;
  readonly edition: "customer" | "company";
  readonly head_number: number;
  readonly head_hash: string;
  readonly pages: number;
  readonly bytes: number;
  readonly sha256: string;
  readonly issued: number;
}

export interface Records {
  get(company: string, record: string): Promise<RecordRow | undefined>;
  ofJob(place: Place): Promise<readonly RecordRow[]>;
  add(company: string, row: RecordRow): Statement;
}

const COLUMNS = "id, job, version, edition, head_number, head_hash, pages, bytes, sha256, issued";
const ADD = `INSERT INTO record (company, ${COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)`;

export const recordsIn = (database: D1Database): Records => ({
  get: async (company, record) =>
    (await statement(database, `SELECT ${COLUMNS} FROM record WHERE company = ?1 AND id = ?2`, company, record).first<RecordRow>()) ??
    undefined,
  ofJob: async ({ company, job }) =>
    (
      await statement(
        database,
        `SELECT ${COLUMNS} FROM record WHERE company = ?1 AND job = ?2 ORDER BY version`,
        company,
        job,
      ).all<RecordRow>()
    ).results,
  add: (company, r) =>
    statement(database, ADD, company, r.id, r.job, r.version, r.edition, r.head_number, r.head_hash, r.pages, r.bytes, r.sha256, r.issued),
});
