import { type Statement, statement } from "./statement.ts";

/** Papers as PDF, by the SHA-256 of their bytes. */
export interface Papers {
  /** Its bytes' number; undefined: not there. */
  get(company: string, sha256: string): Promise<number | undefined>;
  /** The same, for a batch. */
  adding(company: string, paper: { readonly sha256: string; readonly bytes: number }, now: number): Statement;
  add(company: string, paper: { readonly sha256: string; readonly bytes: number }, now: number): Promise<void>;
}

const ADD = "INSERT INTO paper (company, sha256, bytes, stored) VALUES (?1, ?2, ?3, ?4) ON CONFLICT (company, sha256) DO NOTHING";

export const papersIn = (database: D1Database): Papers => ({
  async get(company, sha256) {
    const sql = "SELECT bytes FROM paper WHERE company = ?1 AND sha256 = ?2";
    return (await statement(database, sql, company, sha256).first<{ bytes: number }>())?.bytes;
  },
  adding: (company, { sha256, bytes }, now) => statement(database, ADD, company, sha256, bytes, now),
  async add(company, { sha256, bytes }, now) {
    await statement(database, ADD, company, sha256, bytes, now).run();
  },
});
