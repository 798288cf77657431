import { judge } from "../tolerance/index.ts";
import { coveredOf } from "./covered.ts";
import type { About } from "./fact.ts";
import type { Passage } from "./finding.ts";
import { factsOf, isBefore, type JobState } from "./state.ts";

/** What a decision can be about, as the finding knows itself. */
export interface Subject {
  /** Whether an About names this finding (its item or check, and its tag). */
  readonly names: (about: About) => boolean;
  readonly holds?: string | undefined;
  /** Place in the work of the newest entry that it rests on, or of what set such entries aside; -1 for none. */
  readonly newest: number;
  readonly value?: number | undefined;
  readonly doubt?: number | undefined;
}

/** A concession is for what was known when it was given: a newer entry, or rework, needs a new one. */
function concession(state: JobState, subject: Subject): Passage | undefined {
  const given = factsOf(state, "concession")
    .filter((f) => f.position > subject.newest && subject.names(f.what.about))
    .at(-1);
  return given && { way: "concession", entry: given.id };
}

/** A departure must have been agreed before the covering, and the value with its doubt must lie inside it. */
function departure(state: JobState, subject: Subject): Passage | undefined {
  const { value, doubt, holds } = subject;
  if (value === undefined) return undefined;
  const covered = coveredOf(state, holds);
  const agreed = factsOf(state, "departure-agreed")
    .filter((f) => (covered === undefined || isBefore(f, covered)) && subject.names(f.what.about))
    .at(-1);
  if (agreed === undefined) return undefined;
  const { lower, upper } = agreed.what;
  const judged = judge({
    value,
    expanded: doubt ?? 0,
    rule: "guarded",
    ...(lower === undefined ? {} : { lower }),
    ...(upper === undefined ? {} : { upper }),
  });
  return judged.ok && judged.value.verdict === "within" ? { way: "departure", entry: agreed.id } : undefined;
}

/** A go-ahead covers what was open when it was given: everything that holds, or what it names. The office's own is confirmed. */
function goAhead(state: JobState, { holds, names, newest }: Subject): Passage | undefined {
  const all = factsOf(state, "go-ahead");
  const denied = new Set(factsOf(state, "go-ahead-denied").map(({ what }) => what.goAhead));
  const given = all
    .filter(({ id }) => !denied.has(id))
    .filter(({ what, position }) => what.confirms === undefined && position > newest && (holds === undefined || what.covering === holds))
    .filter(({ what }) => (what.about === undefined ? holds !== undefined : what.about.some(names)))
    .at(-1);
  if (given === undefined) return undefined;
  const confirmed = given.what.role !== "crew" || all.some((f) => f.what.confirms === given.id && f.what.role !== "crew");
  return { way: "go-ahead", entry: given.id, confirmed };
}

/** What lets something pass in spite of its verdict, the firmest first. */
export function passageOf(state: JobState, subject: Subject): Passage | undefined {
  return concession(state, subject) ?? departure(state, subject) ?? goAhead(state, subject);
}
