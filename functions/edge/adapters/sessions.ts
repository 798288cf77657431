import type { Role } from "#core/job/index.ts";
import { newId, newToken, sha256Hex } from "../chance.ts";
import { type Statement, statement } from "./statement.ts";

/** Who calls, as the session says. */
export interface Session {
  readonly hash: string;
  readonly company: string;
  readonly companyName: string;
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly phone: string;
  readonly units: "inch" | "metric";
  readonly language: "en" | "es";
}

/** How long a link waits to be used: 7 days. */
export const LINK_LIFE_MS = 7 * 24 * 3_600_000;

export interface Sessions {
  /** Of a token as the cookie holds it; `ended` when it was good once. */
  find(token: string): Promise<Session | "ended" | undefined>;
  begin(company: string, person: string, now: number): Promise<string>;
  end(hash: string, now: number): Promise<void>;
  /** Sessions and unused links of a person, at once. False: no such person in this company. */
  withdraw(company: string, person: string, now: number): Promise<boolean>;
  /** The same as statements, for what must go with it. */
  withdrawal(company: string, person: string, now: number): readonly Statement[];
  /** A link that is there once `made` is written. */
  newLink(company: string, person: string, now: number): Promise<{ readonly token: string; readonly made: Statement }>;
  makeLink(company: string, person: string, now: number): Promise<string>;
  /** Uses the link up. */
  useLink(token: string, now: number): Promise<{ readonly company: string; readonly person: string } | undefined>;
}

const FIND = `SELECT s.hash, s.company, s.person, s.phone, s.ended, p.name, p.role, p.left_at,
    c.name AS companyName, c.units, c.language
  FROM session AS s JOIN person AS p ON p.company = s.company AND p.id = s.person JOIN company AS c ON c.id = s.company
  WHERE s.hash = ?1`;
const USE = "UPDATE link SET used = ?2 WHERE hash = ?1 AND used IS NULL AND ends > ?2 RETURNING company, person";

export function sessionsIn(database: D1Database): Sessions {
  const withdrawal = (company: string, person: string, now: number): readonly Statement[] => [
    statement(database, "UPDATE session SET ended = ?3 WHERE company = ?1 AND person = ?2 AND ended IS NULL", company, person, now),
    statement(database, "UPDATE link SET used = ?3 WHERE company = ?1 AND person = ?2 AND used IS NULL", company, person, now),
  ];
  const newLink: Sessions["newLink"] = async (company, person, now) => {
    const token = newToken();
    const sql = "INSERT INTO link (hash, company, person, ends) VALUES (?1, ?2, ?3, ?4)";
    return { token, made: statement(database, sql, await sha256Hex(token), company, person, now + LINK_LIFE_MS) };
  };
  return {
    withdrawal,
    newLink,
    async find(token) {
      const row = await statement(database, FIND, await sha256Hex(token)).first<
        Session & { ended: number | null; left_at: number | null }
      >();
      if (row === null) return undefined;
      const { ended, left_at: left, ...session } = row;
      return ended === null && left === null ? session : "ended";
    },
    async begin(company, person, now) {
      const token = newToken();
      const sql = "INSERT INTO session (hash, company, person, phone, began) VALUES (?1, ?2, ?3, ?4, ?5)";
      await statement(database, sql, await sha256Hex(token), company, person, newId(), now).run();
      return token;
    },
    async end(hash, now) {
      await statement(database, "UPDATE session SET ended = ?2 WHERE hash = ?1 AND ended IS NULL", hash, now).run();
    },
    async withdraw(company, person, now) {
      const [there] = await database.batch([
        statement(database, "SELECT 1 FROM person WHERE company = ?1 AND id = ?2", company, person),
        ...withdrawal(company, person, now),
      ]);
      return (there?.results.length ?? 0) > 0;
    },
    async makeLink(company, person, now) {
      const { token, made } = await newLink(company, person, now);
      await made.run();
      return token;
    },
    async useLink(token, now) {
      return (await statement(database, USE, await sha256Hex(token), now).first<{ company: string; person: string }>()) ?? undefined;
    },
  };
}
