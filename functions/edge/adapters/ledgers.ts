import type { AttachedVersion, Body, Envelope, Head, Json } from "#core/ledger/index.ts";
import { genesis } from "#core/ledger/index.ts";
import { isNotSo, isTaken, type Statement, statement, unless } from "./statement.ts";

/** One ledger: a job of a company. */
export interface Place {
  readonly company: string;
  readonly job: string;
}

/** An entry in its place, with its digest and the hash of its envelope. */
export interface StoredEntry {
  readonly envelope: Envelope;
  readonly body: Body;
  readonly digest: string;
  readonly hash: string;
}

export interface Stand {
  readonly head: Head;
  /** Of the ids asked for, those that the ledger has. */
  readonly known: ReadonlyMap<string, { readonly number: number; readonly digest: string }>;
  /** What stands after the head that was asked about; undefined where none was, or where the ledger does not have it. */
  readonly since?: readonly StoredEntry[] | undefined;
}

/** New entries of one ledger. */
export interface Addition {
  readonly place: Place;
  readonly rows: readonly StoredEntry[];
}

export interface Ledgers {
  stand(place: Place, ids: readonly string[], after?: Head): Promise<Stand>;
  read(place: Place): Promise<readonly StoredEntry[]>;
  /** What stands after this head; undefined where the ledger does not have it. */
  readSince(place: Place, head: Head): Promise<readonly StoredEntry[] | undefined>;
  /** All rows and what goes with them, or nothing: false when another was first with a number or an id, or something is not so any more. */
  write(additions: readonly Addition[], also: readonly Statement[]): Promise<boolean>;
  /** Fails in a batch where this is not an entry of the ledger by now; a later one fails by its number. */
  unlessMoved(place: Place, head: Head): Statement;
  /** The contents of a company's versions by their digests; those that are not there are left out. */
  versions(company: string, digests: readonly string[]): Promise<readonly AttachedVersion[]>;
  /** Puts a body with parts withheld in the place of the whole one. */
  replaceBody(place: Place, id: string, body: Body): Statement;
}

/** Characters of rows that go into one statement: D1 takes 2 MB a value, and a row's text may double when it is escaped. */
const MOST_TOGETHER = 700_000;
const ALONE = 300_000;

const HEAD = "SELECT number, hash FROM entry WHERE company = ?1 AND job = ?2 ORDER BY number DESC LIMIT 1";
const KNOWN = `SELECT e.id, e.number, e.digest FROM json_each(?3) AS sent
  CROSS JOIN entry AS e ON e.company = ?1 AND e.job = ?2 AND e.id = sent.value`;
const READ = "SELECT digest, hash, envelope, body FROM entry WHERE company = ?1 AND job = ?2 ORDER BY number";
const SINCE = "SELECT digest, hash, envelope, body FROM entry WHERE company = ?1 AND job = ?2 AND number >= ?3 ORDER BY number";
const MANY = `INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body)
  SELECT ?1, ?2, value->>'number', value->>'id', value->>'kind', value->>'digest', value->>'hash', value->>'envelope', value->>'body'
  FROM json_each(?3)`;
const ONE = `INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body)
  VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)`;
const VERSIONS = `SELECT v.kind, v.digest, v.content FROM json_each(?2) AS wanted
  CROSS JOIN version AS v ON v.company = ?1 AND v.digest = wanted.value GROUP BY v.digest ORDER BY v.digest`;
/** What the owner's questions read of the job is behind from now on. */
const LATE = `INSERT INTO observed_late (company, job, number) VALUES (?1, ?2, ?3)
  ON CONFLICT (company, job) DO UPDATE SET number = excluded.number`;
const MOVED = "NOT EXISTS (SELECT 1 FROM entry WHERE company = ?1 AND job = ?2 AND number = ?3 AND hash = ?4)";
const BODY = "UPDATE entry SET body = ?4 WHERE company = ?1 AND job = ?2 AND id = ?3";

interface Row {
  readonly number: number;
  readonly id: string;
  readonly kind: string;
  readonly digest: string;
  readonly hash: string;
  readonly envelope: string;
  readonly body: string;
}

const rowOf = ({ envelope, body, digest, hash }: StoredEntry): Row => ({
  number: envelope.number,
  id: envelope.id,
  kind: envelope.kind,
  digest,
  hash,
  envelope: JSON.stringify(envelope),
  body: JSON.stringify(body),
});

const entryIn = ({ digest, hash, envelope, body }: Row): StoredEntry => ({
  envelope: JSON.parse(envelope) as Envelope,
  body: JSON.parse(body) as Body,
  digest,
  hash,
});

/** Of rows that begin with the one of this head, those after it; undefined where they begin with another. */
function sinceIn(rows: readonly Row[], head: Head): readonly StoredEntry[] | undefined {
  if (head.number === genesis.number) return rows.map(entryIn);
  return rows[0]?.hash === head.hash ? rows.slice(1).map(entryIn) : undefined;
}

export function ledgersIn(database: D1Database): Ledgers {
  const inserts = ({ company, job }: Place, rows: readonly Row[]): Statement[] => {
    const list: Statement[] = [];
    let together: Row[] = [];
    let size = 0;
    const close = () => {
      if (together.length > 0) list.push(statement(database, MANY, company, job, JSON.stringify(together)));
      together = [];
      size = 0;
    };
    for (const row of rows) {
      const length = row.envelope.length + row.body.length;
      if (length > ALONE) {
        list.push(statement(database, ONE, company, job, row.number, row.id, row.kind, row.digest, row.hash, row.envelope, row.body));
        continue;
      }
      if (size + length > MOST_TOGETHER) close();
      together.push(row);
      size += length;
    }
    close();
    const last = rows.at(-1);
    return last === undefined ? list : [...list, statement(database, LATE, company, job, last.number)];
  };

  return {
    async stand({ company, job }, ids, after) {
      const [heads, known, rows] = await database.batch<Row>([
        statement(database, HEAD, company, job),
        statement(database, KNOWN, company, job, JSON.stringify(ids)),
        ...(after === undefined ? [] : [statement(database, SINCE, company, job, after.number)]),
      ]);
      const last = heads?.results[0];
      return {
        head: last ? { number: last.number, hash: last.hash } : genesis,
        known: new Map((known?.results ?? []).map(({ id, number, digest }) => [id, { number, digest }])),
        since: after && sinceIn(rows?.results ?? [], after),
      };
    },
    read: async ({ company, job }) => (await statement(database, READ, company, job).all<Row>()).results.map(entryIn),
    async readSince({ company, job }, head) {
      return sinceIn((await statement(database, SINCE, company, job, head.number).all<Row>()).results, head);
    },
    async write(additions, also) {
      try {
        await database.batch([...additions.flatMap(({ place, rows }) => inserts(place, rows.map(rowOf))), ...also]);
        return true;
      } catch (thrown) {
        if (isTaken(thrown) || isNotSo(thrown)) return false;
        throw thrown;
      }
    },
    unlessMoved: ({ company, job }, { number, hash }) => unless(database, MOVED, company, job, number, hash),
    async versions(company, digests) {
      if (digests.length === 0) return [];
      const { results } = await statement(database, VERSIONS, company, JSON.stringify(digests)).all<{
        kind: string;
        digest: string;
        content: string;
      }>();
      return results.map(({ kind, digest, content }) => ({ kind, digest, content: JSON.parse(content) as Json }));
    },
    replaceBody: ({ company, job }, id, body) => statement(database, BODY, company, job, id, JSON.stringify(body)),
  };
}
