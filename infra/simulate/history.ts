import type { DatabaseSync, SQLInputValue } from "node:sqlite";

type Row = Readonly<Record<string, SQLInputValue>>;

/** Tables whose rows are a job's own, and those that are a photo's. */
const OF_JOB = ["job", "entry", "finding", "after_work", "listed", "observed", "photo_use", "record"] as const;
const OF_PHOTO = ["photo", "photo_look"] as const;

/** Hex names of 24 and more digits: of jobs, entries, photos and records. */
const NAMES = /[0-9a-f]{24,}/g;

function rowsOf(sqlite: DatabaseSync, table: string, where: string, ...values: readonly string[]): readonly Row[] {
  return sqlite.prepare(`SELECT * FROM ${table} WHERE ${where}`).all(...values) as unknown as Row[];
}

function insert(sqlite: DatabaseSync, table: string, rows: readonly Row[]): void {
  const [first] = rows;
  if (first === undefined) return;
  const columns = Object.keys(first);
  const statement = sqlite.prepare(`INSERT INTO ${table} (${columns.join(", ")}) VALUES (${columns.map(() => "?").join(", ")})`);
  for (const row of rows) statement.run(...columns.map((column) => row[column] ?? null));
}

/**
 * Puts a finished job of a company into the database so many times again, each with names of its own for the job, its entries, photos
 * and records: rows of a past that was not driven, as large as those of one that was.
 */
export function withHistory(sqlite: DatabaseSync, company: string, job: string, times: number): void {
  const jobs = OF_JOB.map(
    (table) => [table, rowsOf(sqlite, table, `company = ? AND ${table === "job" ? "id" : "job"} = ?`, company, job)] as const,
  );
  const named = "company = ?1 AND sha256 IN (SELECT sha256 FROM photo_use WHERE company = ?1 AND job = ?2)";
  const photos = OF_PHOTO.map((table) => [table, rowsOf(sqlite, table, named, company, job)] as const);
  const all = [...jobs, ...photos];
  const own = new Set([job]);
  for (const [table, rows] of all)
    for (const row of rows) {
      if (table === "entry" || table === "record") own.add(String(row.id));
      if (table === "entry") for (const column of ["digest", "hash"]) own.add(String(row[column]));
      if (table === "photo") own.add(String(row.sha256));
    }
  sqlite.exec("BEGIN");
  for (let copy = 1; copy <= times; copy += 1) {
    const mark = copy.toString(16).padStart(6, "0");
    const renamed = (value: SQLInputValue): SQLInputValue =>
      typeof value === "string" ? value.replace(NAMES, (name) => (own.has(name) ? `${mark}${name.slice(6)}` : name)) : value;
    for (const [table, rows] of all)
      insert(
        sqlite,
        table,
        rows.map((row) =>
          Object.fromEntries(Object.entries(row).map(([column, value]) => [column, column === "company" ? value : renamed(value)])),
        ),
      );
  }
  sqlite.exec("COMMIT");
}
