import { coveredOf, type Finding, factsOf, findings, type JobState, type Live } from "../job/index.ts";
import { dayText } from "./days.ts";
import type { CoveringObserved, JobObserved } from "./observation.ts";
import { callbacksObserved, partsObserved, reworksObserved } from "./observe-after.ts";
import { findingsObserved } from "./observe-findings.ts";
import { picturesObserved, readAgainObserved, readingsObserved } from "./observe-readings.ts";

/** A phone that rests longer than this between two entries was not in hand (own). */
const IN_HAND_MS = 5 * 60_000;

function coveringsObserved(state: JobState): readonly CoveringObserved[] {
  return (state.sheet?.coverings ?? []).map(({ id }): CoveringObserved => {
    const covered = coveredOf(state, id);
    const openedAgain = factsOf(state, "opened-up-again").some(({ what }) => what.covering === id);
    if (covered === undefined) return { covering: id, openedAgain };
    const { fact, at, noLaterThan } = covered;
    const person = fact.entry.author.person;
    if (noLaterThan) return { covering: id, at, person, unseen: true, openedAgain };
    return { covering: id, at, person, shown: fact.what.shown as "clear", openedAgain };
  });
}

/** Whoever entered most coverings, the first of them where two did. */
function foremanOf(coverings: readonly CoveringObserved[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { person, unseen } of coverings) if (person !== undefined && !unseen) counts.set(person, (counts.get(person) ?? 0) + 1);
  return [...counts].reduce<readonly [string, number] | undefined>(
    (most, one) => (most === undefined || one[1] > most[1] ? one : most),
    undefined,
  )?.[0];
}

const atWork: ReadonlySet<string> = new Set([
  "reading-taken",
  "read-again",
  "picture-taken",
  "answered",
  "set-up-made",
  "covered",
  "covering-announced",
]);

function phoneTime(facts: readonly Live[]): number {
  const last = new Map<string, number>();
  let inHand = 0;
  for (const { entry, at, kind } of facts) {
    if (!atWork.has(kind)) continue;
    const pause = at - (last.get(entry.author.phone) ?? Number.NEGATIVE_INFINITY);
    if (pause < IN_HAND_MS) inHand += Math.max(0, pause);
    last.set(entry.author.phone, at);
  }
  return inHand;
}

/**
 * One job as the owner's questions read it. `all`: its findings, where the caller has them. `likenesses`: of its photos, by hash.
 * A function of the ledger alone; it never takes anything of the present.
 */
export function observe(
  job: string,
  state: JobState,
  all: readonly Finding[] = findings(state),
  likenesses: ReadonlyMap<string, string> = new Map(),
): JobObserved {
  const zone = state.opened?.zone ?? "UTC";
  const coverings = coveringsObserved(state);
  const callbacks = callbacksObserved(state, zone);
  const [first, last] = [state.facts[0]?.at ?? 0, state.facts.at(-1)?.at ?? 0];
  const covered = coverings.flatMap(({ at }) => at ?? []);
  const handed = factsOf(state, "signed").at(-1)?.at;
  const isDone = coverings.length > 0 && covered.length === coverings.length;
  const end = handed ?? (isDone ? Math.max(...covered) : undefined);
  const installed = end === undefined ? undefined : dayText(end, zone);
  const foreman = foremanOf(coverings);
  const readings = readingsObserved(state, all);
  return {
    job,
    title: state.opened?.title ?? "",
    sheet: state.sheet?.id ?? "",
    opened: first,
    until: dayText(last, zone),
    crew: state.opened?.crew ?? [],
    coverings,
    findings: findingsObserved(state, all),
    readings: [...readings, ...readAgainObserved(state, readings)],
    pictures: picturesObserved(state, all, likenesses),
    reworks: reworksObserved(state),
    callbacks,
    parts: partsObserved(state, installed, callbacks),
    phoneTime: phoneTime(state.facts),
    ...(installed === undefined ? {} : { installed }),
    ...(foreman === undefined ? {} : { foreman }),
  };
}
