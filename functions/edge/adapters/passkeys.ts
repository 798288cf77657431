import type { Role } from "#core/job/index.ts";
import type { NoteDoor } from "./doors.ts";
import { type Statement, statement } from "./statement.ts";

/** A passkey of one person. `credential` and `publicKey`: base64url. */
export interface Passkey {
  readonly company: string;
  readonly id: string;
  readonly person: string;
  readonly credential: string;
  readonly publicKey: string;
  readonly counter: number;
  readonly transports: readonly string[];
  /** Kept by more than one device (the backup state flag). */
  readonly synced: boolean;
  readonly name: string;
  readonly made: number;
  readonly last?: number;
}

/** What signs in: a passkey that is not withdrawn, of a person who has not left. */
export interface KnownPasskey extends Passkey {
  readonly role: Role;
}

export interface Passkeys {
  known(credential: string): Promise<KnownPasskey | undefined>;
  of(company: string, person: string): Promise<readonly Passkey[]>;
  /** Its row as a statement; undefined: this credential is kept already. */
  adding(passkey: Passkey): Promise<Statement | undefined>;
  /** That it signed in: false where another use of the same counter came first, or it was withdrawn meanwhile. */
  used(passkey: Passkey, counter: number, synced: boolean, now: number): Promise<boolean>;
  /** It signs in no more, and what it signed in ends with it. */
  withdrawal(passkey: Pick<Passkey, "company" | "id">, now: number): readonly Statement[];
  /** All of a person's, as a statement. */
  withdrawalOf(company: string, person: string, now: number): Statement;
  get(company: string, id: string): Promise<Passkey | undefined>;
}

const COLUMNS =
  "k.company, k.id, k.person, k.credential, k.public_key AS publicKey, k.counter, k.transports, k.synced, k.name, k.made, k.last";
const KNOWN = `SELECT ${COLUMNS}, p.role FROM passkey AS k JOIN person AS p ON p.company = k.company AND p.id = k.person
  WHERE k.credential = ?1 AND k.withdrawn IS NULL AND p.left_at IS NULL`;
const OF = `SELECT ${COLUMNS} FROM passkey AS k WHERE k.company = ?1 AND k.person = ?2 AND k.withdrawn IS NULL ORDER BY k.made, k.id`;
const GET = `SELECT ${COLUMNS} FROM passkey AS k WHERE k.company = ?1 AND k.id = ?2 AND k.withdrawn IS NULL`;
const ADD = `INSERT INTO passkey (company, id, person, credential, public_key, counter, transports, synced, name, made)
  VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)`;
// an authenticator without a counter says 0 for ever
const USED = `UPDATE passkey SET counter = ?3, synced = ?4, last = ?5
  WHERE company = ?1 AND id = ?2 AND withdrawn IS NULL AND (counter < ?3 OR (counter = 0 AND ?3 = 0)) RETURNING id`;

interface Row extends Omit<KnownPasskey, "transports" | "synced" | "last"> {
  readonly transports: string;
  readonly synced: number;
  readonly last: number | null;
}

const read = ({ transports, synced, last, ...rest }: Row): KnownPasskey => ({
  ...rest,
  transports: transports === "" ? [] : transports.split(" "),
  synced: synced === 1,
  ...(last === null ? {} : { last }),
});

export const passkeysIn = (database: D1Database, note: NoteDoor): Passkeys => ({
  async known(credential) {
    const row = await statement(database, KNOWN, credential).first<Row>();
    return row === null ? undefined : read(row);
  },
  of: async (company, person) => (await statement(database, OF, company, person).all<Row>()).results.map(read),
  async get(company, id) {
    const row = await statement(database, GET, company, id).first<Row>();
    return row === null ? undefined : read(row);
  },
  async adding({ company, id, person, credential, publicKey, counter, transports, synced, name, made }) {
    const values = [company, id, person, credential, publicKey, counter, transports.join(" "), synced ? 1 : 0, name, made];
    // one that was withdrawn is kept too: it was taken out for a reason
    const isKept = (await statement(database, "SELECT 1 FROM passkey WHERE credential = ?1", credential).first()) !== null;
    return isKept || !(await note(credential)) ? undefined : statement(database, ADD, ...values);
  },
  used: async ({ company, id }, counter, synced, now) =>
    (await statement(database, USED, company, id, counter, synced ? 1 : 0, now).first<{ id: string }>()) !== null,
  withdrawal: ({ company, id }, now) => [
    statement(database, "UPDATE passkey SET withdrawn = ?3 WHERE company = ?1 AND id = ?2 AND withdrawn IS NULL", company, id, now),
    statement(database, "UPDATE session SET ended = ?3 WHERE company = ?1 AND passkey = ?2 AND ended IS NULL", company, id, now),
  ],
  withdrawalOf: (company, person, now) =>
    statement(database, "UPDATE passkey SET withdrawn = ?3 WHERE company = ?1 AND person = ?2 AND withdrawn IS NULL", company, person, now),
});
