import type { Role } from "#core/job/index.ts";
import type { Device } from "../access/device.ts";
import { GRACE_MS, lifeOf, RENEW_MS, TOUCH_MS, type Way } from "../access/lives.ts";
import { newId, newToken, sha256Hex } from "../chance.ts";
import { type KeptPerson, PEOPLE, type PersonRow, personIn } from "./companies.ts";
import type { NoteDoor } from "./doors.ts";
import { type Statement, statement, unless } from "./statement.ts";

/** Who calls, as the session says. */
export interface Session {
  /** Names the session in the database and nowhere else. */
  readonly hash: string;
  /** Names the token by which it was found, likewise. */
  readonly token: string;
  readonly company: string;
  readonly companyName: string;
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly phone: string;
  readonly units: "inch" | "metric";
  readonly language: "en" | "es";
  /** Milliseconds: when it is over whatever happens. */
  readonly ends: number;
  /** Of the company, where they were asked for. */
  readonly people?: readonly PersonRow[];
}

/** A session as its owner sees it; `phone` is its name on the wire. */
export interface OpenSession {
  readonly phone: string;
  readonly device: Device;
  readonly way: Way;
  readonly passkey: string | null;
  readonly began: number;
  readonly last: number;
  readonly ends: number;
}

export interface NewSession {
  readonly company: string;
  readonly person: string;
  readonly role: Role;
  readonly way: Way;
  readonly device: Device;
  readonly passkey?: string;
}

export interface Sessions {
  /** Of a token as the cookie holds it; `ended` when it was good once. */
  find(token: string, now: number, withPeople?: boolean): Promise<Session | "ended" | undefined>;
  /** Fails in a batch where the session is over or another's by now, or one of these people of its company has left. */
  unlessOver(session: Session, people: readonly string[], now: number): Statement;
  begin(session: NewSession, now: number): Promise<string>;
  /**
   * A new token where the present one is old enough. The old one stays good until the new one is used: an answer that gets lost
   * on its way to a phone signs nobody out.
   */
  renew(hash: string, now: number): Promise<string | undefined>;
  end(hash: string, now: number): Promise<void>;
  /** By its name on the wire: whose it is, and an end to it. */
  personOf(company: string, phone: string, now: number): Promise<string | undefined>;
  endNamed(company: string, phone: string, now: number): Promise<void>;
  openOf(company: string, person: string, now: number): Promise<readonly OpenSession[]>;
  /** Sessions, unused links and unused codes of a person, at once. False: no such person in this company. */
  withdraw(company: string, person: string, now: number): Promise<boolean>;
  /** The same as statements, for what must go with it. */
  withdrawal(company: string, person: string, now: number): readonly Statement[];
}

interface Found extends Omit<Session, "token" | "people"> {
  readonly ended: number | null;
  readonly left_at: number | null;
  readonly idle: number;
  readonly last: number;
  readonly seen: number | null;
  readonly tokenEnds: number | null;
}

const FIND = `SELECT s.hash, s.company, s.person, s.phone, s.ended, s.ends, s.idle, s.last, t.seen, t.ends AS tokenEnds,
    p.name, p.role, p.left_at, c.name AS companyName, c.units, c.language
  FROM session_token AS t JOIN session AS s ON s.hash = t.session JOIN person AS p ON p.company = s.company AND p.id = s.person
  JOIN company AS c ON c.id = s.company WHERE t.hash = ?1`;
const PEOPLE_OF = PEOPLE.replace(
  "?1",
  "(SELECT s.company FROM session_token AS t JOIN session AS s ON s.hash = t.session WHERE t.hash = ?1)",
);
const OVER = `NOT EXISTS (SELECT 1 FROM session_token AS t JOIN session AS s ON s.hash = t.session
    JOIN person AS p ON p.company = s.company AND p.id = s.person
    WHERE t.hash = ?1 AND s.company = ?2 AND s.person = ?3 AND p.role = ?4 AND s.ended IS NULL AND p.left_at IS NULL
    AND s.ends > ?5 AND s.last + s.idle > ?5 AND (t.ends IS NULL OR t.ends > ?5))
  OR EXISTS (SELECT 1 FROM person WHERE company = ?2 AND left_at IS NOT NULL AND id IN (SELECT value FROM json_each(?6)))`;
const BEGIN = `INSERT INTO session (hash, company, person, phone, began, way, device, passkey, last, renewed, ends, idle)
  VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?5, ?5, ?9, ?10)`;
const TOKEN = "INSERT INTO session_token (hash, session, made, seen) VALUES (?1, ?2, ?3, ?4)";
const SEEN = "UPDATE session_token SET seen = ?2 WHERE hash = ?1 AND seen IS NULL";
const FORMER = "UPDATE session_token SET ends = ?3 WHERE session = ?1 AND hash <> ?2 AND ends IS NULL";
const RENEW = "UPDATE session SET renewed = ?2 WHERE hash = ?1 AND renewed <= ?3 AND ended IS NULL RETURNING hash";
const OPEN = "company = ?1 AND ended IS NULL AND ends > ?3 AND last + idle > ?3";
const OPEN_OF = `SELECT phone, device, way, passkey, began, last, ends FROM session WHERE ${OPEN} AND person = ?2
  ORDER BY last DESC, phone LIMIT 200`;

export function sessionsIn(database: D1Database, note: NoteDoor): Sessions {
  const withdrawal = (company: string, person: string, now: number): readonly Statement[] => [
    statement(database, "UPDATE session SET ended = ?3 WHERE company = ?1 AND person = ?2 AND ended IS NULL", company, person, now),
    statement(database, "UPDATE link SET used = ?3 WHERE company = ?1 AND person = ?2 AND used IS NULL", company, person, now),
    statement(
      database,
      "UPDATE join_code SET withdrawn = ?3 WHERE company = ?1 AND person = ?2 AND used IS NULL AND withdrawn IS NULL",
      company,
      person,
      now,
    ),
  ];
  return {
    withdrawal,
    async find(token, now, withPeople = false) {
      const hash = await sha256Hex(token);
      const [found, people] = await database.batch<Found | KeptPerson>([
        statement(database, FIND, hash),
        ...(withPeople ? [statement(database, PEOPLE_OF, hash)] : []),
      ]);
      const row = found?.results[0] as Found | undefined;
      if (row === undefined) return undefined;
      const { ended, left_at: left, idle, last, seen, tokenEnds, ...own } = row;
      const session = { ...own, token: hash };
      const isOver = session.ends <= now || last + idle <= now || (tokenEnds !== null && tokenEnds <= now);
      if (ended !== null || left !== null || isOver) return "ended";
      if (seen === null)
        await database.batch([statement(database, SEEN, hash, now), statement(database, FORMER, session.hash, hash, now + GRACE_MS)]);
      if (now - last >= TOUCH_MS)
        await statement(database, "UPDATE session SET last = ?2 WHERE hash = ?1 AND last < ?2", session.hash, now).run();
      return people === undefined ? session : { ...session, people: (people.results as KeptPerson[]).map(personIn) };
    },
    unlessOver: ({ token, company, person, role }, people, now) =>
      unless(database, OVER, token, company, person, role, now, JSON.stringify(people)),
    async begin({ company, person, role, way, device, passkey }, now) {
      const token = newToken();
      const hash = await sha256Hex(token);
      const { ends, idle } = lifeOf(role);
      await note(hash);
      await database.batch([
        statement(database, BEGIN, hash, company, person, newId(), now, way, device, passkey ?? null, now + ends, idle),
        statement(database, TOKEN, hash, hash, now, now),
      ]);
      return token;
    },
    async renew(hash, now) {
      const mine = await statement(database, RENEW, hash, now, now - RENEW_MS).first<{ hash: string }>();
      if (mine === null) return undefined;
      const token = newToken();
      const next = await sha256Hex(token);
      await note(next);
      await statement(database, TOKEN, next, hash, now, null).run();
      return token;
    },
    async end(hash, now) {
      await statement(database, "UPDATE session SET ended = ?2 WHERE hash = ?1 AND ended IS NULL", hash, now).run();
    },
    async personOf(company, phone, now) {
      const sql = `SELECT person FROM session WHERE ${OPEN} AND phone = ?2`;
      return (await statement(database, sql, company, phone, now).first<{ person: string }>())?.person;
    },
    async endNamed(company, phone, now) {
      const sql = "UPDATE session SET ended = ?3 WHERE company = ?1 AND phone = ?2 AND ended IS NULL";
      await statement(database, sql, company, phone, now).run();
    },
    openOf: async (company, person, now) => (await statement(database, OPEN_OF, company, person, now).all<OpenSession>()).results,
    async withdraw(company, person, now) {
      const [there] = await database.batch([
        statement(database, "SELECT 1 FROM person WHERE company = ?1 AND id = ?2", company, person),
        ...withdrawal(company, person, now),
      ]);
      return (there?.results.length ?? 0) > 0;
    },
  };
}
