import { DatabaseSync, type SQLInputValue, type StatementSync } from "node:sqlite";

/** One call of a database: a statement by itself, or a batch, which is one transaction and one way there and back. */
export interface DatabaseCall {
  readonly database: string;
  readonly statements: number;
  readonly writes: boolean;
  /** How long SQLite took for it, in this process and in memory. */
  readonly milliseconds: number;
  /** Rows given back; rows that were only passed over are not counted. */
  readonly rows: number;
  /** Rows inserted, changed and removed; of an insert or a removal each index counts as one more. */
  readonly written: number;
  /** Characters of what is given back. */
  readonly characters: number;
}

interface Prepared {
  readonly sql: string;
  readonly values: readonly unknown[];
  bind(...values: unknown[]): Prepared;
  run(): Promise<{ results: unknown[] }>;
  all(): Promise<{ results: unknown[] }>;
  first(): Promise<unknown>;
}

type Row = Readonly<Record<string, unknown>>;

export interface CountedDatabase {
  /** As much of D1 as the edge and the migrations use. */
  readonly d1: { prepare(sql: string): Prepared; batch(list: readonly Prepared[]): Promise<{ results: unknown[] }[]> };
  readonly sqlite: DatabaseSync;
  /** Bytes of its pages that hold something. */
  bytes(): number;
}

const WRITING = /^\s*(?:INSERT(?:\s+OR\s+\w+)?\s+INTO|UPDATE|DELETE\s+FROM|REPLACE\s+INTO)\s+(\w+)/i;
const charactersOf = (rows: readonly Row[]): number => {
  let sum = 0;
  for (const row of rows) for (const value of Object.values(row)) sum += typeof value === "string" ? value.length : 8;
  return sum;
};

/** SQLite in memory behind D1's calls; `noted` hears of every one. */
export function countedDatabase(database: string, noted: (call: DatabaseCall) => void): CountedDatabase {
  const sqlite = new DatabaseSync(":memory:");
  const known = new Map<string, StatementSync>();
  const indexes = new Map<string, number>();
  const changes = sqlite.prepare("SELECT total_changes() AS n");
  const total = (): number => Number((changes.get() as Row).n);

  /** Beside the table itself; the key of a table without row ids is the table. */
  const indexesOf = (table: string): number => {
    const before = indexes.get(table);
    if (before !== undefined) return before;
    const list = sqlite.prepare("SELECT origin FROM pragma_index_list(?)").all(table) as Row[];
    const { wr } = (sqlite.prepare("SELECT wr FROM pragma_table_list WHERE name = ?").get(table) ?? { wr: 0 }) as Row;
    const count = list.filter(({ origin }) => !(wr === 1 && origin === "pk")).length;
    indexes.set(table, count);
    return count;
  };

  const done = ({ sql, values }: Prepared): Row[] => {
    const statement = known.get(sql) ?? sqlite.prepare(sql);
    known.set(sql, statement);
    return statement.all(...(values as SQLInputValue[])) as Row[];
  };

  function called(list: readonly Prepared[]): { results: unknown[] }[] {
    const writes = list.some(({ sql }) => WRITING.test(sql));
    const began = performance.now();
    let written = 0;
    const answers: { results: Row[] }[] = [];
    if (writes) sqlite.exec("BEGIN");
    try {
      for (const one of list) {
        const table = WRITING.exec(one.sql)?.[1];
        const before = table === undefined ? 0 : total();
        answers.push({ results: done(one) });
        if (table !== undefined) written += (total() - before) * (/^\s*UPDATE/i.test(one.sql) ? 1 : 1 + indexesOf(table));
      }
      if (writes) sqlite.exec("COMMIT");
    } catch (thrown) {
      if (writes) sqlite.exec("ROLLBACK");
      throw thrown;
    } finally {
      const milliseconds = performance.now() - began;
      const rows = answers.reduce((sum, { results }) => sum + results.length, 0);
      const characters = answers.reduce((sum, { results }) => sum + charactersOf(results), 0);
      noted({ database, statements: list.length, writes, milliseconds, rows, written, characters });
    }
    return answers;
  }

  const prepare = (sql: string, values: readonly unknown[] = []): Prepared => {
    const prepared: Prepared = {
      sql,
      values,
      bind: (...bound) => prepare(sql, bound),
      run: async () => called([prepared])[0] ?? { results: [] },
      all: async () => called([prepared])[0] ?? { results: [] },
      first: async () => called([prepared])[0]?.results[0] ?? null,
    };
    return prepared;
  };
  return {
    d1: { prepare: (sql) => prepare(sql), batch: async (list) => called(list) },
    sqlite,
    bytes() {
      const [count, free, size] = ["page_count", "freelist_count", "page_size"].map((name) =>
        Number(Object.values(sqlite.prepare(`PRAGMA ${name}`).get() as Row)[0]),
      ) as [number, number, number];
      return (count - free) * size;
    },
  };
}
