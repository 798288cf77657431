/**
 * How a call of the database breaks: before anything is done, in the middle of what is to be written together (the database itself
 * takes it back), or after it was written, with only the answer lost.
 */
export type Broken = "before" | "middle" | "answer lost";

const FULL = "D1_ERROR: database or disk is full: SQLITE_FULL";
const LOST = "D1_ERROR: Network connection lost.";
/** Fails in the database itself when it is run. */
const POISON = "SELECT json('{')";

/** The database, where each call first asks whether it is to break, and how. */
export function faultyDatabase(database: D1Database, next: () => Broken | undefined): D1Database {
  const real = new WeakMap<D1PreparedStatement, D1PreparedStatement>();

  async function called<T>(work: () => Promise<T>): Promise<T> {
    const how = next();
    if (how === undefined) return work();
    if (how !== "answer lost") throw new Error(FULL);
    await work();
    throw new Error(LOST);
  }

  const wrapped = (statement: D1PreparedStatement): D1PreparedStatement => {
    const faulty = {
      bind: (...values: unknown[]) => wrapped(statement.bind(...values)),
      first: (...asked: []) => called(() => statement.first(...asked)),
      run: () => called(() => statement.run()),
      all: () => called(() => statement.all()),
      raw: (...asked: []) => called(() => statement.raw(...asked)),
    } as unknown as D1PreparedStatement;
    real.set(faulty, statement);
    return faulty;
  };

  async function batch<T>(statements: D1PreparedStatement[]): Promise<D1Result<T>[]> {
    const list = statements.map((one) => real.get(one) ?? one);
    const how = next();
    if (how === undefined) return database.batch<T>(list);
    if (how === "before") throw new Error(FULL);
    if (how === "answer lost") {
      await database.batch(list);
      throw new Error(LOST);
    }
    const middle = Math.ceil(list.length / 2);
    await database.batch([...list.slice(0, middle), database.prepare(POISON), ...list.slice(middle)]).catch(() => undefined);
    throw new Error(FULL);
  }

  return { prepare: (sql: string) => wrapped(database.prepare(sql)), batch } as unknown as D1Database;
}
