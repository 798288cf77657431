import { keyedHex } from "../chance.ts";
import { statement } from "./statement.ts";

/** So many tries within so long, milliseconds. */
export interface Limit {
  readonly name: string;
  readonly most: number;
  readonly within: number;
}

export interface Tries {
  /**
   * Counts one more try of `who`; answers after how many milliseconds the next one is let in, `undefined` where this one is. One
   * statement of the database, so that it holds over every instance of the edge. A window ends when it began plus its length,
   * however much is tried meanwhile: nobody is kept out for ever.
   */
  take(limit: Limit, who: string, now: number): Promise<number | undefined>;
  /** It was no mere try: it came in. */
  giveBack(limit: Limit, who: string): Promise<void>;
  /** Forgets the windows that are over. */
  clear(now: number): Promise<void>;
}

const TAKE = `INSERT INTO tries (key, began, ends, count) VALUES (?1, ?2, ?2 + ?3, 1)
  ON CONFLICT (key) DO UPDATE SET
    count = CASE WHEN tries.ends <= ?2 THEN 1 ELSE min(tries.count, ?4) + 1 END,
    began = CASE WHEN tries.ends <= ?2 THEN ?2 ELSE tries.began END,
    ends = CASE WHEN tries.ends <= ?2 THEN ?2 + ?3 ELSE tries.ends END
  RETURNING ends, count`;

/** `secret`: an address is not kept as such, only a digest that the database alone does not open. */
export function triesIn(database: D1Database, secret: string): Tries {
  const keyOf = (limit: Limit, who: string): Promise<string> => keyedHex(secret, "tries", `${limit.name} ${who}`);
  return {
    async take(limit, who, now) {
      const { within, most } = limit;
      const row = await statement(database, TAKE, await keyOf(limit, who), now, within, most).first<{ ends: number; count: number }>();
      if (row === null) throw new Error("the count of tries gave no row");
      return row.count > most ? Math.max(1, row.ends - now) : undefined;
    },
    async giveBack(limit, who) {
      const sql = "UPDATE tries SET count = count - 1 WHERE key = ?1 AND count > 0";
      await statement(database, sql, await keyOf(limit, who)).run();
    },
    async clear(now) {
      await statement(database, "DELETE FROM tries WHERE ends <= ?1", now).run();
    },
  };
}
