import { type Live, ofItsJob, whatOf } from "./live.ts";
import type { JobState } from "./state.ts";

/** What is entered where the work is, and so from a crew's phone. */
export const atWork: ReadonlySet<string> = new Set([
  "visit-begun",
  "visit-ended",
  "set-up-made",
  "reading-taken",
  "picture-taken",
  "answered",
  "covering-announced",
  "covered",
]);

/** What one phone entered in one go at the site, in its own order. */
export interface PhoneVisit {
  readonly phone: string;
  /** Who entered first. */
  readonly person: string;
  readonly from: number;
  readonly to: number;
  readonly facts: readonly Live[];
}

/** A phone that entered nothing for so long has been elsewhere, milliseconds: half a working day (own). */
const ELSEWHERE_MS = 4 * 3_600_000;

/** What can be moved to another job: entered here, still here, and not about this job alone. */
const canMove = (fact: Live): boolean => fact.standing !== "moved out" && fact.movedFrom === undefined && !ofItsJob.has(fact.kind);

/**
 * The visits as the phones tell them, the newest first: a phone's entries up to the end of its visit, to the begin of the next,
 * or until it was elsewhere. What a desk entered is no visit. Instants in milliseconds.
 */
export function phoneVisits(state: JobState): readonly PhoneVisit[] {
  const open = new Map<string, Live[]>();
  const visits: Live[][] = [];
  const onSite = new Set(state.facts.filter(({ kind }) => atWork.has(kind)).map(({ entry }) => entry.author.phone));
  for (const fact of state.facts) {
    const { phone } = fact.entry.author;
    if (!onSite.has(phone) || !canMove(fact)) continue;
    const visit = open.get(phone);
    const last = visit?.at(-1);
    if (visit === undefined || last === undefined || fact.kind === "visit-begun" || fact.at - last.at > ELSEWHERE_MS) {
      const begun = [fact];
      open.set(phone, begun);
      visits.push(begun);
    } else visit.push(fact);
    if (fact.kind === "visit-ended") open.delete(phone);
  }
  return visits
    .flatMap((facts): readonly PhoneVisit[] => {
      const [first, last] = [facts[0], facts.at(-1)];
      if (first === undefined || last === undefined) return [];
      const { phone, person } = first.entry.author;
      return [{ phone, person, from: first.at, to: last.at, facts }];
    })
    .sort((a, b) => b.from - a.from);
}

/** Some entries with everything that corrects them, and what corrects that: one without the other would count otherwise there. */
export function withCorrections(state: JobState, ids: readonly string[]): readonly string[] {
  const moving = new Set(ids);
  const corrections = state.facts.filter((fact) => fact.kind === "corrected" && fact.standing === "counts" && canMove(fact));
  for (let before = -1; before !== moving.size; ) {
    before = moving.size;
    for (const fact of corrections) if (moving.has(whatOf(fact, "corrected").entry.id)) moving.add(fact.id);
  }
  return [...moving];
}

/** The version of the last record that was issued before entries were moved out of this job or into it; undefined: none, or none since. */
export function recordBeforeMove(state: JobState): number | undefined {
  const issued = state.byKind.get("record-issued")?.at(-1);
  const moved = [...(state.byKind.get("moved-out") ?? []), ...(state.byKind.get("moved-in") ?? [])];
  const isStale = issued !== undefined && moved.some(({ position }) => position > issued.position);
  return isStale ? whatOf(issued, "record-issued").version : undefined;
}
