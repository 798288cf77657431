import { CHALLENGE_LIFE_MS } from "../access/lives.ts";
import { newToken } from "../chance.ts";
import { statement } from "./statement.ts";

export type Purpose = "sign in" | "make";

export interface Challenges {
  /** A fresh one; an earlier one of the same holder for the same purpose is good no more. */
  make(holder: string, purpose: Purpose, now: number): Promise<string>;
  /** Uses it up. `undefined`: none, over, or used before. */
  take(holder: string, purpose: Purpose, now: number): Promise<string | undefined>;
  clear(now: number): Promise<void>;
}

const MAKE = `INSERT INTO challenge (holder, purpose, challenge, ends) VALUES (?1, ?2, ?3, ?4)
  ON CONFLICT (holder, purpose) DO UPDATE SET challenge = excluded.challenge, ends = excluded.ends`;
const TAKE = "DELETE FROM challenge WHERE holder = ?1 AND purpose = ?2 RETURNING challenge, ends";

export const challengesIn = (database: D1Database): Challenges => ({
  async make(holder, purpose, now) {
    const challenge = newToken();
    await statement(database, MAKE, holder, purpose, challenge, now + CHALLENGE_LIFE_MS).run();
    return challenge;
  },
  async take(holder, purpose, now) {
    const row = await statement(database, TAKE, holder, purpose).first<{ challenge: string; ends: number }>();
    return row !== null && row.ends > now ? row.challenge : undefined;
  },
  async clear(now) {
    await statement(database, "DELETE FROM challenge WHERE ends <= ?1", now).run();
  },
});
