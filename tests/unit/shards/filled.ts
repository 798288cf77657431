import type { DatabaseSync } from "node:sqlite";

interface Column {
  readonly name: string;
  readonly type: string;
  readonly notnull: number;
}

export const tablesOf = (database: DatabaseSync): readonly string[] =>
  database
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .all()
    .map(({ name }) => String(name));

export const columnsOf = (database: DatabaseSync, table: string): readonly Column[] =>
  database.prepare(`PRAGMA table_info("${table}")`).all() as unknown as Column[];

/** What must not be altered on the way: quotes, a line's end, letters beyond the first plane, an empty text, digits that are text. */
const texts = ["plain", 'it\'s "quoted"', "two\nlines \\ {", "🜄 Straße", "", "007"];

/** So many rows of a company in a table; every value is told by table, company and number. */
export function fill(database: DatabaseSync, table: string, company: string, count: number): void {
  const columns = columnsOf(database, table);
  for (let n = 0; n < count; n += 1) {
    const values = columns.map(({ name, type, notnull }) => {
      if (name === "company" || (table === "company" && name === "id")) return company;
      if (table === "session_token" && name === "session") return `session-hash-${company}-${n}`;
      if (notnull === 0 && n % 2 === 1) return null;
      // not more than one seal key in use
      if (table === "seal_key" && name === "retired") return n === 0 ? null : n;
      if (type === "INTEGER") return n * 1_000_003 + name.length;
      return `${table}-${name}-${company}-${n}${["hash", "id", "credential"].includes(name) ? "" : (texts[n % texts.length] ?? "")}`;
    });
    const places = columns.map(() => "?").join(", ");
    database.prepare(`INSERT OR IGNORE INTO "${table}" VALUES (${places})`).run(...values);
  }
}

/** Every row of a table, as text, in an order of its own. */
export const rowsOf = (database: DatabaseSync, table: string): readonly string[] =>
  database
    .prepare(`SELECT * FROM "${table}"`)
    .all()
    .map((row) => JSON.stringify(row))
    .sort();
