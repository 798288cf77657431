import { isNamedBy, type Sought, signsOf } from "#core/keeping/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { statement } from "./statement.ts";

/** Which ledgers can name a person, told without reading each of them. */
export interface Naming {
  /** Every job that names the person or has entries of the person's, and perhaps some others. */
  jobs(company: string, sought: Sought): Promise<ReadonlySet<string>>;
}

/** Rows at a time; those with signs outside ASCII bring their bodies along. */
const PAGE = 500;

/** The body without what may stand between the digits of a telephone number; the last of them as JSON writes them. */
const TOGETHER = ["' '", "'-'", "'('", "')'", "'.'", "'/'", "'\\n'", "'\\t'", "'\\r'", "'\\f'", "'\\u000b'"].reduce(
  (text, sign) => `replace(${text}, ${sign}, '')`,
  "body",
);
const WORD = "EXISTS (SELECT 1 FROM json_each(?2) AS w WHERE instr(lower(e.body), w.value) > 0)";
const NUMBER = `EXISTS (SELECT 1 FROM json_each(?3) AS n WHERE instr(${TOGETHER}, n.value) > 0)`;
const OWN = "(?4 <> '' AND (instr(e.envelope, ?4) > 0 OR instr(e.body, ?4) > 0))";
/** SQLite tells case and digits of ASCII alone: whatever holds more is read here. */
const MORE = "length(e.body) <> length(CAST(e.body AS BLOB))";
const ROWS = `SELECT job, number, has, CASE WHEN has THEN NULL ELSE body END AS body FROM
  (SELECT job, number, body, ${WORD} OR ${NUMBER} OR ${OWN} AS has, ${MORE} AS more FROM entry AS e
    WHERE company = ?1 AND (job, number) > (?5, ?6))
  WHERE has OR more ORDER BY job, number LIMIT ${PAGE}`;

interface Row {
  readonly job: string;
  readonly number: number;
  readonly has: number;
  readonly body: string | null;
}

export const namingIn = (database: D1Database): Naming => ({
  async jobs(company, sought) {
    const { words, numbers } = signsOf(sought);
    const found = new Set<string>();
    for (let [job, number] = ["", 0]; ; ) {
      const values = [company, JSON.stringify(words), JSON.stringify(numbers), sought.person ?? "", job, number];
      const { results } = await statement(database, ROWS, ...values).all<Row>();
      for (const row of results)
        if (row.body === null || (!found.has(row.job) && isNamedBy(JSON.parse(row.body) as Json, sought))) found.add(row.job);
      const last = results.at(-1);
      if (last === undefined || results.length < PAGE) return found;
      ({ job, number } = last);
    }
  },
});
