import { statement } from "../adapters/statement.ts";
import { copyNamed, type Here, type Key } from "./copy.ts";
import { type Part, parts } from "./tables.ts";

/** A company's id as it stands in the text of a trigger, where no value can be bound. */
export const isPlainId = (company: string): boolean => /^[A-Za-z0-9_-]{1,64}$/.test(company);

const happenings = [
  ["INSERT", "NEW"],
  ["UPDATE", "NEW"],
  ["DELETE", "OLD"],
] as const;
const nameOf = (company: string, { table }: Part, happening: string): string => `"moving ${company} ${table} ${happening}"`;

/** Notes which of a company's rows change from now on. Each note is numbered anew, also that of a row that was noted before. */
export async function beginMarks(database: D1Database, company: string): Promise<void> {
  if (!isPlainId(company)) throw new Error("no id that a trigger can hold");
  const triggers = parts.flatMap((part) =>
    happenings.map(([happening, row]) => {
      const key = `json_array(${part.key.map((column) => `${row}.${column}`).join(", ")})`;
      return `CREATE TRIGGER IF NOT EXISTS ${nameOf(company, part, happening)} AFTER ${happening} ON ${part.table}
        WHEN ${part.companyOf(row)} = '${company}' BEGIN
        DELETE FROM changed WHERE company = '${company}' AND part = '${part.table}' AND key = ${key};
        INSERT INTO changed (company, part, key) VALUES ('${company}', '${part.table}', ${key}); END`;
    }),
  );
  await database.batch([
    ...triggers.map((sql) => database.prepare(sql)),
    statement(database, "DELETE FROM changed WHERE company = ?1", company),
  ]);
}

export async function endMarks(database: D1Database, company: string): Promise<void> {
  if (!isPlainId(company)) throw new Error("no id that a trigger can hold");
  const drops = parts.flatMap((part) => happenings.map(([happening]) => `DROP TRIGGER IF EXISTS ${nameOf(company, part, happening)}`));
  await database.batch([
    ...drops.map((sql) => database.prepare(sql)),
    statement(database, "DELETE FROM changed WHERE company = ?1", company),
  ]);
}

const MOST_MARKS = 100;

interface Mark {
  readonly number: number;
  readonly part: string;
  readonly key: string;
}

/** Copies some rows that changed. Gives how many notes there were, and every part with the rows as they are now. */
export async function copyMarked(
  from: Pick<Here, "database">,
  to: Here,
  copied: (part: Part, rows: Awaited<ReturnType<typeof copyNamed>>) => Promise<void>,
): Promise<number> {
  const sql = "SELECT number, part, key FROM changed WHERE company = ?1 ORDER BY number LIMIT ?2";
  const { results } = await statement(from.database, sql, to.company, MOST_MARKS).all<Mark>();
  for (const part of parts) {
    const list = results.filter((mark) => mark.part === part.table).map(({ key }) => JSON.parse(key) as Key);
    for (let n = 0; n < list.length; n += part.most) await copied(part, await copyNamed(from, to, part, list.slice(n, n + part.most)));
  }
  // a row that has changed again since it was read has a new number and stays noted
  const done = "DELETE FROM changed WHERE company = ?1 AND number IN (SELECT value FROM json_each(?2))";
  await statement(from.database, done, to.company, JSON.stringify(results.map(({ number }) => number))).run();
  return results.length;
}
