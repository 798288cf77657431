import { message } from "../../job/index.ts";
import { type Candidate, grouped, label } from "../answering.ts";
import type { PictureCarried } from "../carried.ts";

export interface UsedAgain {
  readonly step: string;
  readonly jobs: readonly string[];
  readonly by: "same bytes" | "looks the same";
  readonly persons: readonly string[];
}

/** A likeness of an even picture (a wall, the dark) is near to nothing or everything, and says nothing. */
const saysLittle = (likeness: string): boolean => {
  const bits = [...likeness].reduce((sum, digit) => sum + (Number.parseInt(digit, 16).toString(2).match(/1/g)?.length ?? 0), 0);
  return bits < 12 || bits > 52;
};

/** The pictures of one job. */
export interface JobPictures {
  readonly job: string;
  readonly pictures: readonly PictureCarried[];
}

type KeyOf = (picture: PictureCarried) => string | undefined;

/** Keys that stand in two jobs or more. Most stand in one: nothing is kept of those but the first job. */
function keysInSeveral(jobs: readonly JobPictures[], keyOf: KeyOf): ReadonlySet<string> {
  const first = new Map<string, string>();
  const several = new Set<string>();
  for (const { job, pictures } of jobs) {
    for (const picture of pictures) {
      const key = keyOf(picture);
      if (key === undefined) continue;
      const known = first.get(key);
      if (known === undefined) first.set(key, job);
      else if (known !== job) several.add(key);
    }
  }
  return several;
}

function inSeveral(jobs: readonly JobPictures[], by: UsedAgain["by"], keyOf: KeyOf): readonly UsedAgain[] {
  const several = keysInSeveral(jobs, keyOf);
  if (several.size === 0) return [];
  const all = jobs.flatMap(({ job, pictures }) =>
    pictures.flatMap((picture) => {
      const key = keyOf(picture);
      return key !== undefined && several.has(key) && !(by === "looks the same" && saysLittle(key)) ? [{ job, picture, key }] : [];
    }),
  );
  return [...grouped(all, ({ key }) => key).values()].map((own) => ({
    step: own[0]?.picture.step ?? "",
    jobs: [...new Set(own.map(({ job }) => job))],
    by,
    persons: [...new Set(own.map(({ picture }) => picture.person))],
  }));
}

/** Pictures of one job that stand in another one too, by their bytes or by what they look like. */
export function usedAgain(jobs: readonly JobPictures[]): readonly UsedAgain[] {
  const bytes = inSeveral(jobs, "same bytes", ({ photo }) => photo);
  const known = new Set(bytes.map(({ jobs: of }) => of.join(" ")));
  const looks = inSeveral(jobs, "looks the same", ({ likeness }) => likeness);
  return [...bytes, ...looks.filter(({ jobs: of }) => !known.has(of.join(" ")))].sort((a, b) => b.jobs.length - a.jobs.length);
}

export const usedAgainCandidate = (found: readonly UsedAgain[]): Candidate => ({
  about: label("step", found[0]?.step ?? ""),
  what: "picture used again",
  p: 0,
  says: message("carry.picture", { pictures: found.length, jobs: new Set(found.flatMap(({ jobs }) => jobs)).size }),
});
