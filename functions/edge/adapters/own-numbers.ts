import { lookAlike } from "#core/text/index.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

/** A job by the company's own number. */
export interface Numbered {
  readonly number: string;
  readonly job: string;
  /** Digest of the line of a table that it was last opened or changed from. */
  readonly line: string | null;
}

export interface OwnNumbers {
  /** Of these numbers, those that jobs have. */
  known(company: string, numbers: readonly string[]): Promise<ReadonlyMap<string, Numbered>>;
  /** Fails as taken where another job has the number. */
  give(place: Place, number: string, line?: string): Statement;
  /** Of a job that a phone or another program opened: the first one keeps the number. */
  giveIfFree(place: Place, number: string): Statement;
  lineRead(place: Place, number: string, line: string): Statement;
}

const KNOWN = `SELECT o.number, o.job, o.line FROM json_each(?2) AS asked
  CROSS JOIN own_number AS o ON o.company = ?1 AND o.number = asked.value`;
const GIVE = "INSERT INTO own_number (company, number, job, line) VALUES (?1, ?2, ?3, ?4)";

/**
 * As numbers are compared: as nobody who reads them tells them apart, so that no second job comes under a number that looks like the
 * first one's. A number of plain letters, digits and hyphens is itself.
 */
export const plainNumber = lookAlike;

/** A number as it is kept and shown: as typed, but without blanks around it, runs of blanks as one, composed letters. */
export const tidyNumber = (typed: string): string => typed.normalize("NFC").trim().replaceAll(/\s+/g, " ");

export const ownNumbersIn = (database: D1Database): OwnNumbers => ({
  async known(company, numbers) {
    if (numbers.length === 0) return new Map();
    const { results } = await statement(database, KNOWN, company, JSON.stringify(numbers)).all<Numbered>();
    return new Map(results.map((row) => [row.number, row]));
  },
  give: ({ company, job }, number, line) => statement(database, GIVE, company, number, job, line ?? null),
  giveIfFree: ({ company, job }, number) =>
    statement(database, `${GIVE} ON CONFLICT (company, number) DO NOTHING`, company, number, job, null),
  lineRead: ({ company, job }, number, line) =>
    statement(database, "UPDATE own_number SET line = ?4 WHERE company = ?1 AND number = ?2 AND job = ?3", company, number, job, line),
});
