import { statement } from "../adapters/statement.ts";
import type { Environment } from "../environment.ts";
import { type Placed, remembered } from "./remembered.ts";
import { boundIn, FIRST, type ShardName, shardIn } from "./shards.ts";

/** Where companies lie, asked of the first shard and remembered for a while. */
export interface Directory {
  /** Every shard that is bound, the first one first. */
  readonly shards: readonly ShardName[];
  /** By a token's digest or a passkey's credential. `fresh`: past what is remembered. */
  leads(key: string, fresh: boolean): Promise<Placed | undefined>;
  of(company: string): Promise<Placed>;
  /** That a key leads to a company, before it is kept there: false where it leads to another already. */
  note(key: string, placed: Pick<Placed, "company" | "shard">): Promise<boolean>;
  /** The place of a company that is founded: that of one which is there already, or a new one. */
  found(company: string): Promise<Placed>;
}

/** To which company a key leads; rows of companies in the first shard say it themselves. */
const LEADS = `coalesce((SELECT company FROM door WHERE key = ?1),
  (SELECT s.company FROM session_token AS t JOIN session AS s ON s.hash = t.session WHERE t.hash = ?1),
  (SELECT company FROM link WHERE hash = ?1),
  (SELECT company FROM others_link WHERE hash = ?1),
  (SELECT company FROM released_record WHERE hash = ?1),
  (SELECT company FROM passkey WHERE credential = ?1),
  (SELECT company FROM join_code WHERE code = ?1),
  (SELECT company FROM join_code WHERE token = ?1))`;
const LEADS_TO = `SELECT l.company, p.shard, p.version FROM (SELECT ${LEADS} AS company) AS l
  LEFT JOIN placed AS p ON p.company = l.company WHERE l.company IS NOT NULL`;
const OF = "SELECT shard, version FROM placed WHERE company = ?1";
const NOTE = `INSERT INTO door (key, company) SELECT ?1, ?2 WHERE coalesce(${LEADS}, ?2) = ?2 ON CONFLICT (key) DO NOTHING`;
const TAKEN = `SELECT 1 WHERE coalesce(${LEADS}, ?2) <> ?2`;
const FOUND = `INSERT INTO placed (company, shard, version) SELECT ?1, ?2, 1 WHERE NOT EXISTS (SELECT 1 FROM company WHERE id = ?1)
  ON CONFLICT (company) DO NOTHING`;

interface Row {
  readonly shard: string | null;
  readonly version: number | null;
}

export function directoryOf(environment: Environment, clock: () => number): Directory {
  const first = environment.DB;
  const shards = boundIn(environment);
  const known = remembered(first);

  function kept(company: string, row: Row | null): Placed {
    const placed = { company, shard: shardIn(environment, row?.shard ?? FIRST), version: row?.version ?? 0 };
    known.place(placed, clock());
    return placed;
  }

  const of = async (company: string): Promise<Placed> => kept(company, await statement(first, OF, company).first<Row>());

  return {
    shards,
    of,
    async leads(key, fresh) {
      const company = known.companyOf(key);
      if (company !== undefined) return (fresh ? undefined : known.placeOf(company, clock())) ?? of(company);
      const row = await statement(first, LEADS_TO, key).first<Row & { company: string }>();
      if (row === null) return undefined;
      known.door(key, row.company);
      return kept(row.company, row);
    },
    async note(key, { company, shard }) {
      // its own table has it in a moment
      if (shard === FIRST) return (await statement(first, TAKEN, key, company).first()) === null;
      await statement(first, NOTE, key, company).run();
      return (await statement(first, TAKEN, key, company).first()) === null;
    },
    async found(company) {
      const shard = shardIn(environment, environment.NEW_COMPANIES ?? FIRST);
      if (shard !== FIRST) await statement(first, FOUND, company, shard).run();
      return of(company);
    },
  };
}
