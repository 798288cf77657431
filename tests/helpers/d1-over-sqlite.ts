import type { DatabaseSync, SQLInputValue } from "node:sqlite";

interface Prepared {
  bind(...values: unknown[]): Prepared;
  run(): Promise<{ results: unknown[] }>;
  all(): Promise<{ results: unknown[] }>;
  first(): Promise<unknown>;
}

/** As much of D1 as the edge and the migrations use, over SQLite; a batch is one transaction, as in D1. */
export const d1Over = (sqlite: DatabaseSync) => {
  const prepare = (sql: string, values: readonly unknown[] = []): Prepared => {
    const rows = (): unknown[] => sqlite.prepare(sql).all(...(values as SQLInputValue[]));
    return {
      bind: (...bound) => prepare(sql, bound),
      run: async () => ({ results: rows() }),
      all: async () => ({ results: rows() }),
      first: async () => rows()[0] ?? null,
    };
  };
  return {
    prepare: (sql: string) => prepare(sql),
    batch: async (list: readonly Prepared[]) => {
      sqlite.exec("BEGIN");
      try {
        const answers: { results: unknown[] }[] = [];
        for (const statement of list) answers.push(await statement.run());
        sqlite.exec("COMMIT");
        return answers;
      } catch (error) {
        sqlite.exec("ROLLBACK");
        throw error;
      }
    },
  };
};
