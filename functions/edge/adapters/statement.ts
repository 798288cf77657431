export type Value = string | number | null;
export type Statement = D1PreparedStatement;

/**
 * The one way in which values reach the database. D1 stores NaN as NULL and rounds large integers without a word: both
 * are bugs of the caller and throw.
 */
export function statement(database: D1Database, sql: string, ...values: readonly Value[]): Statement {
  for (const value of values) {
    if (value === undefined) throw new TypeError(`undefined for: ${sql}`);
    if (typeof value === "number" && !Number.isSafeInteger(value)) throw new RangeError(`not a whole number for: ${sql}`);
  }
  return database.prepare(sql).bind(...values);
}

const NOT_SO = "not-so-any-more";
/**
 * Fails where the condition holds, and its batch with it: what was known when the batch was made is not so any more. The words are
 * joined to a row, since SQLite works out beforehand what is the same for all rows.
 */
export const unless = (database: D1Database, condition: string, ...values: readonly Value[]): Statement =>
  statement(database, `SELECT json_extract('{}', '${NOT_SO}' || one.value) FROM json_each('[""]') AS one WHERE ${condition}`, ...values);

export const isNotSo = (thrown: unknown): boolean => thrown instanceof Error && thrown.message.includes(NOT_SO);

export const isTaken = (thrown: unknown): boolean => thrown instanceof Error && thrown.message.includes("UNIQUE constraint failed");
