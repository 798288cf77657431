import type { Clearance } from "../../job/index.ts";
import type { Glance } from "./keep/shapes.ts";

const nearness: Readonly<Record<Clearance["state"], number>> = { clear: 0, "on word": 1, "not yet": 2 };

/** What is open, the covering that is announced soonest first, then in the order of the tolerance sheet. */
export const openFirst = (all: readonly Clearance[]): readonly Clearance[] => {
  const open = all.filter(({ covered }) => covered === undefined);
  const about = ({ announced }: Clearance): number => announced?.about ?? Number.POSITIVE_INFINITY;
  return [...open].sort((a, b) => (about(a) === about(b) ? 0 : about(a) - about(b)));
};

/** Jobs by what will be covered next: announced soonest, then nearest to clear; a job with nothing open comes last. */
export function inOrder<T extends { readonly title: string; readonly glance: Glance }>(jobs: readonly T[]): readonly T[] {
  const keyed = jobs.map((job) => {
    const [next] = job.glance.open;
    const key: readonly [number, number, number] =
      next === undefined ? [2, 0, 0] : next.about === undefined ? [1, nearness[next.state], next.held] : [0, next.about, 0];
    return { job, key };
  });
  return keyed
    .sort((a, b) => a.key[0] - b.key[0] || a.key[1] - b.key[1] || a.key[2] - b.key[2] || a.job.title.localeCompare(b.job.title))
    .map(({ job }) => job);
}
