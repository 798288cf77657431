import type { Json } from "#core/ledger/index.ts";
import type { Place } from "./ledgers.ts";
import { statement } from "./statement.ts";

/** An entry of the company's own ledger by its kind, its content as it was entered. */
export interface CompanyFactRow {
  readonly id: string;
  readonly kind: string;
  readonly what: Json;
  /** Milliseconds, the edge's clock. */
  readonly at: number;
}

export interface CompanyFacts {
  /** Entries of these kinds, in the order of their numbers. */
  ofKinds(ledger: Place, kinds: readonly string[]): Promise<readonly CompanyFactRow[]>;
}

export const OF_KINDS = `SELECT id, kind, envelope->>'received' AS at, body->'$.what.content' AS what FROM entry
  WHERE company = ?1 AND job = ?2 AND kind IN (SELECT value FROM json_each(?3)) ORDER BY number`;

export type KeptFact = Omit<CompanyFactRow, "what"> & { readonly what: string | null };

// a body that was withheld says nothing any more
export const factsIn = (rows: readonly KeptFact[]): readonly CompanyFactRow[] =>
  rows.flatMap(({ what, ...row }) => (what === null ? [] : [{ ...row, what: JSON.parse(what) as Json }]));

export const companyFactsIn = (database: D1Database): CompanyFacts => ({
  async ofKinds({ company, job }, kinds) {
    return factsIn((await statement(database, OF_KINDS, company, job, JSON.stringify(kinds)).all<KeptFact>()).results);
  },
});
