import { type Statement, statement, type Value } from "../adapters/statement.ts";
import type { Part } from "./tables.ts";

export type Row = Readonly<Record<string, string | number | null>>;
/** The values of a part's key, in its order. */
export type Key = readonly (string | number)[];

/** A company's rows in one shard, as one step of a move reads or writes them. */
export interface Here {
  readonly database: D1Database;
  readonly company: string;
  /** The step. One that began later takes over, and this one then writes nothing more. */
  readonly holder: string;
}

/** Fails in the database where another step has taken over, or where the company is open again: nothing of the batch is then done. */
const HELD = `SELECT json_extract('{}', 'move-taken ' || found) FROM
  (SELECT count(*) AS found FROM closed WHERE company = ?1 AND holder = ?2) WHERE found = 0`;
export const isTakenOver = (thrown: unknown): boolean => thrown instanceof Error && thrown.message.includes("move-taken");
const held = ({ database, company, holder }: Here): Statement => statement(database, HELD, company, holder);

/** The shard is closed to all but this step from now on. */
export const close = async ({ database, company, holder }: Here, at: number): Promise<void> => {
  const sql = `INSERT INTO closed (company, since, holder) VALUES (?1, ?2, ?3)
    ON CONFLICT (company) DO UPDATE SET holder = excluded.holder, since = min(closed.since, excluded.since)`;
  await statement(database, sql, company, at, holder).run();
};
export const open = async ({ database, company }: Pick<Here, "database" | "company">): Promise<void> => {
  await statement(database, "DELETE FROM closed WHERE company = ?1", company).run();
};

export const keyOf = (part: Part, row: Row): Key => part.key.map((column) => row[column] as string | number);
const keys = (part: Part): string => `(${part.key.join(", ")})`;
const asked = (part: Part, list: string): string =>
  `${keys(part)} IN (SELECT ${part.key.map((_, n) => `value ->> ${n}`).join(", ")} FROM json_each(${list}))`;

/** The next stretch after a key, in the key's order. */
function stretch(database: D1Database, company: string, part: Part, after: Key): Statement {
  const order = part.key.length === 0 ? "" : ` ORDER BY ${part.key.join(", ")}`;
  const later = after.length === 0 ? "" : ` AND ${keys(part)} > (${after.map((_, n) => `?${n + 2}`).join(", ")})`;
  return statement(database, `SELECT * FROM ${part.table} WHERE ${part.mine}${later}${order} LIMIT ${part.most}`, company, ...after);
}

function named(database: D1Database, company: string, part: Part, list: readonly Key[]): Statement {
  if (part.key.length === 0) return statement(database, `SELECT * FROM ${part.table} WHERE ${part.mine}`, company);
  const sql = `SELECT * FROM ${part.table} WHERE ${part.mine} AND ${asked(part, "?2")} ORDER BY ${part.key.join(", ")}`;
  return statement(database, sql, company, JSON.stringify(list));
}

/** Characters that go into one statement: D1 takes 2 MB a value. */
const MOST_TOGETHER = 700_000;

function inserts(database: D1Database, part: Part, rows: readonly Row[]): Statement[] {
  const columns = Object.keys(rows[0] ?? {});
  const into = `INSERT OR REPLACE INTO ${part.table} (${columns.join(", ")})`;
  const many = `${into} SELECT ${columns.map((column) => `value ->> '${column}'`).join(", ")} FROM json_each(?1)`;
  const list: Statement[] = [];
  let together: string[] = [];
  let size = 0;
  const flush = () => {
    if (together.length > 0) list.push(statement(database, many, `[${together.join(",")}]`));
    together = [];
    size = 0;
  };
  for (const row of rows) {
    const text = JSON.stringify(row);
    if (text.length > MOST_TOGETHER) {
      const places = columns.map((_, n) => `?${n + 1}`).join(", ");
      list.push(statement(database, `${into} VALUES (${places})`, ...columns.map((column) => row[column] as Value)));
      continue;
    }
    if (size + text.length > MOST_TOGETHER) flush();
    together.push(text);
    size += text.length;
  }
  flush();
  return list;
}

const rowsIn = (result: D1Result | undefined): readonly Row[] => (result?.results ?? []) as readonly Row[];

/** Rows are not the same in both shards. */
export class Differs extends Error {
  readonly what: string;

  constructor(what: string) {
    super(`not the same in both shards: ${what}`);
    this.what = what;
  }
}

function sameOrThrow(part: Part, there: readonly Row[], here: readonly Row[]): void {
  const differs = there.length !== here.length || there.some((row, n) => JSON.stringify(row) !== JSON.stringify(here[n]));
  if (differs) throw new Differs(part.table);
}

/** Copies the next stretch and compares what was written with what was read. Gives its rows; fewer than `part.most` are the last. */
export async function copyStretch(from: Pick<Here, "database">, to: Here, part: Part, after: Key): Promise<readonly Row[]> {
  const rows = (await stretch(from.database, to.company, part, after).all<Row>()).results;
  const back = stretch(to.database, to.company, part, after);
  const results = await to.database.batch([held(to), ...inserts(to.database, part, rows), back]);
  sameOrThrow(part, rows, rowsIn(results.at(-1)));
  return rows;
}

/** Makes rows of these keys in the other shard what they are here: written, or gone. */
export async function copyNamed(from: Pick<Here, "database">, to: Here, part: Part, list: readonly Key[]): Promise<readonly Row[]> {
  const rows = (await named(from.database, to.company, part, list).all<Row>()).results;
  const there = new Set(rows.map((row) => JSON.stringify(keyOf(part, row))));
  const gone = list.filter((key) => !there.has(JSON.stringify(key)));
  const remove = `DELETE FROM ${part.table} WHERE ${part.mine}${part.key.length === 0 ? "" : ` AND ${asked(part, "?2")}`}`;
  const values = part.key.length === 0 ? [] : [JSON.stringify(gone)];
  const results = await to.database.batch([
    held(to),
    ...(gone.length === 0 ? [] : [statement(to.database, remove, to.company, ...values)]),
    ...inserts(to.database, part, rows),
    named(to.database, to.company, part, list),
  ]);
  sameOrThrow(part, rows, rowsIn(results.at(-1)));
  return rows;
}

const MOST_REMOVED = 2000;

/** Takes some rows of a part away; false when none are left. */
export async function removeSome(here: Here, part: Part): Promise<boolean> {
  const some =
    part.key.length === 0
      ? part.mine
      : `${part.mine} AND ${keys(part)} IN (SELECT ${part.key.join(", ")} FROM ${part.table} WHERE ${part.mine} LIMIT ${MOST_REMOVED})`;
  const sql = `DELETE FROM ${part.table} WHERE ${some}`;
  const left = `SELECT 1 FROM ${part.table} WHERE ${part.mine} LIMIT 1`;
  const results = await here.database.batch([
    held(here),
    statement(here.database, sql, here.company),
    statement(here.database, left, here.company),
  ]);
  return rowsIn(results.at(-1)).length > 0;
}
