import { message } from "../../job/index.ts";
import { poissonAtLeast } from "../../statistics/index.ts";
import { type Candidate, grouped, label } from "../answering.ts";
import type { RimOfJob } from "./corners.ts";

export interface SameSet {
  /** Sets with equal readings on different jobs, their jobs in order. */
  readonly jobs: readonly string[];
  readonly step: string;
  readonly typed: string;
}

/** Share of pairs that agree in one key. */
function matching(keys: readonly string[]): number {
  const pairs = (keys.length * (keys.length - 1)) / 2;
  if (pairs === 0) return 0;
  let same = 0;
  for (const own of grouped(keys, (key) => key).values()) same += (own.length * (own.length - 1)) / 2;
  return same / pairs;
}

/**
 * How often two sets would be the same by chance: the first place by how often two jobs share it, every further one by how often two
 * jobs share its distance from the first. The last place is given nothing: of a rim in one plane it follows from the others. Places
 * whose work is alike in every job make that chance large, and then nothing is said.
 */
function expectedPairs(rims: readonly RimOfJob[]): number {
  const sets = rims.map(({ values }) => values);
  const places = Math.min(...sets.map(({ length }) => length));
  let chance = matching(sets.map((set) => String(set[0])));
  for (let place = 1; place < places - 1; place++) chance *= matching(sets.map((set) => String((set[place] ?? 0) - (set[0] ?? 0))));
  return (chance * sets.length * (sets.length - 1)) / 2;
}

/** Sets of readings that stand the same on two jobs or more; all equal ones are another matter. */
export function sameSets(rims: readonly RimOfJob[]): { readonly found: readonly SameSet[]; readonly p: number } {
  const uneven = rims.filter((rim) => new Set(rim.values).size > 1);
  const found: SameSet[] = [];
  let pairs = 0;
  let expected = 0;
  for (const [step, own] of grouped(uneven, ({ step: of, values }) => `${of} ${values.length}`)) {
    for (const [, same] of grouped(own, ({ values }) => values.join(" "))) {
      const jobs = [...new Set(same.map(({ job }) => job))];
      if (jobs.length < 2) continue;
      pairs += (jobs.length * (jobs.length - 1)) / 2;
      found.push({ jobs, step: step.split(" ")[0] ?? "", typed: same[0]?.typed ?? "" });
    }
    expected += expectedPairs(own);
  }
  return { found, p: pairs <= expected ? 1 : poissonAtLeast(pairs, expected) };
}

export const sameSetCandidate = ({ found, p }: ReturnType<typeof sameSets>): Candidate => ({
  about: label("step", found[0]?.step ?? ""),
  what: "same set on two jobs",
  p,
  says: message("carry.same-set", { sets: found.length, jobs: new Set(found.flatMap(({ jobs }) => jobs)).size }),
});
