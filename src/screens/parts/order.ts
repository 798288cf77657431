import type { JobList } from "../../wire/index.ts";

export type ListedJob = JobList["jobs"][number];
export type ListedCovering = ListedJob["state"]["coverings"][number];

export const openOf = (job: ListedJob): readonly ListedCovering[] => job.state.coverings.filter((covering) => !covering.done);

/** The covering that comes next: the one announced soonest, else the first that is still open. */
export function nextOf(job: ListedJob): ListedCovering | undefined {
  const open = openOf(job);
  const announced = open.filter(({ about }) => about !== undefined);
  return announced.sort((a, b) => (a.about ?? 0) - (b.about ?? 0))[0] ?? open[0];
}

const toClear = { clear: 0, "on word": 1, "not yet": 2 } as const;

const nearness = (job: ListedJob): readonly [number, number, number] => {
  const next = nextOf(job);
  if (next === undefined) return [2, 0, 0];
  return next.about === undefined ? [1, toClear[next.state], next.lines] : [0, next.about, 0];
};

/** Jobs by their soonest covering: as announced, then what is nearest to clear; a job with nothing open comes last. */
export const soonestFirst = (jobs: readonly ListedJob[]): readonly ListedJob[] =>
  [...jobs].sort((a, b) => {
    const [x, y] = [nearness(a), nearness(b)];
    return x[0] - y[0] || x[1] - y[1] || x[2] - y[2] || a.title.localeCompare(b.title);
  });
