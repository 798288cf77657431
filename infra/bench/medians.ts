/** One of several ways to do the same, measured beside the others. */
export interface Way<Name extends string> {
  readonly name: Name;
  readonly run: () => Promise<unknown>;
  /** Waits, untimed, until what the run has left behind is done, so that the next way has the machine to itself. */
  readonly settle?: () => Promise<unknown>;
}

/** In milliseconds. */
export interface Took {
  /** As the clock goes: what a caller waits. */
  readonly time: number;
  /** Of the processor, over all threads of this process: the same while other processes keep the machine busy. */
  readonly work: number;
}

/**
 * Median of what each way takes. The ways take turns, and each round begins with another one, so that what slows the
 * machine down for a while slows all of them. `warm` rounds before count for nothing: a process that reads photos all day
 * has its code compiled.
 */
export async function medians<Name extends string>(
  ways: readonly Way<Name>[],
  rounds: number,
  warm: number,
): Promise<Readonly<Record<Name, Took>>> {
  const taken = new Map<Name, Took[]>(ways.map(({ name }) => [name, []]));
  for (let round = -warm; round < rounds; round += 1) {
    for (let n = 0; n < ways.length; n += 1) {
      const { name, run, settle } = ways[(n + round + warm) % ways.length] as Way<Name>;
      const before = process.cpuUsage();
      const began = performance.now();
      await run();
      const time = performance.now() - began;
      const { user, system } = process.cpuUsage(before);
      if (round >= 0) taken.get(name)?.push({ time, work: (user + system) / 1000 });
      await settle?.();
    }
  }
  const middle = (list: readonly Took[]): Took => ({
    time: median(list.map(({ time }) => time)),
    work: median(list.map(({ work }) => work)),
  });
  return Object.fromEntries([...taken].map(([name, list]) => [name, middle(list)])) as Record<Name, Took>;
}

export function median(list: readonly number[]): number {
  if (list.length === 0) throw new RangeError("no median of nothing");
  const sorted = [...list].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] as number) : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2;
}
