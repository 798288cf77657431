import { newToken, sha256Hex } from "../chance.ts";
import type { NoteDoor } from "./doors.ts";
import { type Statement, statement } from "./statement.ts";

/** A record that was released, by the hash of its link's token. */
export interface Release {
  readonly hash: string;
  readonly company: string;
  readonly record: string;
  readonly receiver: string;
  readonly released: number;
  readonly ended: number | null;
}

export interface Releases {
  /** The token is given out once and kept nowhere; the link is good when `made` is written. */
  make(release: Omit<Release, "hash" | "ended">): Promise<{ readonly token: string; readonly made: Statement }>;
  /** Of a token whose link the office has not ended. */
  open(token: string): Promise<Release | undefined>;
  ofRecord(company: string, record: string): Promise<readonly Release[]>;
  /** False: no such link of this record that is still open. */
  end(company: string, record: string, hash: string, now: number): Promise<boolean>;
}

const COLUMNS = "hash, company, record, receiver, released, ended";
const MAKE = "INSERT INTO released_record (hash, company, record, receiver, released) VALUES (?1, ?2, ?3, ?4, ?5)";
const OF_RECORD = `SELECT ${COLUMNS} FROM released_record WHERE company = ?1 AND record = ?2 ORDER BY released DESC, hash`;
const END = "UPDATE released_record SET ended = ?4 WHERE hash = ?1 AND company = ?2 AND record = ?3 AND ended IS NULL RETURNING hash";

export const releasesIn = (database: D1Database, note: NoteDoor): Releases => ({
  async make({ company, record, receiver, released }) {
    const token = newToken();
    const hash = await sha256Hex(token);
    await note(hash);
    return { token, made: statement(database, MAKE, hash, company, record, receiver, released) };
  },
  open: async (token) =>
    (await statement(
      database,
      `SELECT ${COLUMNS} FROM released_record WHERE hash = ?1 AND ended IS NULL`,
      await sha256Hex(token),
    ).first<Release>()) ?? undefined,
  ofRecord: async (company, record) => (await statement(database, OF_RECORD, company, record).all<Release>()).results,
  end: async (company, record, hash, now) =>
    (await statement(database, END, hash, company, record, now).first<{ hash: string }>()) !== null,
});
