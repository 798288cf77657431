/** One file of a backup. `name`: its path inside, with slashes. */
export interface BackupPart {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** An object of the store: its file is named by its key. */
export interface BackupObject extends BackupPart {
  readonly key: string;
  readonly type: string;
}

/** What a backup holds. Instants in milliseconds. */
export interface BackupList {
  readonly kind: typeof BACKUP_KIND;
  readonly format: 1;
  /** The moment of the rows: whatever was acknowledged later is not in it. */
  readonly taken: number;
  /** The last moment at which it may be kept and read back: what was erased meanwhile must be gone from every backup by then. */
  readonly until: number;
  /** What the database was built with. */
  readonly migrations: readonly { readonly name: string; readonly digest: string }[];
  /** Where the database lies below the edge's folder. */
  readonly place: string;
  readonly database: BackupPart;
  /** The other databases of an installation that has several (infra/shards), in the same way; left out where there is one. */
  readonly further?: readonly { readonly place: string; readonly database: BackupPart }[];
  /** The last entry of every ledger. */
  readonly ledgers: readonly { readonly company: string; readonly job: string; readonly number: number; readonly hash: string }[];
  readonly objects: readonly BackupObject[];
  /** Keys that the rows name and that were erased while the objects were copied. */
  readonly gone: readonly string[];
}

export const BACKUP_KIND = "asburied backup";
export const LIST = "list.json";
export const SEAL = "list-seal.json";
export const DATABASE = "database.sqlite";
/** The file of one of several databases inside a backup, by its place among them. */
export const databaseName = (n: number): string => (n === 0 ? DATABASE : `database-${n + 1}.sqlite`);
/** Every database of a backup. */
export const databasesOf = ({ place, database, further = [] }: Pick<BackupList, "place" | "database" | "further">) => [
  { place, database },
  ...further,
];

/** Days that a backup is kept. */
export const KEPT_DAYS = 35;
export const DAY_MS = 86_400_000;

/** The file of an object inside a backup. */
export const nameOf = (key: string): string => `objects/${key}`;

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null && !Array.isArray(value);
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;
const isHex = (value: unknown): value is string => typeof value === "string" && /^[0-9a-f]{64}$/.test(value);
const isText = (value: unknown): value is string => typeof value === "string" && value.length > 0 && value.length <= 400;
/** No part of a path that leads out of its folder, or that a file system reads in its own way. */
export const isKey = (value: unknown): value is string =>
  isText(value) && value.split("/").every((part) => /^[A-Za-z0-9_-][A-Za-z0-9._-]*$/.test(part));
const isPart = (value: unknown): value is BackupPart & Record<string, unknown> =>
  isObject(value) && isText(value.name) && isCount(value.bytes) && isHex(value.sha256);

const allOf = (value: unknown, is: (one: Record<string, unknown>) => boolean): boolean =>
  Array.isArray(value) && value.every((one) => isObject(one) && is(one));

const isDatabase = ({ place, database }: Record<string, unknown>, name: string): boolean =>
  typeof place === "string" && /^d1\/[A-Za-z0-9-]{1,64}\/[0-9a-f]{64}\.sqlite$/.test(place) && isPart(database) && database.name === name;

/** The list, where a value is one; undefined where it is none, or names places outside its folder. */
export function listIn(value: unknown): BackupList | undefined {
  if (!isObject(value) || value.kind !== BACKUP_KIND || value.format !== 1) return undefined;
  const good =
    isCount(value.taken) &&
    isCount(value.until) &&
    allOf(value.migrations, ({ name, digest }) => isText(name) && isHex(digest)) &&
    isDatabase(value, DATABASE) &&
    (value.further === undefined ||
      (Array.isArray(value.further) && value.further.every((one, n) => isObject(one) && isDatabase(one, databaseName(n + 1))))) &&
    allOf(value.ledgers, (one) => isText(one.company) && isText(one.job) && isCount(one.number) && isHex(one.hash)) &&
    allOf(value.objects, (one) => isPart(one) && isKey(one.key) && one.name === nameOf(one.key) && isText(one.type)) &&
    Array.isArray(value.gone) &&
    value.gone.every(isKey);
  return good ? (value as unknown as BackupList) : undefined;
}
