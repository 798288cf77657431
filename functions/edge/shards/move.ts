import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { statement } from "../adapters/statement.ts";
import { newId } from "../chance.ts";
import type { Services } from "../services.ts";
import { Differs, isTakenOver, open } from "./copy.ts";
import { isPlainId } from "./marks.ts";
import { Moves, type Moving } from "./moving.ts";
import { boundIn, databaseOf, FIRST, type ShardName } from "./shards.ts";
import { Step } from "./step.ts";

/** Nobody's writes are refused for longer: a step that died is given up, and the company opened where it was. */
export const CLOSED_MS = 60_000;

export interface MoveAsked {
  readonly company: string;
  readonly to: ShardName;
  /** The old rows are to go. */
  readonly remove: boolean;
}

/** `there`: nothing is left to do. */
export type Stand = Pick<Moving, "stage" | "part" | "rows" | "closed" | "switched"> | { readonly stage: "there" };

/**
 * One step of a move, as long as is good for one request; asked again until its stage is `moved`, or `there` after `remove`. Broken off
 * anywhere it goes on where it was. Refuses company-unknown, shard-unknown, move-other while the company is being moved elsewhere, or
 * when a step that began later took over.
 */
export async function moveOn(services: Services, { company, to, remove }: MoveAsked): Promise<Outcome<Stand>> {
  const { environment, clock, directory } = services;
  if (!boundIn(environment).includes(to) || directory.shards.length < 2) return refuse("shard-unknown", "to", {});
  const moves = new Moves(databaseOf(environment, FIRST));
  const { shard } = await directory.of(company);
  const there = statement(databaseOf(environment, shard), "SELECT 1 FROM company WHERE id = ?1", company);
  if (!isPlainId(company) || (await there.first()) === null) return refuse("company-unknown", "company", {});
  const before = await moves.get(company);
  const holder = newId();
  const isOver = before === undefined || before.stage === "moved" || before.stage === "removing";
  if (isOver && shard !== to) {
    // rows that were left in a third shard must be gone before anybody forgets them
    if (before !== undefined && before.source !== to) return refuse("move-other", "to", {});
    await moves.begin(company, shard, to, holder, clock());
  } else if (before === undefined) return ok({ stage: "there" });
  else if (before.target !== to) return refuse("move-other", "to", {});
  await moves.take(company, holder);
  const moving = await moves.get(company);
  if (moving === undefined || moving.holder !== holder || moving.target !== to) return refuse("move-other", "company", {});
  try {
    const stand = await new Step(services, moves, moving).run(remove);
    return ok((await moves.get(company)) === undefined ? { stage: "there" } : stand);
  } catch (thrown) {
    if (isTakenOver(thrown)) return refuse("move-other", "company", {});
    if (thrown instanceof Differs) return refuse("move-differs", "company", { what: thrown.what });
    throw thrown;
  }
}

/** Opens companies again whose move has died while they were closed. The move itself goes on when it is asked to. */
export async function openLate({ environment, clock, directory }: Services): Promise<void> {
  if (directory.shards.length < 2) return;
  const moves = new Moves(databaseOf(environment, FIRST));
  const before = clock() - CLOSED_MS;
  await moves.late(before, newId());
  for (const shard of directory.shards) {
    const database = databaseOf(environment, shard);
    const { results } = await statement(database, "SELECT company FROM closed WHERE since < ?1", before).all<{ company: string }>();
    const names = results.map(({ company }) => company);
    for (const company of await moves.workingIn(shard, names)) await open({ database, company });
  }
}
