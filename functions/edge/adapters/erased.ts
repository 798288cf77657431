import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

/** Something that is erased: `ref` and `content` as migration 0017 says. */
export interface ErasedRow {
  readonly kind: "object" | "body" | "person" | "site" | "old warranty" | "release" | "others link";
  readonly ref: string;
  readonly content?: string;
}

export interface Erasing {
  /** Notes what is erased, so that no older backup brings it back. Of a body's parts both those of before and these. */
  note(company: string, rows: readonly ErasedRow[], at: number): readonly Statement[];
  /** Takes every row about these photos and papers away. */
  files(company: string, sha256s: readonly string[]): readonly Statement[];
  /** Objects that the store may still have, the oldest first. */
  notGone(most: number): Promise<readonly { readonly company: string; readonly key: string }[]>;
  gone(company: string, key: string, at: number): Promise<void>;
  /** Of these keys, those that are noted as erased. */
  known(company: string, keys: readonly string[]): Promise<ReadonlySet<string>>;
  /** Which of these texts stand in a ledger of the company's, other than these jobs'. */
  namedElsewhere(company: string, sha256s: readonly string[], jobs: readonly string[]): Promise<ReadonlySet<string>>;
  /** Digests of the parts that are blurred, and of those that were before. */
  blurs(company: string, sha256s: readonly string[]): Promise<readonly { readonly sha256: string; readonly digest: string }[]>;
  /** Another name for a person of the company, and for what is named after that person's devices. */
  name(company: string, person: string, name: string): readonly Statement[];
  /** Another name for the receiver of a released record, and other words for what a link for others asked. By the hash of each. */
  receiver(company: string, release: string, name: string): Statement;
  asked(company: string, link: string, what: string): Statement;
  /** Links to a job's records, and links for others, end. */
  links(place: Place, at: number): readonly Statement[];
}

const NOTE = `INSERT INTO erased (company, kind, ref, content, at)
  SELECT ?1, value ->> 'kind', value ->> 'ref', value ->> 'content', ?3 FROM json_each(?2) WHERE true
  ON CONFLICT (company, kind, ref) DO UPDATE SET at = excluded.at, gone = NULL, content = CASE WHEN excluded.kind <> 'body' THEN excluded.content
    ELSE (SELECT json_group_array(value) FROM (SELECT value FROM json_each(erased.content) UNION SELECT value FROM json_each(excluded.content))) END`;
const NOT_GONE = `SELECT company, ref AS key FROM erased WHERE kind = 'object' AND gone IS NULL
  AND company NOT IN (SELECT company FROM closed) ORDER BY at LIMIT ?1`;
const GONE = "UPDATE erased SET gone = ?3 WHERE company = ?1 AND kind = 'object' AND ref = ?2";
const BLURS = `SELECT sha256, digest FROM blurred WHERE company = ?1 AND sha256 IN (SELECT value FROM json_each(?2))
  UNION SELECT sha256, digest FROM blurred_before WHERE company = ?1 AND sha256 IN (SELECT value FROM json_each(?2))`;
const ABOUT_FILE = ["photo", "photo_use", "photo_look", "seen_before", "blurred", "blurred_before", "paper"];
const OWED_ABOUT = `DELETE FROM owed WHERE company = ?1 AND ((kind IN ('read', 'compare') AND ref IN (SELECT value FROM json_each(?2)))
  OR (kind = 'tell' AND substr(ref, -64) IN (SELECT value FROM json_each(?2))))`;
const ELSEWHERE = `SELECT DISTINCT f.value AS sha256 FROM json_each(?2) AS f JOIN entry AS e ON e.company = ?1
  WHERE e.job NOT IN (SELECT value FROM json_each(?3)) AND instr(e.body, f.value) > 0`;

export const erasingIn = (database: D1Database): Erasing => ({
  note: (company, rows, at) => (rows.length === 0 ? [] : [statement(database, NOTE, company, JSON.stringify(rows), at)]),
  notGone: async (most) => (await statement(database, NOT_GONE, most).all<{ company: string; key: string }>()).results,
  gone: async (company, key, at) => {
    await statement(database, GONE, company, key, at).run();
  },
  files(company, sha256s) {
    if (sha256s.length === 0) return [];
    const list = JSON.stringify(sha256s);
    return [
      ...ABOUT_FILE.map((table) =>
        statement(database, `DELETE FROM ${table} WHERE company = ?1 AND sha256 IN (SELECT value FROM json_each(?2))`, company, list),
      ),
      statement(database, "DELETE FROM seen_before WHERE company = ?1 AND before IN (SELECT value FROM json_each(?2))", company, list),
      statement(database, OWED_ABOUT, company, list),
    ];
  },
  async known(company, keys) {
    const sql = "SELECT ref FROM erased WHERE company = ?1 AND kind = 'object' AND ref IN (SELECT value FROM json_each(?2))";
    const { results } = await statement(database, sql, company, JSON.stringify(keys)).all<{ ref: string }>();
    return new Set(results.map(({ ref }) => ref));
  },
  async namedElsewhere(company, sha256s, jobs) {
    if (sha256s.length === 0) return new Set();
    const asked = statement(database, ELSEWHERE, company, JSON.stringify(sha256s), JSON.stringify(jobs));
    return new Set((await asked.all<{ sha256: string }>()).results.map(({ sha256 }) => sha256));
  },
  async blurs(company, sha256s) {
    return (await statement(database, BLURS, company, JSON.stringify(sha256s)).all<{ sha256: string; digest: string }>()).results;
  },
  name: (company, person, name) =>
    ["UPDATE person SET name = ?3 WHERE company = ?1 AND id = ?2", "UPDATE passkey SET name = ?3 WHERE company = ?1 AND person = ?2"].map(
      (sql) => statement(database, sql, company, person, name),
    ),
  receiver: (company, release, name) =>
    statement(database, "UPDATE released_record SET receiver = ?3 WHERE company = ?1 AND hash = ?2", company, release, name),
  asked: (company, link, what) =>
    statement(database, "UPDATE others_link SET what = ?3 WHERE company = ?1 AND hash = ?2", company, link, what),
  links: ({ company, job }, at) => [
    statement(
      database,
      "UPDATE others_link SET withdrawn = ?3 WHERE company = ?1 AND job = ?2 AND used IS NULL AND withdrawn IS NULL",
      company,
      job,
      at,
    ),
    statement(
      database,
      `UPDATE released_record SET ended = ?3 WHERE company = ?1 AND ended IS NULL
        AND record IN (SELECT id FROM record WHERE company = ?1 AND job = ?2)`,
      company,
      job,
      at,
    ),
  ],
});
