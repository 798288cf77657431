import { type Statement, statement } from "../adapters/statement.ts";
import type { Key } from "./copy.ts";
import { FIRST, type ShardName } from "./shards.ts";

/**
 * How far a move has come. `clearing`: what lies about in the target goes. `copying`: every row, while the company works.
 * `catching up`: rows that changed meanwhile. `closed`: the company's writes are refused, the last rows are copied, everything is
 * compared. `moved`: the company works in the target; its old rows are still there, and answer nobody. `removing`: they go.
 */
export type Stage = "clearing" | "copying" | "catching up" | "closed" | "moved" | "removing";

/** A move that is not over, as the directory has it. */
export interface Moving {
  readonly company: string;
  readonly source: ShardName;
  readonly target: ShardName;
  readonly stage: Stage;
  readonly holder: string;
  /** The table that is being copied, by its place among all, and the last key that was copied of it. */
  readonly part: number;
  readonly after: Key;
  /** Rows copied so far. */
  readonly rows: number;
  /** Milliseconds. */
  readonly began: number;
  readonly closed: number | null;
  readonly switched: number | null;
}

type Kept = Omit<Moving, "after"> & { readonly after: string };

/** Moves that are not over. What is written names the step that writes it, and nothing is written when another has taken over. */
export class Moves {
  readonly #directory: D1Database;

  constructor(directory: D1Database) {
    this.#directory = directory;
  }

  async get(company: string): Promise<Moving | undefined> {
    const row = await statement(this.#directory, "SELECT * FROM moving WHERE company = ?1", company).first<Kept>();
    return row === null ? undefined : { ...row, after: JSON.parse(row.after) as Key };
  }

  /** Begins a move from where the company lies now, also in the place of one that is over but for its old rows. */
  async begin(company: string, source: ShardName, target: ShardName, holder: string, now: number): Promise<void> {
    const sql = `INSERT INTO moving (company, source, target, stage, holder, part, after, rows, began)
      SELECT ?1, ?2, ?3, 'clearing', ?4, 0, '[]', 0, ?5
      WHERE ?2 <> ?3 AND coalesce((SELECT shard FROM placed WHERE company = ?1), '${FIRST}') = ?2
      ON CONFLICT (company) DO UPDATE SET source = ?2, target = ?3, stage = 'clearing', holder = ?4, part = 0, after = '[]', rows = 0,
        began = ?5, closed = NULL, switched = NULL WHERE moving.stage IN ('moved', 'removing')`;
    await statement(this.#directory, sql, company, source, target, holder, now).run();
  }

  async take(company: string, holder: string): Promise<void> {
    await statement(this.#directory, "UPDATE moving SET holder = ?2 WHERE company = ?1", company, holder).run();
  }

  /** False where another step has taken over. */
  async note({ company, holder, stage, part, after, rows, closed }: Moving): Promise<boolean> {
    const sql = `UPDATE moving SET stage = ?3, part = ?4, after = ?5, rows = ?6, closed = ?7
      WHERE company = ?1 AND holder = ?2 RETURNING company`;
    const written = await statement(this.#directory, sql, company, holder, stage, part, JSON.stringify(after), rows, closed).first();
    return written !== null;
  }

  /** The company lies in the target from now on: its place and the move's stage, both or neither. */
  async switched({ company, holder, target }: Moving, now: number): Promise<boolean> {
    const mine = "(SELECT 1 FROM moving WHERE company = ?1 AND holder = ?2 AND stage = 'closed')";
    const [placed] = await this.#directory.batch([
      statement(
        this.#directory,
        `INSERT INTO placed (company, shard, version) SELECT ?1, ?3, 1 WHERE EXISTS ${mine}
          ON CONFLICT (company) DO UPDATE SET shard = excluded.shard, version = placed.version + 1 RETURNING company`,
        company,
        holder,
        target,
      ),
      statement(
        this.#directory,
        "UPDATE moving SET stage = 'moved', switched = ?3 WHERE company = ?1 AND holder = ?2 AND stage = 'closed'",
        company,
        holder,
        now,
      ),
    ]);
    return (placed?.results.length ?? 0) > 0;
  }

  async over({ company, holder }: Moving): Promise<void> {
    await statement(this.#directory, "DELETE FROM moving WHERE company = ?1 AND holder = ?2", company, holder).run();
  }

  /** Takes moves over whose writes have been closed for so long that the step must have died; they are to be opened and go on later. */
  async late(before: number, holder: string): Promise<void> {
    const sql = "UPDATE moving SET stage = 'catching up', closed = NULL, holder = ?2 WHERE stage = 'closed' AND closed < ?1";
    await statement(this.#directory, sql, before, holder).run();
  }

  /** Of these companies, those that lie in a shard and are not closed by a move. */
  async workingIn(shard: ShardName, companies: readonly string[]): Promise<readonly string[]> {
    const sql = `SELECT value AS company FROM json_each(?1) WHERE coalesce((SELECT shard FROM placed WHERE company = value), '${FIRST}') = ?2
      AND NOT EXISTS (SELECT 1 FROM moving WHERE company = value AND stage = 'closed')`;
    const { results } = await statement(this.#directory, sql, JSON.stringify(companies), shard).all<{ company: string }>();
    return results.map(({ company }) => company);
  }

  /** To which company these keys lead. */
  doors(keys: readonly string[], company: string): Statement {
    const sql = "INSERT INTO door (key, company) SELECT value, ?2 FROM json_each(?1) WHERE true ON CONFLICT (key) DO NOTHING";
    return statement(this.#directory, sql, JSON.stringify(keys), company);
  }
}
