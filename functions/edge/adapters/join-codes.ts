import { keyedHex, newDigits, newId, newToken, sha256Hex } from "../chance.ts";
import type { NoteDoor } from "./doors.ts";
import { statement } from "./statement.ts";

/** By which one person of a crew takes one phone into use, once. */
export interface JoinCode {
  readonly company: string;
  readonly id: string;
  readonly person: string;
  readonly madeBy: string;
  readonly made: number;
  readonly ends: number;
  readonly used: number | null;
  readonly withdrawn: number | null;
}

export interface JoinCodes {
  /** Twelve digits to be typed, and a token for the square picture; both are given out once and kept nowhere. */
  make(code: Pick<JoinCode, "company" | "person" | "madeBy" | "made" | "ends">): Promise<{ id: string; digits: string; token: string }>;
  /** Uses it up, by its digits or by its token. Unknown, used, over and withdrawn are the same to it. */
  useDigits(digits: string, now: number): Promise<Pick<JoinCode, "company" | "person"> | undefined>;
  useToken(token: string, now: number): Promise<Pick<JoinCode, "company" | "person"> | undefined>;
  ofCompany(company: string): Promise<readonly JoinCode[]>;
  /** False: no such code of this company that still waits. */
  withdraw(company: string, id: string, now: number): Promise<boolean>;
}

const MAKE = "INSERT INTO join_code (company, id, person, code, token, made_by, made, ends) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
const WAITS = "used IS NULL AND withdrawn IS NULL AND ends > ?2";
const USE = (column: "code" | "token"): string =>
  `UPDATE join_code SET used = ?2 WHERE ${column} = ?1 AND ${WAITS} RETURNING company, person`;
const OF_COMPANY = `SELECT company, id, person, made_by AS madeBy, made, ends, used, withdrawn FROM join_code
  WHERE company = ?1 ORDER BY made DESC, id LIMIT 100`;
const WITHDRAW = `UPDATE join_code SET withdrawn = ?2 WHERE company = ?1 AND id = ?3 AND ${WAITS} RETURNING id`;

/** What a code's digits are kept as. `secret`: twelve digits are tried through in minutes by whoever holds a bare digest of them. */
export const digitsHash = (secret: string, digits: string): Promise<string> => keyedHex(secret, "join code", digits);

export function joinCodesIn(database: D1Database, secret: string, note: NoteDoor): JoinCodes {
  const use = async (column: "code" | "token", digest: string, now: number) =>
    (await statement(database, USE(column), digest, now).first<Pick<JoinCode, "company" | "person">>()) ?? undefined;
  return {
    async make({ company, person, madeBy, made, ends }) {
      const [id, digits, token] = [newId(), newDigits(), newToken()];
      const hashes = [await digitsHash(secret, digits), await sha256Hex(token)] as const;
      for (const hash of hashes) await note(hash);
      await statement(database, MAKE, company, id, person, ...hashes, madeBy, made, ends).run();
      return { id, digits, token };
    },
    useDigits: async (digits, now) => use("code", await digitsHash(secret, digits), now),
    useToken: async (token, now) => use("token", await sha256Hex(token), now),
    ofCompany: async (company) => (await statement(database, OF_COMPANY, company).all<JoinCode>()).results,
    withdraw: async (company, id, now) => (await statement(database, WITHDRAW, company, now, id).first<{ id: string }>()) !== null,
  };
}
