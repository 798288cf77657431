import { type Statement, statement } from "./statement.ts";

export interface SealKeyRow {
  /** Thumbprint of the public half by RFC 7638. */
  readonly kid: string;
  /** The public half, base64url. */
  readonly x: string;
  /** The private half, wrapped. */
  readonly wrapped: string;
  readonly made: number;
  readonly retired: number | null;
}

export interface SealKeys {
  /** All keys of a company, the one in use last. */
  all(company: string): Promise<readonly SealKeyRow[]>;
  inUse(company: string): Promise<SealKeyRow | undefined>;
  /** Refused by the database while another is in use. */
  add(company: string, key: Omit<SealKeyRow, "retired">): Statement;
  retire(company: string, at: number): Statement;
}

const COLUMNS = "kid, x, wrapped, made, retired";

export const sealKeysIn = (database: D1Database): SealKeys => ({
  all: async (company) => {
    const sql = `SELECT ${COLUMNS} FROM seal_key WHERE company = ?1 ORDER BY retired IS NULL, made, kid`;
    return (await statement(database, sql, company).all<SealKeyRow>()).results;
  },
  inUse: async (company) => {
    const sql = `SELECT ${COLUMNS} FROM seal_key WHERE company = ?1 AND retired IS NULL`;
    return (await statement(database, sql, company).first<SealKeyRow>()) ?? undefined;
  },
  add: (company, { kid, x, wrapped, made }) =>
    statement(
      database,
      "INSERT INTO seal_key (company, kid, x, wrapped, made) VALUES (?1, ?2, ?3, ?4, ?5)",
      company,
      kid,
      x,
      wrapped,
      made,
    ),
  retire: (company, at) => statement(database, "UPDATE seal_key SET retired = ?2 WHERE company = ?1 AND retired IS NULL", company, at),
});
