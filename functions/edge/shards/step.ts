import { pause } from "../lanes.ts";
import type { Services } from "../services.ts";
import { close, copyStretch, Differs, type Here, keyOf, open, type Row, removeSome } from "./copy.ts";
import { differing } from "./differing.ts";
import { beginMarks, copyMarked, endMarks } from "./marks.ts";
import type { Moves, Moving } from "./moving.ts";
import { databaseOf, FIRST, type ShardName } from "./shards.ts";
import { type Part, parts } from "./tables.ts";

/** One step copies for about so long, so that it is over well before whoever asked gives up. */
const STEP_MS = 2_000;
/** With fewer changed rows than so many left the company is closed, and after so many steps that did not come down to it. */
const MOST_LEFT = 10;
const MOST_CHASES = 30;
const LONGEST_PAUSE_MS = 500;
/** Old rows stay so long after the switch: a request that had begun to read them is over by then. */
export const READING_MS = 10_000;
/** One step of a move, by what the directory says of it; `run` writes there how far it has come. */
export class Step {
  readonly #moves: Moves;
  readonly #clock: () => number;
  readonly #from: Here;
  readonly #to: Here;
  #moving: Moving;

  constructor(services: Services, moves: Moves, moving: Moving) {
    const { company, holder } = moving;
    const here = (shard: ShardName): Here => ({ database: databaseOf(services.environment, shard), company, holder });
    this.#moves = moves;
    this.#clock = services.clock;
    this.#moving = moving;
    this.#from = here(moving.source);
    this.#to = here(moving.target);
  }

  async #note(change: Partial<Moving>): Promise<void> {
    this.#moving = { ...this.#moving, ...change };
    if (!(await this.#moves.note(this.#moving))) throw new Error("move-taken");
  }

  /**
   * The shard is closed for this step, and for this step alone: that no other has begun is asked after the shard is closed, because
   * one that begins later closes it for itself before it does anything. What is closed here in vain is opened again by `openLate`.
   */
  async #hold(here: Here): Promise<void> {
    await close(here, this.#clock());
    const now = await this.#moves.get(this.#moving.company);
    if (now?.holder !== this.#moving.holder || now.stage !== this.#moving.stage) throw new Error("move-taken");
  }

  /** The company's rows are gone from a shard that is closed for this step. */
  async #emptied(here: Here, end: number): Promise<boolean> {
    for (const part of [...parts].reverse()) while (await removeSome(here, part)) if (this.#clock() > end) return false;
    return true;
  }

  #copied = async (part: Part, rows: readonly Row[]): Promise<void> => {
    const keys = (part.doors ?? []).flatMap((column) => rows.map((row) => String(row[column])));
    if (keys.length > 0 && this.#moving.target !== FIRST) await this.#moves.doors(keys, this.#moving.company).run();
    this.#moving = { ...this.#moving, rows: this.#moving.rows + rows.length };
  };

  async #clear(end: number): Promise<void> {
    if (!(await this.#emptied(this.#to, end))) return;
    await beginMarks(this.#from.database, this.#moving.company);
    await this.#note({ stage: "copying" });
  }

  async #copy(end: number): Promise<void> {
    while (this.#clock() < end) {
      const part = parts[this.#moving.part];
      if (part === undefined) return this.#note({ stage: "catching up" });
      const began = this.#clock();
      const rows = await copyStretch(this.#from, this.#to, part, this.#moving.after);
      await this.#copied(part, rows);
      const last = rows.at(-1);
      const more = last !== undefined && part.key.length > 0 && rows.length === part.most;
      await this.#note(more ? { after: keyOf(part, last) } : { part: this.#moving.part + 1, after: [] });
      // a database does one thing at a time: half of its time stays for whoever works in it
      await pause(Math.min(this.#clock() - began, LONGEST_PAUSE_MS));
    }
  }

  /** A busy company is never caught up with quite: what is left at last is little, and is copied while it is closed. */
  async #catchUp(end: number): Promise<void> {
    let left = MOST_LEFT;
    while (left >= MOST_LEFT && this.#clock() < end) left = await copyMarked(this.#from, this.#to, this.#copied);
    // here `part` counts the steps
    if (left >= MOST_LEFT && this.#moving.part < parts.length + MOST_CHASES) return this.#note({ part: this.#moving.part + 1 });
    await this.#note({ stage: "closed", closed: this.#clock() });
    await this.#last();
  }

  async #last(): Promise<void> {
    await this.#hold(this.#from);
    while ((await copyMarked(this.#from, this.#to, this.#copied)) > 0);
    const differs = await differing(this.#from, this.#to);
    if (differs !== undefined) {
      await this.#note({ stage: "clearing", part: 0, after: [], rows: 0, closed: null });
      await open(this.#from);
      throw new Differs(differs);
    }
    const now = this.#clock();
    if (!(await this.#moves.switched(this.#moving, now))) throw new Error("move-taken");
    this.#moving = { ...this.#moving, stage: "moved", switched: now };
    await this.#settle();
  }

  /** The company is open where it lies now. */
  async #settle(): Promise<void> {
    await open(this.#to);
    await endMarks(this.#from.database, this.#moving.company);
  }

  async #remove(end: number): Promise<void> {
    if (this.#moving.stage === "moved") await this.#note({ stage: "removing" });
    await this.#hold(this.#from);
    if (await this.#emptied(this.#from, end)) await this.#moves.over(this.#moving);
  }

  async run(remove: boolean): Promise<Moving> {
    const now = this.#clock();
    const end = now + STEP_MS;
    const { stage, switched } = this.#moving;
    if (switched === null) await this.#hold(this.#to);
    if (stage === "clearing") await this.#clear(end);
    else if (stage === "copying") await this.#copy(end);
    else if (stage === "catching up") await this.#catchUp(end);
    else if (stage === "closed") await this.#last();
    else {
      if (stage === "moved") await this.#settle();
      if (remove && now - (switched ?? now) >= READING_MS) await this.#remove(end);
    }
    return this.#moving;
  }
}
