import type { PhotoUse, SeenHow, Turn } from "#core/photo/index.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

export interface SeenPair {
  /** The later one. */
  readonly sha256: string;
  readonly before: string;
  readonly how: SeenHow;
  readonly distance: number;
  readonly turn: Turn;
  /** Instant, milliseconds. */
  readonly found: number;
}

export interface SeenPairs {
  /** That these pairs were found; a pair known already stays as it is. */
  keep(company: string, pairs: readonly SeenPair[]): Promise<void>;
  /** When entries of a job named these photos, and which of them another job had named before. After the use is written. */
  named(place: Place, uses: readonly { readonly sha256: string; readonly made: number }[], now: number): readonly Statement[];
  /** The newest pairs of the company, or of those the ones with a photo that the job names. */
  newest(company: string, job: string | undefined, most: number): Promise<readonly SeenPair[]>;
  /** Which jobs name the photos, and since when. */
  uses(company: string, sha256s: readonly string[]): Promise<ReadonlyMap<string, readonly PhotoUse[]>>;
  /** When the photos were stored. */
  stored(company: string, sha256s: readonly string[]): Promise<ReadonlyMap<string, number>>;
}

const KEEP = `INSERT INTO seen_before (company, sha256, before, how, distance, turn, found)
  SELECT ?1, value ->> 'sha256', value ->> 'before', value ->> 'how', value ->> 'distance', value ->> 'turn', value ->> 'found'
  FROM json_each(?2) WHERE true ON CONFLICT (company, sha256, before) DO NOTHING`;
const MADE = `UPDATE photo_use SET made = (SELECT min(value ->> 'made') FROM json_each(?3) WHERE value ->> 'sha256' = photo_use.sha256)
  WHERE company = ?1 AND job = ?2 AND made IS NULL AND sha256 IN (SELECT value ->> 'sha256' FROM json_each(?3))`;
const AGAIN = `INSERT INTO seen_before (company, sha256, before, how, distance, turn, found)
  SELECT DISTINCT ?1, value ->> 'sha256', value ->> 'sha256', 'bytes', 0, 1, ?4 FROM json_each(?3)
  WHERE EXISTS (SELECT 1 FROM photo_use AS u WHERE u.company = ?1 AND u.sha256 = value ->> 'sha256' AND u.job <> ?2)
  ON CONFLICT (company, sha256, before) DO NOTHING`;
const COLUMNS = "s.sha256, s.before, s.how, s.distance, s.turn, s.found";
const NEWEST = `SELECT ${COLUMNS} FROM seen_before AS s WHERE s.company = ?1 ORDER BY s.found DESC, s.sha256, s.before LIMIT ?2`;
const OF_JOB = `SELECT ${COLUMNS} FROM photo_use AS u JOIN seen_before AS s ON s.company = u.company AND s.sha256 = u.sha256
  WHERE u.company = ?1 AND u.job = ?3
  UNION SELECT ${COLUMNS} FROM photo_use AS u JOIN seen_before AS s ON s.company = u.company AND s.before = u.sha256
  WHERE u.company = ?1 AND u.job = ?3 ORDER BY 6 DESC, 1, 2 LIMIT ?2`;
const USES = `SELECT u.sha256, u.job, u.made FROM json_each(?2) AS asked JOIN photo_use AS u ON u.company = ?1 AND u.sha256 = asked.value
  ORDER BY u.sha256, u.made, u.job`;
const STORED = "SELECT p.sha256, p.stored FROM json_each(?2) AS asked JOIN photo AS p ON p.company = ?1 AND p.sha256 = asked.value";

export const seenPairsIn = (database: D1Database): SeenPairs => ({
  async keep(company, pairs) {
    if (pairs.length > 0) await statement(database, KEEP, company, JSON.stringify(pairs)).run();
  },
  named: ({ company, job }, uses, now) =>
    uses.length === 0
      ? []
      : [
          statement(database, MADE, company, job, JSON.stringify(uses)),
          statement(database, AGAIN, company, job, JSON.stringify(uses), now),
        ],
  async newest(company, job, most) {
    const asked = job === undefined ? statement(database, NEWEST, company, most) : statement(database, OF_JOB, company, most, job);
    return (await asked.all<SeenPair>()).results;
  },
  async uses(company, sha256s) {
    const { results } = await statement(database, USES, company, JSON.stringify(sha256s)).all<PhotoUse & { sha256: string }>();
    const found = new Map<string, PhotoUse[]>();
    for (const { sha256, job, made } of results) found.set(sha256, [...(found.get(sha256) ?? []), { job, made }]);
    return found;
  },
  async stored(company, sha256s) {
    const { results } = await statement(database, STORED, company, JSON.stringify(sha256s)).all<{ sha256: string; stored: number }>();
    return new Map(results.map(({ sha256, stored }) => [sha256, stored]));
  },
});
