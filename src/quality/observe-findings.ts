import { coveredOf, type Finding, findings, type JobState, jobState, type Live } from "../job/index.ts";
import { firstEntries } from "./first-entries.ts";
import type { FindingObserved } from "./observation.ts";

const keyOf = ({ of, check, tag }: Finding): string => `${of} ${check} ${tag ?? ""}`;

/** The items whose entries a finding goes by. */
function itemsOf(state: JobState, { of, check }: Finding): readonly string[] {
  if (of !== "check") return [check];
  const asked = state.sheet?.checks.find(({ id }) => id === check);
  return [...(asked?.items ?? []), ...(asked?.minus ?? [])];
}

const textOf = (value: unknown): string | undefined => (typeof value === "string" ? value : undefined);

/** What an entry was read with: as it says, as its set-up says, as the sheet does. */
export function instrumentOf(state: JobState, fact: Live): string | undefined {
  const setUp = textOf(fact.what.setUp);
  const item = state.sheet?.items.find(({ id }) => id === fact.what.item);
  return textOf(fact.what.instrument) ?? (setUp === undefined ? undefined : state.setUps.get(setUp)?.instrument) ?? item?.instrument;
}

function lastOf(facts: ReadonlyMap<string, Live>, entries: readonly string[]): Live | undefined {
  const found = entries.flatMap((id) => facts.get(id) ?? []);
  return found.reduce<Live | undefined>((last, fact) => (last === undefined || fact.position > last.position ? fact : last), undefined);
}

const isNotYet = ({ verdict }: Finding): boolean => verdict === "outside" || verdict === "too close to call";

/** From the first value that was not within to whatever let it pass, or to the covering; milliseconds. */
function waitedOf(state: JobState, facts: ReadonlyMap<string, Live>, first: Finding, now: Finding): number | undefined {
  if (now.holds === undefined || !isNotYet(first)) return undefined;
  const from = lastOf(facts, first.entries)?.at;
  const passed = lastOf(facts, [...now.entries, ...(now.by === undefined ? [] : [now.by.entry])])?.at;
  const until = coveredOf(state, now.holds)?.at ?? passed;
  return from === undefined || until === undefined ? undefined : Math.max(0, Math.min(until, passed ?? until) - from);
}

function isReworked(state: JobState, finding: Finding): boolean {
  const items = itemsOf(state, finding);
  return state.cuts.some(
    ({ why, about }) =>
      why === "reworked" &&
      (about.tag === undefined || about.tag === finding.tag) &&
      (about.check === finding.check || (about.item !== undefined && items.includes(about.item))),
  );
}

function isAfterCovering(state: JobState, facts: ReadonlyMap<string, Live>, finding: Finding): boolean {
  const covered = coveredOf(state, finding.holds);
  if (covered === undefined || covered.noLaterThan) return false;
  const items = itemsOf(state, finding);
  return finding.entries.some((id) => {
    const fact = facts.get(id);
    return fact !== undefined && items.includes(String(fact.what.item)) && fact.position > covered.position;
  });
}

const whereKnown = <K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } =>
  (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: V };

function observed(state: JobState, facts: ReadonlyMap<string, Live>, now: Finding, first: Finding): FindingObserved {
  const entry = lastOf(facts, first.entries);
  const { value, aim } = now;
  return {
    check: now.check,
    of: now.of,
    step: now.step,
    weight: now.weight,
    first: first.verdict,
    verdict: now.verdict,
    reworked: isReworked(state, now),
    afterCovering: isAfterCovering(state, facts, now),
    ...whereKnown("tag", now.tag),
    ...whereKnown("holds", now.holds),
    ...whereKnown("kind", now.kind),
    ...whereKnown("firstValue", first.value),
    ...whereKnown("value", value),
    ...whereKnown("doubt", now.doubt),
    ...whereKnown("aim", aim),
    ...whereKnown("lower", now.lower),
    ...whereKnown("upper", now.upper),
    ...whereKnown("deviation", first.value === undefined || aim === undefined ? undefined : first.value - aim),
    ...whereKnown("at", entry?.at),
    ...whereKnown("person", entry?.entry.author.person),
    ...whereKnown("instrument", entry && instrumentOf(state, entry)),
    ...whereKnown("passage", now.by?.way),
    ...whereKnown("waited", waitedOf(state, facts, first, now)),
  };
}

/** Every finding of a job with what its first values came to. */
export function findingsObserved(state: JobState, all: readonly Finding[]): readonly FindingObserved[] {
  const once = firstEntries(state);
  const firsts = once === undefined ? all : findings(jobState(once));
  const byKey = new Map(firsts.map((finding) => [keyOf(finding), finding]));
  const facts = new Map(state.facts.map((fact) => [fact.id, fact]));
  const counts = ({ weight, verdict }: Finding): boolean => weight === "holds" || weight === "asked" || verdict !== "not taken";
  return all.filter(counts).map((finding) => observed(state, facts, finding, byKey.get(keyOf(finding)) ?? finding));
}
