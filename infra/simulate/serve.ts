import { chanceFrom } from "../chance/index.ts";
import type { Arrivals } from "./arrivals.ts";
import { demandOf, ELSEWHERE } from "./demand.ts";
import { Fifo, Tally, type Waits } from "./fifo.ts";
import { type StepName, stepNames } from "./step.ts";
import type { ServedStep } from "./traces.ts";

/** A step under way. */
interface Going {
  readonly began: number;
  readonly step: number;
  readonly calls: ServedStep["calls"];
  readonly pause: number;
  next: number;
  at: number;
}

/** Earliest first. */
class Heap {
  readonly #list: Going[] = [];
  get first(): Going | undefined {
    return this.#list[0];
  }
  push(one: Going): void {
    const list = this.#list;
    let i = list.length;
    list.push(one);
    while (i > 0) {
      const above = (i - 1) >> 1;
      if ((list[above] as Going).at <= one.at) break;
      list[i] = list[above] as Going;
      i = above;
    }
    list[i] = one;
  }
  pop(): Going | undefined {
    const list = this.#list;
    const top = list[0];
    const last = list.pop();
    if (last === undefined || list.length === 0) return top;
    let i = 0;
    for (;;) {
      let below = 2 * i + 1;
      if (below >= list.length) break;
      if (below + 1 < list.length && (list[below + 1] as Going).at < (list[below] as Going).at) below += 1;
      if ((list[below] as Going).at >= last.at) break;
      list[i] = list[below] as Going;
      i = below;
    }
    list[i] = last;
    return top;
  }
}

export interface Served {
  /**
   * The hour in which most work was begun, and the share of the database's time that this work takes: told from what is asked, since a
   * database that falls behind puts what it is asked off into later hours.
   */
  readonly database: ReturnType<Fifo["busiest"]>;
  /** From the first request of a step to its last answer, milliseconds. */
  readonly answers: Readonly<Partial<Record<StepName, Waits>>>;
  readonly steps: Readonly<Record<StepName, number>>;
  /** Calls that the database served. */
  readonly calls: number;
}

/**
 * Serves steps through one database, which does one call at a time: each step's calls one after another, with what goes by between them
 * spread evenly. The directory is the first shard: it serves the calls that ask for it, those of other shards' companies too (`ELSEWHERE`
 * added to their steps' codes); in the other shards such a call takes its time and holds nobody up.
 */
export function serve(arrivals: Arrivals, steps: ReadonlyMap<StepName, readonly ServedStep[]>, seed: number, isDirectory: boolean): Served {
  const chance = chanceFrom(seed);
  const database = new Fifo(1);
  const going = new Heap();
  const tallies = stepNames.map(() => new Tally());
  const counts = stepNames.map(() => 0);
  const here = stepNames.map((name) => steps.get(name) ?? []);
  const onlyDirectory = (list: readonly ServedStep[]) =>
    list.map((one) => ({ ...one, calls: one.calls.filter(({ directory }) => directory) }));
  const elsewhere = stepNames.map((name) => onlyDirectory(steps.get(name) ?? []));
  let [calls, i] = [0, 0];
  const { at, step } = arrivals;
  for (;;) {
    const top = going.first;
    const next = i < at.length ? (at[i] as number) : Number.POSITIVE_INFINITY;
    if (top === undefined && next === Number.POSITIVE_INFINITY) break;
    if (top === undefined || next <= top.at) {
      const code = step[i] as number;
      i += 1;
      if (code < ELSEWHERE) counts[code] = (counts[code] ?? 0) + 1;
      const list = code < ELSEWHERE ? here[code] : elsewhere[code - ELSEWHERE];
      const one = list?.[chance.below(list.length)];
      if (one === undefined) continue;
      const pause = one.between / (one.calls.length + 1);
      going.push({ began: next, step: code, calls: one.calls, pause, next: 0, at: next + pause });
      continue;
    }
    going.pop();
    const call = top.calls[top.next];
    if (call === undefined) {
      tallies[top.step]?.note(top.at - top.began);
      continue;
    }
    top.next += 1;
    let done = top.at + call.holds;
    if (!call.directory || isDirectory) {
      done = database.served(top.at, call.holds);
      calls += 1;
    }
    top.at = done + call.after + top.pause;
    going.push(top);
  }
  const byName = <T>(of: (code: number) => T): Record<StepName, T> =>
    Object.fromEntries(stepNames.map((name, code) => [name, of(code)])) as Record<StepName, T>;
  const { hour, use } = demandOf(arrivals, here, elsewhere, isDirectory);
  return {
    database: { hour, use, waits: database.waitsIn(hour) },
    answers: byName((code) => tallies[code]?.waits() as Waits),
    steps: byName((code) => counts[code] ?? 0),
    calls,
  };
}
