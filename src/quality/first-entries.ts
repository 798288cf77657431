import type { Entry, JobLedger, JobState, Live } from "../job/index.ts";

/** What makes a first value another one: not part of what was first found. */
const decisions: ReadonlySet<string> = new Set(["reworked", "opened-up-again", "concession", "go-ahead", "go-ahead-denied"]);

const placeOf = ({ kind, what }: Live): string | undefined => {
  if (typeof what.item !== "string") return undefined;
  if (kind === "reading-taken") return `reading ${what.item} ${what.tag ?? ""} ${what.mark ?? ""}`;
  return kind === "answered" ? `answer ${what.item} ${what.tag ?? ""}` : undefined;
};

/** Entries that came after the first of their place: another set-up, or a second value without one. A set-up reads its mark twice. */
function laterOnes(facts: readonly Live[]): ReadonlySet<string> {
  const first = new Map<string, unknown>();
  const later = new Set<string>();
  for (const fact of facts) {
    const place = placeOf(fact);
    if (place === undefined || fact.standing !== "counts") continue;
    const { setUp } = fact.what;
    if (!first.has(place)) first.set(place, setUp);
    else if (setUp === undefined || first.get(place) !== setUp) later.add(fact.id);
  }
  return later;
}

/**
 * The ledger as it would be had everything been entered once and nothing decided: what the first values were. Corrections of a
 * typing stay: a slip of the thumb is no bad work. Undefined where that is the ledger itself.
 */
export function firstEntries(state: JobState): JobLedger | undefined {
  const later = laterOnes(state.facts);
  const stays = (entry: Entry): boolean => !decisions.has(entry.kind) && !later.has(entry.id);
  const entries = state.ledger.entries.filter(stays);
  return entries.length === state.ledger.entries.length ? undefined : { ...state.ledger, entries };
}
