import type { PhotoFacts } from "#core/photo/index.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface PhotoRow {
  readonly sha256: string;
  readonly bytes: number;
  readonly type: string;
  readonly state: "stored" | "read" | "unreadable";
  readonly facts?: PhotoFacts;
  readonly givenUp?: number;
  /** The digest that names the renditions in which parts are blurred; those are shown and printed. */
  readonly blurred?: string;
}

export interface Photos {
  get(company: string, sha256: string): Promise<PhotoRow | undefined>;
  /** The photos that a job names and whose bytes are there. */
  ofJob(place: Place): Promise<readonly PhotoRow[]>;
  jobsOf(company: string, sha256: string): Promise<readonly string[]>;
  /** The stored photo and that it is owed a reading, both or neither. */
  add(company: string, photo: Pick<PhotoRow, "sha256" | "bytes" | "type">, now: number, due: number): Promise<void>;
  /** The same as statements, for what must go with it. */
  adding(company: string, photo: Pick<PhotoRow, "sha256" | "bytes" | "type">, now: number, due: number): readonly Statement[];
  /** Of the photos that a job names, the parts that are blurred: their digest, the parts as JSON, and when. */
  blursOf(place: Place): Promise<ReadonlyMap<string, { readonly digest: string; readonly regions: string; readonly made: number }>>;
  /** What was read, the reading no longer owed, the telling owed to every job that names it, and `also`: all or nothing. */
  keepFacts(company: string, facts: PhotoFacts, due: number, also?: readonly Statement[]): Promise<void>;
  giveUp(company: string, sha256: string): Promise<void>;
  /** That these renditions stand for the photo from now on, and which did before. */
  blur(
    company: string,
    sha256: string,
    parts: { readonly digest: string; readonly regions: string; readonly made: number },
  ): readonly Statement[];
  /** That a job names these photos, and that it is owed what is already known of them. */
  use(place: Place, sha256s: readonly string[], due: number): readonly Statement[];
}

interface Row {
  readonly sha256: string;
  readonly bytes: number;
  readonly type: string;
  readonly state: PhotoRow["state"];
  readonly facts: string | null;
  readonly given_up: number | null;
  readonly blurred: string | null;
}
const COLUMNS =
  "p.sha256, p.bytes, p.type, p.state, p.facts, p.given_up, (SELECT b.digest FROM blurred AS b WHERE b.company = p.company AND b.sha256 = p.sha256) AS blurred";
const OF_JOB = `SELECT ${COLUMNS} FROM photo_use AS u JOIN photo AS p ON p.company = u.company AND p.sha256 = u.sha256
  WHERE u.company = ?1 AND u.job = ?2 ORDER BY p.sha256`;
const ADD = `INSERT INTO photo (company, sha256, bytes, type, state, stored) VALUES (?1, ?2, ?3, ?4, 'stored', ?5)
  ON CONFLICT (company, sha256) DO NOTHING`;
const OWE = `INSERT INTO owed (kind, company, ref, due) VALUES ('read', ?1, ?2, ?3) ON CONFLICT (kind, company, ref) DO NOTHING`;
const OWE_IF_STORED = `INSERT INTO owed (kind, company, ref, due) SELECT 'read', ?1, ?2, ?3 FROM photo
  WHERE company = ?1 AND sha256 = ?2 AND state = 'stored' ON CONFLICT (kind, company, ref) DO NOTHING`;
const BLURS = `SELECT b.sha256, b.digest, b.regions, b.made FROM photo_use AS u
  JOIN blurred AS b ON b.company = u.company AND b.sha256 = u.sha256 WHERE u.company = ?1 AND u.job = ?2`;
const KEEP = "UPDATE photo SET state = ?3, facts = ?4, given_up = NULL WHERE company = ?1 AND sha256 = ?2";
const TELL = `INSERT INTO owed (kind, company, ref, due) SELECT 'tell', company, job || '/' || sha256, ?3 FROM photo_use
  WHERE company = ?1 AND sha256 = ?2 ON CONFLICT (kind, company, ref) DO NOTHING`;
const PAID = "DELETE FROM owed WHERE kind = 'read' AND company = ?1 AND ref = ?2";
const GIVE_UP = `UPDATE photo SET given_up = coalesce((SELECT tries FROM owed WHERE kind = 'read' AND company = ?1 AND ref = ?2), 0) + 1
  WHERE company = ?1 AND sha256 = ?2 AND state = 'stored'`;
const BLURRED_BEFORE = `INSERT INTO blurred_before (company, sha256, digest)
  SELECT company, sha256, digest FROM blurred WHERE company = ?1 AND sha256 = ?2 AND digest <> ?3 ON CONFLICT DO NOTHING`;
const BLUR = `INSERT INTO blurred (company, sha256, digest, regions, made) VALUES (?1, ?2, ?3, ?4, ?5)
  ON CONFLICT (company, sha256) DO UPDATE SET digest = ?3, regions = ?4, made = ?5`;
const USE = `INSERT INTO photo_use (company, sha256, job) SELECT ?1, value, ?2 FROM json_each(?3) WHERE true
  ON CONFLICT (company, sha256, job) DO NOTHING`;
const TELL_KNOWN = `INSERT INTO owed (kind, company, ref, due) SELECT 'tell', ?1, ?2 || '/' || p.sha256, ?4 FROM json_each(?3) AS named
  JOIN photo AS p ON p.company = ?1 AND p.sha256 = named.value AND p.state <> 'stored' WHERE true
  ON CONFLICT (kind, company, ref) DO NOTHING`;

const read = ({ sha256, bytes, type, state, facts, given_up: givenUp, blurred }: Row): PhotoRow => ({
  sha256,
  bytes,
  type,
  state,
  ...(facts === null ? {} : { facts: JSON.parse(facts) as PhotoFacts }),
  ...(givenUp === null ? {} : { givenUp }),
  ...(blurred === null ? {} : { blurred }),
});

export function photosIn(database: D1Database): Photos {
  const adding: Photos["adding"] = (company, { sha256, bytes, type }, now, due) => [
    statement(database, ADD, company, sha256, bytes, type, now),
    // one that has been read already is owed nothing
    statement(database, OWE_IF_STORED, company, sha256, due),
  ];
  return {
    adding,
    async blursOf({ company, job }) {
      const { results } = await statement(database, BLURS, company, job).all<{
        sha256: string;
        digest: string;
        regions: string;
        made: number;
      }>();
      return new Map(results.map(({ sha256, ...parts }) => [sha256, parts]));
    },
    async get(company, sha256) {
      const sql = `SELECT ${COLUMNS} FROM photo AS p WHERE p.company = ?1 AND p.sha256 = ?2`;
      const row = await statement(database, sql, company, sha256).first<Row>();
      return row ? read(row) : undefined;
    },
    ofJob: async ({ company, job }) => (await statement(database, OF_JOB, company, job).all<Row>()).results.map(read),
    async jobsOf(company, sha256) {
      const sql = "SELECT job FROM photo_use WHERE company = ?1 AND sha256 = ?2 ORDER BY job";
      return (await statement(database, sql, company, sha256).all<{ job: string }>()).results.map(({ job }) => job);
    },
    async add(company, { sha256, bytes, type }, now, due) {
      await database.batch([statement(database, ADD, company, sha256, bytes, type, now), statement(database, OWE, company, sha256, due)]);
    },
    async keepFacts(company, facts, due, also = []) {
      const state = facts.unreadable ? "unreadable" : "read";
      await database.batch([
        statement(database, KEEP, company, facts.sha, state, JSON.stringify(facts)),
        statement(database, TELL, company, facts.sha, due),
        statement(database, PAID, company, facts.sha),
        ...also,
      ]);
    },
    async giveUp(company, sha256) {
      await statement(database, GIVE_UP, company, sha256).run();
    },
    blur: (company, sha256, { digest, regions, made }) => [
      statement(database, BLURRED_BEFORE, company, sha256, digest),
      statement(database, BLUR, company, sha256, digest, regions, made),
    ],
    use: ({ company, job }, sha256s, due) =>
      sha256s.length === 0
        ? []
        : [
            statement(database, USE, company, job, JSON.stringify(sha256s)),
            statement(database, TELL_KNOWN, company, job, JSON.stringify(sha256s), due),
          ],
  };
}
