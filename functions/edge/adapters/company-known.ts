import type { ObservedRow } from "../questions/parts.ts";
import { type KeptPerson, type KeptVersion, NEWEST, PEOPLE, type PersonRow, personIn, type VersionRow, versionIn } from "./companies.ts";
import { type CompanyFactRow, factsIn, type KeptFact, OF_KINDS } from "./company-facts.ts";
import type { Place } from "./ledgers.ts";
import { type LateJobs, lateIn, lateStatement, pageStatements } from "./observed.ts";
import { type Statement, statement } from "./statement.ts";

/** What the answers to the owner's questions need beside the jobs' rows. */
export interface CompanyKnown {
  readonly people: readonly PersonRow[];
  /** The newest version of each of the company's things. */
  readonly things: readonly VersionRow[];
  readonly facts: readonly CompanyFactRow[];
}

/** What is asked for beside it: parts of the jobs' rows, the one that every job has first, and as many late jobs as are named. */
export interface RowsWanted {
  readonly parts: readonly string[];
  readonly made: number;
  readonly late: number;
}

export interface KnownWithRows extends CompanyKnown {
  readonly late: LateJobs;
  /** The first page of rows, a list for each part. */
  readonly page: readonly (readonly ObservedRow[])[];
}

/** Everything that answers begin with in one round trip; `ledger`: the company's own, of which entries of these kinds are read. */
export type KnownOf = (ledger: Place, kinds: readonly string[], rows: RowsWanted) => Promise<KnownWithRows>;

export const knownStatements = (database: D1Database, { company, job }: Place, kinds: readonly string[]): readonly Statement[] => [
  statement(database, PEOPLE, company),
  statement(database, NEWEST, company),
  statement(database, OF_KINDS, company, job, JSON.stringify(kinds)),
];

const rowsIn = <T>(result: D1Result | undefined): readonly T[] => (result?.results ?? []) as readonly T[];

export const knownIn =
  (database: D1Database): KnownOf =>
  async (ledger, kinds, { parts, made, late: most }) => {
    const [people, things, facts, late, ...page] = await database.batch([
      ...knownStatements(database, ledger, kinds),
      lateStatement(database, ledger.company, parts[0] ?? "", made, most),
      ...pageStatements(database, ledger.company, parts, ""),
    ]);
    return {
      people: rowsIn<KeptPerson>(people).map(personIn),
      things: rowsIn<KeptVersion>(things).map(versionIn),
      facts: factsIn(rowsIn<KeptFact>(facts)),
      late: lateIn(rowsIn(late)),
      page: page.map((list) => rowsIn<ObservedRow>(list)),
    };
  };
