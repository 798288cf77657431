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

export const isTaken = (thrown: unknown): boolean => thrown instanceof Error && thrown.message.includes("UNIQUE constraint failed");
