import { newToken, sha256Hex } from "../chance.ts";
import type { NoteDoor } from "./doors.ts";
import type { Place } from "./ledgers.ts";
import { type Statement, statement } from "./statement.ts";

/** A link for somebody who does not sign in: one step of one job, ended by its use. `madeBy`: the person who answers for it. */
export interface OthersLink {
  readonly hash: string;
  readonly company: string;
  readonly job: string;
  readonly step: string;
  /** What is asked for, in words. */
  readonly what: string;
  readonly madeBy: string;
  readonly made: number;
  readonly ends: number;
  readonly used: number | null;
  readonly withdrawn: number | null;
}

/** How many files one link takes: a second try, another page. */
const MOST_FILES = 6;

export interface OthersLinks {
  /** Makes a link; the token is given out once and kept nowhere. */
  make(link: Omit<OthersLink, "hash" | "used" | "withdrawn">): Promise<string>;
  /** Of a token that is still good. */
  open(token: string, now: number): Promise<OthersLink | undefined>;
  /** The same, with one more file counted; undefined when it has taken as many as one link takes. */
  takeFile(token: string, now: number): Promise<OthersLink | undefined>;
  /** That it was used. */
  used(hash: string, now: number): Statement;
  ofJob(place: Place): Promise<readonly OthersLink[]>;
  /** False: no such link of this job that is still good. */
  withdraw(place: Place, hash: string, now: number): Promise<boolean>;
}

const COLUMNS = "hash, company, job, step, what, made_by AS madeBy, made, ends, used, withdrawn";
const GOOD = "used IS NULL AND withdrawn IS NULL AND ends > ?2";
const MAKE = "INSERT INTO others_link (hash, company, job, step, what, made_by, made, ends) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
const OPEN = `SELECT ${COLUMNS} FROM others_link WHERE hash = ?1 AND ${GOOD}`;
const TAKE = `UPDATE others_link SET files = files + 1 WHERE hash = ?1 AND ${GOOD} AND files < ?3 RETURNING ${COLUMNS}`;
const OF_JOB = `SELECT ${COLUMNS} FROM others_link WHERE company = ?1 AND job = ?2 ORDER BY made DESC, hash`;
const WITHDRAW = `UPDATE others_link SET withdrawn = ?2 WHERE hash = ?1 AND ${GOOD} AND company = ?3 AND job = ?4 RETURNING hash`;

export const othersLinksIn = (database: D1Database, note: NoteDoor): OthersLinks => ({
  async make({ company, job, step, what, madeBy, made, ends }) {
    const token = newToken();
    const hash = await sha256Hex(token);
    await note(hash);
    await statement(database, MAKE, hash, company, job, step, what, madeBy, made, ends).run();
    return token;
  },
  open: async (token, now) => (await statement(database, OPEN, await sha256Hex(token), now).first<OthersLink>()) ?? undefined,
  takeFile: async (token, now) =>
    (await statement(database, TAKE, await sha256Hex(token), now, MOST_FILES).first<OthersLink>()) ?? undefined,
  used: (hash, now) => statement(database, "UPDATE others_link SET used = ?2 WHERE hash = ?1 AND used IS NULL", hash, now),
  ofJob: async ({ company, job }) => (await statement(database, OF_JOB, company, job).all<OthersLink>()).results,
  withdraw: async ({ company, job }, hash, now) =>
    (await statement(database, WITHDRAW, hash, now, company, job).first<{ hash: string }>()) !== null,
});
