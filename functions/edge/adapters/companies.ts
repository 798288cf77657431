import type { Role } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { type Statement, statement } from "./statement.ts";

export interface CompanyRow {
  readonly id: string;
  readonly name: string;
  readonly zone: string;
  readonly units: "inch" | "metric";
  readonly language: "en" | "es";
}

export interface PersonRow {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly came: number;
  readonly left?: number;
}

/** A version of one of the company's things. */
export interface VersionRow {
  readonly number: number;
  readonly kind: "sheet" | "kit card" | "settings" | "instrument";
  readonly name: string;
  readonly digest: string;
  readonly content: Json;
}

/** One version of a thing as it was saved: by an entry of the company's own ledger. */
export interface VersionSaved {
  readonly number: number;
  readonly digest: string;
  /** Milliseconds, the edge's clock. */
  readonly at: number;
  readonly person: string;
}

export interface Companies {
  get(company: string): Promise<CompanyRow | undefined>;
  people(company: string): Promise<readonly PersonRow[]>;
  /** The newest version of each of the company's things. */
  newest(company: string): Promise<readonly VersionRow[]>;
  newestOf(company: string, kind: VersionRow["kind"], name: string): Promise<Omit<VersionRow, "content"> | undefined>;
  version(company: string, digest: string): Promise<VersionRow | undefined>;
  /** Every version of one thing, newest first; `ledger`: the company's own. */
  versionsOf(company: string, ledger: string, kind: VersionRow["kind"], name: string): Promise<readonly VersionSaved[]>;
  /** The content of the company's newest settings. */
  settings(company: string): Promise<Json | undefined>;
  addCompany(company: CompanyRow, made: number): Statement;
  changeCompany(company: CompanyRow): Statement;
  addPerson(company: string, person: PersonRow): Statement;
  personLeft(company: string, person: string, at: number): Statement;
  addVersion(company: string, version: VersionRow): Statement;
  /** A version that came with a job from elsewhere: it serves that job alone and is never the company's newest. */
  keepVersion(company: string, version: Omit<VersionRow, "number">): Statement;
  /** Somebody who entered things in a job that came from elsewhere, and who cannot sign in here. One who is known stays. */
  keepPerson(company: string, person: PersonRow): Statement;
}

export interface KeptVersion extends Omit<VersionRow, "content"> {
  readonly content: string;
}
export const PEOPLE = "SELECT id, name, role, came, left_at FROM person WHERE company = ?1 ORDER BY came, id";
const KEEP_VERSION = `INSERT INTO version (company, number, kind, name, digest, content)
  SELECT ?1, min(0, coalesce((SELECT min(number) FROM version WHERE company = ?1), 0)) - 1, ?2, ?3, ?4, ?5
  WHERE NOT EXISTS (SELECT 1 FROM version WHERE company = ?1 AND digest = ?4)`;
const KEEP_PERSON = `INSERT INTO person (company, id, name, role, came, left_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
  ON CONFLICT (company, id) DO NOTHING`;
const COLUMNS = "number, kind, name, digest, content";
export const NEWEST = `SELECT ${COLUMNS} FROM version AS v WHERE company = ?1 AND number > 0 AND number =
  (SELECT max(number) FROM version AS w WHERE w.company = v.company AND w.kind = v.kind AND w.name = v.name) ORDER BY number`;

const SAVED = `SELECT v.number, v.digest, e.envelope->>'received' AS at, e.envelope->>'$.author.person' AS person
  FROM version AS v JOIN entry AS e ON e.company = v.company AND e.job = ?2 AND e.number = v.number
  WHERE v.company = ?1 AND v.kind = ?3 AND v.name = ?4 AND v.number > 0 ORDER BY v.number DESC`;

export type KeptPerson = PersonRow & { readonly left_at: number | null };
export const personIn = ({ id, name, role, came, left_at: left }: KeptPerson): PersonRow => ({
  id,
  name,
  role,
  came,
  ...(left === null ? {} : { left }),
});
export const versionIn = ({ content, ...rest }: KeptVersion): VersionRow => ({ ...rest, content: JSON.parse(content) as Json });

export function companiesIn(database: D1Database): Companies {
  return {
    get: async (company) =>
      (await statement(database, "SELECT id, name, zone, units, language FROM company WHERE id = ?1", company).first<CompanyRow>()) ??
      undefined,
    people: async (company) => (await statement(database, PEOPLE, company).all<KeptPerson>()).results.map(personIn),
    newest: async (company) => (await statement(database, NEWEST, company).all<KeptVersion>()).results.map(versionIn),
    newestOf: async (company, kind, name) =>
      (await statement(
        database,
        "SELECT number, kind, name, digest FROM version WHERE company = ?1 AND kind = ?2 AND name = ?3 AND number > 0 ORDER BY number DESC LIMIT 1",
        company,
        kind,
        name,
      ).first<Omit<VersionRow, "content">>()) ?? undefined,
    version: async (company, digest) => {
      const sql = `SELECT ${COLUMNS} FROM version WHERE company = ?1 AND digest = ?2 ORDER BY number DESC LIMIT 1`;
      const row = await statement(database, sql, company, digest).first<KeptVersion>();
      return row ? versionIn(row) : undefined;
    },
    versionsOf: async (company, ledger, kind, name) =>
      (await statement(database, SAVED, company, ledger, kind, name).all<VersionSaved>()).results,
    settings: async (company) => {
      const sql = "SELECT content FROM version WHERE company = ?1 AND kind = 'settings' AND number > 0 ORDER BY number DESC LIMIT 1";
      const row = await statement(database, sql, company).first<Pick<KeptVersion, "content">>();
      return row ? (JSON.parse(row.content) as Json) : undefined;
    },
    addCompany: ({ id, name, zone, units, language }, made) =>
      statement(
        database,
        "INSERT INTO company (id, name, zone, units, language, made) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        id,
        name,
        zone,
        units,
        language,
        made,
      ),
    changeCompany: ({ id, name, zone, units, language }) =>
      statement(
        database,
        "UPDATE company SET name = ?2, zone = ?3, units = ?4, language = ?5 WHERE id = ?1",
        id,
        name,
        zone,
        units,
        language,
      ),
    addPerson: (company, { id, name, role, came }) =>
      statement(database, "INSERT INTO person (company, id, name, role, came) VALUES (?1, ?2, ?3, ?4, ?5)", company, id, name, role, came),
    personLeft: (company, person, at) =>
      statement(database, "UPDATE person SET left_at = ?3 WHERE company = ?1 AND id = ?2 AND left_at IS NULL", company, person, at),
    keepVersion: (company, { kind, name, digest, content }) =>
      statement(database, KEEP_VERSION, company, kind, name, digest, JSON.stringify(content)),
    keepPerson: (company, { id, name, role, came, left }) => statement(database, KEEP_PERSON, company, id, name, role, came, left ?? came),
    addVersion: (company, { number, kind, name, digest, content }) =>
      statement(
        database,
        "INSERT INTO version (company, number, kind, name, digest, content) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        company,
        number,
        kind,
        name,
        digest,
        JSON.stringify(content),
      ),
  };
}
