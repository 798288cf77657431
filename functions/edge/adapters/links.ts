import { LINK_LIFE_MS } from "../access/lives.ts";
import { newToken, sha256Hex } from "../chance.ts";
import type { NoteDoor } from "./doors.ts";
import { type Statement, statement } from "./statement.ts";

/** One-time sign-in links; the token is given out once and kept as its hash. */
export interface Links {
  /** A link that is there once `made` is written. */
  draw(company: string, person: string, now: number): Promise<{ readonly token: string; readonly made: Statement }>;
  make(company: string, person: string, now: number): Promise<string>;
  /** Uses the link up. */
  use(token: string, now: number): Promise<{ readonly company: string; readonly person: string } | undefined>;
}

const MAKE = "INSERT INTO link (hash, company, person, ends) VALUES (?1, ?2, ?3, ?4)";
const USE = "UPDATE link SET used = ?2 WHERE hash = ?1 AND used IS NULL AND ends > ?2 RETURNING company, person";

export function linksIn(database: D1Database, note: NoteDoor): Links {
  const draw: Links["draw"] = async (company, person, now) => {
    const token = newToken();
    const hash = await sha256Hex(token);
    await note(hash);
    return { token, made: statement(database, MAKE, hash, company, person, now + LINK_LIFE_MS) };
  };
  return {
    draw,
    async make(company, person, now) {
      const { token, made } = await draw(company, person, now);
      await made.run();
      return token;
    },
    async use(token, now) {
      return (await statement(database, USE, await sha256Hex(token), now).first<{ company: string; person: string }>()) ?? undefined;
    },
  };
}
