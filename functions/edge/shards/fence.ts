/**
 * Fails in the database itself where a company is closed there; what stands in the same batch is not done. The words of the failure
 * hold our own, by which it is known again: D1 hands on nothing but a message.
 */
const CLOSED = "SELECT json_extract('{}', 'company-closed ' || company) FROM closed WHERE company = ?1";

/** That a company is closed in the shard that was asked: it is being moved, or was. */
export const isClosed = (thrown: unknown): boolean => thrown instanceof Error && thrown.message.includes("company-closed");

const isReading = (sql: string): boolean => /^\s*SELECT\b/i.test(sql);

/**
 * A shard as one company's requests reach it. Every writing call, and the first call whatever it is, carries a look at `closed` in its
 * own batch: several edges may run, and each may remember a place that the company has left. Calls that read later in the same request
 * go as they are; rows that a company left behind are removed only when no such request can still be running.
 */
export function fenced(shard: D1Database, company: string): D1Database {
  const real = new WeakMap<D1PreparedStatement, { readonly statement: D1PreparedStatement; readonly reads: boolean }>();
  let isFirst = true;

  async function guarded<T>(list: D1PreparedStatement[]): Promise<D1Result<T>[]> {
    isFirst = false;
    const [, ...results] = await shard.batch<T>([shard.prepare(CLOSED).bind(company), ...list]);
    return results;
  }

  function wrapped(statement: D1PreparedStatement, reads: boolean): D1PreparedStatement {
    const one = async <T>(): Promise<D1Result<T>> => {
      if (reads && !isFirst) return statement.all<T>();
      const [result] = await guarded<T>([statement]);
      if (result === undefined) throw new Error("a batch of the database gave too few results");
      return result;
    };
    const fencedStatement = {
      bind: (...values: unknown[]) => wrapped(statement.bind(...values), reads),
      first: async () => (await one()).results[0] ?? null,
      run: one,
      all: one,
    } as unknown as D1PreparedStatement;
    real.set(fencedStatement, { statement, reads });
    return fencedStatement;
  }

  async function batch<T>(statements: D1PreparedStatement[]): Promise<D1Result<T>[]> {
    const all = statements.map((one) => {
      const known = real.get(one);
      // one of another company's would be written without a look at whether that is closed
      if (known === undefined) throw new Error("a batch holds a statement of another database");
      return known;
    });
    const list = all.map(({ statement }) => statement);
    return !isFirst && all.every(({ reads }) => reads) ? shard.batch<T>(list) : guarded<T>(list);
  }

  return { prepare: (sql: string) => wrapped(shard.prepare(sql), isReading(sql)), batch } as unknown as D1Database;
}
