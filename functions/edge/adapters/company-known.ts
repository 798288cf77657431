import { type KeptPerson, type KeptVersion, NEWEST, PEOPLE, type PersonRow, personIn, type VersionRow, versionIn } from "./companies.ts";
import { type CompanyFactRow, factsIn, type KeptFact, OF_KINDS } from "./company-facts.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

/** What the answers to the owner's questions need beside the jobs' rows. */
export interface CompanyKnown {
  readonly people: readonly PersonRow[];
  /** The newest version of each of the company's things. */
  readonly things: readonly VersionRow[];
  readonly facts: readonly CompanyFactRow[];
}

/** Everything about a company in one round trip; `ledger`: its own, of which entries of these kinds are read. */
export type KnownOf = (ledger: Place, kinds: readonly string[]) => Promise<CompanyKnown>;

export const knownStatements = (database: D1Database, { company, job }: Place, kinds: readonly string[]): readonly Statement[] => [
  statement(database, PEOPLE, company),
  statement(database, NEWEST, company),
  statement(database, OF_KINDS, company, job, JSON.stringify(kinds)),
];

const rowsIn = <T>(result: D1Result | undefined): readonly T[] => (result?.results ?? []) as readonly T[];

export const knownIn =
  (database: D1Database): KnownOf =>
  async (ledger, kinds) => {
    const [people, things, facts] = await database.batch([...knownStatements(database, ledger, kinds)]);
    return {
      people: rowsIn<KeptPerson>(people).map(personIn),
      things: rowsIn<KeptVersion>(things).map(versionIn),
      facts: factsIn(rowsIn<KeptFact>(facts)),
    };
  };
