import type { JobState } from "../../../job/index.ts";

/** The set-up that was made last, while it is not older than a working day: nobody leaves a laser standing overnight. */
const DAY_MS = 12 * 3_600_000;

/** Id of the set-up that a reading taken now belongs to; undefined where one has to be made first. */
export function standingNow({ setUps, facts }: Pick<JobState, "setUps" | "facts">, now: number): string | undefined {
  const last = [...setUps.values()].sort((a, b) => a.position - b.position).at(-1);
  const made = last && facts.find(({ id }) => id === last.id);
  return made !== undefined && now - made.at < DAY_MS ? made.id : undefined;
}
