import { type Digest, digestBy } from "#core/ledger/index.ts";
import { makeStore, type Store } from "#functions/shared/index.ts";
import { KnownSessions } from "./access/known-sessions.ts";
import { type AfterWorkRows, afterWorkIn } from "./adapters/after-work.ts";
import { type Challenges, challengesIn } from "./adapters/challenges.ts";
import { type Companies, companiesIn } from "./adapters/companies.ts";
import { type CompanyFacts, companyFactsIn } from "./adapters/company-facts.ts";
import { type KnownOf, knownIn } from "./adapters/company-known.ts";
import type { NoteDoor } from "./adapters/doors.ts";
import { type Erasing, erasingIn } from "./adapters/erased.ts";
import { type Jobs, jobsIn } from "./adapters/jobs.ts";
import { type JoinCodes, joinCodesIn } from "./adapters/join-codes.ts";
import { type Ledgers, ledgersIn } from "./adapters/ledgers.ts";
import { type Likenesses, likenessesIn } from "./adapters/likenesses.ts";
import { type Links, linksIn } from "./adapters/links.ts";
import { type ListedRows, listedIn } from "./adapters/listed.ts";
import { type Machines, machinesAt } from "./adapters/machines.ts";
import { type Naming, namingIn } from "./adapters/naming.ts";
import { type ObservedRows, observedIn } from "./adapters/observed.ts";
import { type OldWarranties, oldWarrantiesIn } from "./adapters/old-warranties.ts";
import { type OthersLinks, othersLinksIn } from "./adapters/others-links.ts";
import { type Owed, owedIn } from "./adapters/owed.ts";
import { type OwnNumbers, ownNumbersIn } from "./adapters/own-numbers.ts";
import { type Papers, papersIn } from "./adapters/papers.ts";
import { type Passkeys, passkeysIn } from "./adapters/passkeys.ts";
import { type PeriodRows, periodsIn } from "./adapters/periods.ts";
import { type PersonRequestRows, personRequestsIn } from "./adapters/person-requests.ts";
import { type Photos, photosIn } from "./adapters/photos.ts";
import { type Records, recordsIn } from "./adapters/records.ts";
import { type Releases, releasesIn } from "./adapters/releases.ts";
import { type SealKeys, sealKeysIn } from "./adapters/seal-keys.ts";
import { type SeenPairs, seenPairsIn } from "./adapters/seen-before.ts";
import { type Sessions, sessionsIn } from "./adapters/sessions.ts";
import { type Sites, sitesIn } from "./adapters/sites.ts";
import { type Tries, triesIn } from "./adapters/tries.ts";
import type { Environment } from "./environment.ts";
import { HeldJobs } from "./jobs/held.ts";
import { Lanes } from "./lanes.ts";
import { BASE, observedParts } from "./questions/parts.ts";
import { type Directory, directoryOf } from "./shards/directory.ts";

/** Instants in milliseconds. The one clock of the edge, handed in so that tests can freeze it. */
export type Clock = () => number;

/** Everything that is reached in one database: rows of the company that is asked about, and of no other. */
interface OfCompany {
  readonly database: D1Database;
  readonly ledgers: Ledgers;
  readonly jobs: Jobs;
  readonly erasing: Erasing;
  readonly periods: PeriodRows;
  readonly personRequests: PersonRequestRows;
  readonly naming: Naming;
  readonly observed: ObservedRows;
  readonly afterWork: AfterWorkRows;
  readonly listed: ListedRows;
  readonly oldWarranties: OldWarranties;
  readonly othersLinks: OthersLinks;
  readonly papers: Papers;
  readonly ownNumbers: OwnNumbers;
  readonly sites: Sites;
  readonly companies: Companies;
  readonly companyFacts: CompanyFacts;
  readonly known: KnownOf;
  readonly sessions: Sessions;
  readonly links: Links;
  readonly passkeys: Passkeys;
  readonly joinCodes: JoinCodes;
  readonly photos: Photos;
  readonly likenesses: Likenesses;
  readonly seenPairs: SeenPairs;
  readonly owed: Owed;
  readonly records: Records;
  readonly releases: Releases;
  readonly sealKeys: SealKeys;
}

/** Everything that a route may reach. */
export interface Services extends OfCompany {
  readonly environment: Environment;
  readonly clock: Clock;
  readonly digest: Digest;
  readonly directory: Directory;
  readonly challenges: Challenges;
  readonly tries: Tries;
  readonly machines: Machines;
  readonly store: Store;
  readonly lanes: Lanes;
  readonly held: HeldJobs;
  readonly knownSessions: KnownSessions;
}

const lanes = new Lanes();
const held = new HeldJobs();
const knownSessions = new KnownSessions();
const digest: Digest = digestBy({
  sha256: (bytes) => crypto.subtle.digest("SHA-256", bytes),
  encode: (text) => new TextEncoder().encode(text),
});

export function ofCompany(environment: Environment, database: D1Database, note: NoteDoor): OfCompany {
  return {
    database,
    ledgers: ledgersIn(database),
    jobs: jobsIn(database),
    erasing: erasingIn(database),
    periods: periodsIn(database),
    personRequests: personRequestsIn(database),
    naming: namingIn(database),
    observed: observedIn(database, [BASE, ...observedParts]),
    afterWork: afterWorkIn(database),
    listed: listedIn(database),
    oldWarranties: oldWarrantiesIn(database),
    othersLinks: othersLinksIn(database, note),
    papers: papersIn(database),
    ownNumbers: ownNumbersIn(database),
    sites: sitesIn(database),
    companies: companiesIn(database),
    companyFacts: companyFactsIn(database),
    known: knownIn(database),
    sessions: sessionsIn(database, note),
    links: linksIn(database, note),
    passkeys: passkeysIn(database, note),
    joinCodes: joinCodesIn(database, environment.SERVICE_SECRET, note),
    photos: photosIn(database),
    likenesses: likenessesIn(database),
    seenPairs: seenPairsIn(database),
    owed: owedIn(database, environment.MEDIA_QUEUE),
    records: recordsIn(database),
    releases: releasesIn(database, note),
    sealKeys: sealKeysIn(database),
  };
}

/** Before a company is known in an installation of several shards: to ask a row of one then is a bug and throws. */
const nowhere = {
  prepare: (sql: string) => {
    throw new Error(`no company is known yet for: ${sql}`);
  },
} as unknown as D1Database;

/**
 * What a request begins with. With one database everything lies in it; with several, `at` and `behind` (shards/reach.ts) give the
 * same services for the company that is asked about.
 */
export function servicesOf(environment: Environment, clock: Clock): Services {
  const directory = directoryOf(environment, clock);
  const isOne = directory.shards.length <= 1;
  return {
    environment,
    clock,
    digest,
    directory,
    challenges: challengesIn(environment.DB),
    tries: triesIn(environment.DB, environment.SERVICE_SECRET),
    ...ofCompany(environment, isOne ? environment.DB : nowhere, async () => true),
    machines: machinesAt(environment, clock),
    store: makeStore({
      endpoint: environment.STORE_ENDPOINT,
      region: environment.STORE_REGION,
      bucket: environment.STORE_BUCKET,
      accessKeyId: environment.STORE_ACCESS_KEY,
      secretAccessKey: environment.STORE_SECRET_KEY,
    }),
    lanes,
    held,
    knownSessions,
  };
}
