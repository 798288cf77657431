import { ALIKE_AT_MOST, type Bands, bandsOf, type Likeness, lookUp, type Nearest, nearestOf, type PhotoFacts } from "#core/photo/index.ts";
import { type Statement, statement } from "./statement.ts";

/** A photo that looks like the one asked for. */
export interface Alike extends Nearest {
  readonly sha256: string;
}

export interface Likenesses {
  /** What a photo's facts leave to be found again, and that it is owed a comparison. Nothing where nothing was read. */
  keep(company: string, facts: PhotoFacts, due: number): readonly Statement[];
  /** Other photos of the company with the very same pixels, at most `MOST`. */
  samePixels(company: string, sha256: string, pixels: string): Promise<readonly string[]>;
  /** Other photos of the company that are alike, the nearest first, at most `MOST`. */
  alike(company: string, sha256: string, likeness: Likeness): Promise<readonly Alike[]>;
}

/** More than so many others that look the same are no news. */
const MOST = 20;
/** Rows that one band may give: a picture that thousands are like in a band is told by the others. */
const MOST_OF_A_BAND = 5_000;

const PIXELS = "UPDATE photo SET pixels = ?3 WHERE company = ?1 AND sha256 = ?2";
const LOOK = `INSERT INTO photo_look (company, sha256, place, first, second, third) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
  ON CONFLICT (company, sha256, place) DO UPDATE SET first = ?4, second = ?5, third = ?6`;
const OWE = "INSERT INTO owed (kind, company, ref, due) VALUES ('compare', ?1, ?2, ?3) ON CONFLICT (kind, company, ref) DO NOTHING";
const SAME = "SELECT sha256 FROM photo WHERE company = ?1 AND pixels = ?2 AND sha256 <> ?3 ORDER BY stored LIMIT ?4";
const bandColumns = ["first", "second", "third"] as const;
/** One seek for each key, in the index's own order; of two hashes one is that of a picture without its bars. */
const BAND = bandColumns.map(
  (column) => `SELECT l.sha256, l.first, l.second, l.third FROM json_each(?2) AS asked
  CROSS JOIN photo_look AS l INDEXED BY photo_look_by_${column} ON l.company = ?1 AND l.${column} = asked.value
  WHERE l.sha256 <> ?3 AND l.place <= ?4 LIMIT ${MOST_OF_A_BAND}`,
);

interface Row {
  readonly sha256: string;
  readonly first: number;
  readonly second: number;
  readonly third: number;
}

const ALL_PLACES = 9;

export function likenessesIn(database: D1Database): Likenesses {
  return {
    keep(company, { sha, pixels, likeness }, due) {
      const looks = (likeness?.hashes ?? []).map((hash, place) => statement(database, LOOK, company, sha, place, ...bandsOf(hash)));
      const known = pixels ? [statement(database, PIXELS, company, sha, pixels)] : [];
      return looks.length + known.length === 0 ? [] : [...known, ...looks, statement(database, OWE, company, sha, due)];
    },
    async samePixels(company, sha256, pixels) {
      const { results } = await statement(database, SAME, company, pixels, sha256, MOST).all<{ sha256: string }>();
      return results.map((row) => row.sha256);
    },
    async alike(company, sha256, { hashes, unsure }) {
      const asked = hashes.map((hash, n) => lookUp(hash, unsure[n] ?? "0".repeat(16)));
      const statements = asked.flatMap(({ keys }, n) =>
        BAND.map((sql, band) => statement(database, sql, company, JSON.stringify(keys[band]), sha256, n === 0 ? ALL_PLACES : 0)),
      );
      if (statements.length === 0) return [];
      const answers = await database.batch<Row>(statements);
      const best = new Map<string, Alike>();
      for (const [n, { results }] of answers.entries()) {
        const look = asked[Math.floor(n / BAND.length)] as (typeof asked)[number];
        for (const { sha256: other, first, second, third } of results) {
          const near = nearestOf(look, [first, second, third] satisfies Bands);
          if (near.distance <= ALIKE_AT_MOST && near.distance < (best.get(other)?.distance ?? 65))
            best.set(other, { sha256: other, ...near });
        }
      }
      return [...best.values()].sort((a, b) => a.distance - b.distance || (a.sha256 < b.sha256 ? -1 : 1)).slice(0, MOST);
    },
  };
}
