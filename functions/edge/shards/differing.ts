import { statement } from "../adapters/statement.ts";
import type { Here } from "./copy.ts";
import { parts } from "./tables.ts";

const HEADS = `SELECT e.job, e.number, e.hash FROM (SELECT job, max(number) AS number FROM entry WHERE company = ?1 GROUP BY job) AS h
  JOIN entry AS e ON e.company = ?1 AND e.job = h.job AND e.number = h.number WHERE e.job > ?2 ORDER BY e.job LIMIT 2000`;

interface Head {
  readonly job: string;
  readonly number: number;
  readonly hash: string;
}

async function counts({ database, company }: Here): Promise<readonly number[]> {
  const list = parts.map(({ table, mine }) => statement(database, `SELECT count(*) AS count FROM ${table} WHERE ${mine}`, company));
  return (await database.batch<{ count: number }>(list)).map(({ results }) => results[0]?.count ?? 0);
}

/**
 * What is not the same in both shards, while a company is closed in both: the number of rows of each table, or the last entry of a
 * ledger. Rows themselves were compared as they were written. Undefined: nothing.
 */
export async function differing(one: Here, other: Here): Promise<string | undefined> {
  const [here, there] = await Promise.all([counts(one), counts(other)]);
  const table = parts.find((_, n) => here[n] !== there[n])?.table;
  if (table !== undefined) return table;
  for (let after = ""; ; ) {
    const [heads, others] = await Promise.all(
      [one, other].map(async ({ database, company }) => (await statement(database, HEADS, company, after).all<Head>()).results),
    );
    if (JSON.stringify(heads) !== JSON.stringify(others)) return "the end of a ledger";
    const last = heads?.at(-1);
    if (last === undefined) return undefined;
    after = last.job;
  }
}
