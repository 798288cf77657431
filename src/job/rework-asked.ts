import type { About } from "./fact.ts";
import { aboutOf, concerns, type Instance, sameAbout } from "./series.ts";
import { factsOf, type JobState } from "./state.ts";

/** Rework that the office asked for and that nobody has entered as done. */
export interface ReworkAsked {
  readonly entry: string;
  readonly about: About;
  readonly reason: string;
  /** Milliseconds. */
  readonly at: number;
}

/** Whether something about `done` answers what was asked about `asked`: the same, or of a check one of the items that it reads. */
function answers({ sheet }: JobState, done: About, asked: About): boolean {
  if (asked.tag !== undefined && done.tag !== undefined && asked.tag !== done.tag) return false;
  if (done.item === asked.item && done.check === asked.check) return true;
  const check = sheet?.checks.find(({ id }) => id === asked.check);
  return check !== undefined && done.item !== undefined && check.items.includes(done.item);
}

/** Rework still asked for, oldest first: until it is entered as reworked, or accepted as built instead. Of two about one thing the newer counts. */
export function reworkAsked(state: JobState): readonly ReworkAsked[] {
  const since = [...factsOf(state, "reworked"), ...factsOf(state, "concession")];
  const asked = factsOf(state, "rework-asked");
  return asked
    .filter(
      ({ position, what: { about } }) =>
        !since.some((fact) => fact.position > position && answers(state, fact.what.about, about)) &&
        !asked.some((other) => other.position > position && sameAbout(other.what.about, about)),
    )
    .map(({ id, what: { about, reason }, at }) => ({ entry: id, about, reason, at }));
}

/** What of it concerns one item: itself, or a check that reads it. */
export const reworkAskedOf = (state: JobState, instance: Instance): readonly ReworkAsked[] =>
  reworkAsked(state).filter(({ about }) => sameAbout(about, aboutOf(instance)) || concerns(state, about, instance));
