import type { Json } from "#core/ledger/index.ts";
import type { Place } from "./ledgers.ts";
import { statement } from "./statement.ts";

/** An entry of the company's ledger about somebody's request for his data; a part that was withheld is null. */
export interface RequestEntry {
  readonly id: string;
  readonly kind: string;
  readonly number: number;
  readonly at: number;
  readonly person: string;
  readonly what: Json | null;
  readonly who: Json | null;
}

export interface PersonRequestRows {
  /** In the order of their numbers. */
  all(ledger: Place): Promise<readonly RequestEntry[]>;
}

const ALL = `SELECT id, kind, number, envelope->>'received' AS at, envelope->>'$.author.person' AS person,
    body->'$.what.content' AS what, body->'$.who.content' AS who
  FROM entry WHERE company = ?1 AND job = ?2 AND kind IN ('person-asked', 'person-held', 'person-answered') ORDER BY number`;

interface Row extends Omit<RequestEntry, "what" | "who"> {
  readonly what: string | null;
  readonly who: string | null;
}
const parsed = (text: string | null): Json | null => (text === null ? null : (JSON.parse(text) as Json));

export const personRequestsIn = (database: D1Database): PersonRequestRows => ({
  all: async ({ company, job }) =>
    (await statement(database, ALL, company, job).all<Row>()).results.map(({ what, who, ...row }) => ({
      ...row,
      what: parsed(what),
      who: parsed(who),
    })),
});
