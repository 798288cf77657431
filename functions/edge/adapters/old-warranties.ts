import type { OldWarranty } from "#core/wire/index.ts";
import { type Statement, statement } from "./statement.ts";

export interface OldWarranties {
  all(company: string): Promise<readonly OldWarranty[]>;
  /** Takes the place of the one of the same number and part. */
  put(company: string, row: OldWarranty): Statement;
}

const PUT = `INSERT INTO old_warranty (company, number, part, content) VALUES (?1, ?2, ?3, ?4)
  ON CONFLICT (company, number, part) DO UPDATE SET content = excluded.content`;
const ALL = "SELECT content FROM old_warranty WHERE company = ?1 ORDER BY number, part";

export const oldWarrantiesIn = (database: D1Database): OldWarranties => ({
  all: async (company) =>
    (await statement(database, ALL, company).all<{ content: string }>()).results.map(({ content }) => JSON.parse(content) as OldWarranty),
  put: (company, row) => statement(database, PUT, company, row.number, row.part, JSON.stringify(row)),
});
