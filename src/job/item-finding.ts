import { toInteger } from "../tolerance/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { asTyped } from "./as-typed.ts";
import type { About } from "./fact.ts";
import { type Finding, type Message, message, type Passage, type Verdict } from "./finding.ts";
import type { Live } from "./live.ts";
import { closingOf } from "./measured.ts";
import { oncePer } from "./once-per.ts";
import { passageOf } from "./passages.ts";
import { pictureOutcome } from "./picture-outcome.ts";
import { planArea } from "./plan-area.ts";
import {
  aboutOf,
  coveringHeld,
  type Instance,
  lastWord,
  oneOfHolding,
  type Series,
  sameAbout,
  seriesOf,
  type Word,
  wordPart,
} from "./series.ts";
import type { Item, Weight } from "./sheet.ts";
import type { JobState } from "./state.ts";

interface Outcome {
  readonly verdict: Verdict;
  readonly says: Message;
  readonly soFar?: boolean;
  /** Ids of entries that are kept as evidence and do not count. */
  readonly aside?: readonly string[];
}

function answerOutcome(instance: Instance, answers: readonly Live[]): Outcome {
  const chosen = instance.item.choices?.find((c) => c.id === answers.at(-1)?.what.choice);
  const verdict = chosen?.accepts ? "within" : "outside";
  return { verdict, says: message(`answer.${verdict}`, { choice: chosen?.id ?? "" }) };
}

const asTypedAll = (readings: readonly Live[]): string =>
  readings.map((r) => asTyped(String(r.what.typed), String(r.what.unit))).join("; ");

/** Set-ups of these readings, the newest last. */
const setUpsOf = (readings: readonly Live[]): readonly string[] =>
  [...new Set(readings.flatMap(({ what }) => (typeof what.setUp === "string" ? [what.setUp] : [])).reverse())].reverse();

/** Of the height mark only the set-up that counts speaks: the newest that read the places and closed, if one did. */
function markOutcome(state: JobState, { item }: Instance, readings: readonly Live[]): Outcome | undefined {
  const used = mostRead(state, item.step);
  const read = setUpsOf(readings);
  const candidates = read.some((setUp) => used.has(setUp)) ? read.filter((setUp) => used.has(setUp)) : read;
  const standing = candidates.filter((setUp) => closingOf(state, setUp).state !== "does not close");
  const counting = standing.length > 0 ? standing : candidates;
  const setUp = counting.at(-1);
  if (setUp === undefined) return undefined;
  const closing = closingOf(state, setUp);
  const typed = asTypedAll(readings.filter(({ what }) => what.setUp === setUp));
  const figures = { typed, difference: closing.difference ?? 0, allowed: closing.allowed ?? 0 };
  const outside = readings.filter(({ what }) => !counting.includes(String(what.setUp))).map(({ id }) => id);
  const aside = outside.length > 0 ? { aside: outside } : {};
  if (closing.state === "does not close") return { verdict: "too close to call", says: message("mark.does-not-close", figures), ...aside };
  if (closing.state === "closed") return { verdict: "within", says: message("mark.closed", figures), ...aside };
  return { verdict: "within", says: message("mark.so-far", figures), soFar: true, ...aside };
}

/** A reading without a check of its own is asked for, not judged; the height mark's last must close the set-up. */
function readingOutcome(state: JobState, instance: Instance, readings: readonly Live[]): Outcome {
  const mark = instance.item.heightMark === true ? markOutcome(state, instance, readings) : undefined;
  if (mark) return mark;
  const instant = instance.item.quantity === "instant" ? Date.parse(String(readings.at(-1)?.what.typed)) : Number.NaN;
  if (Number.isSafeInteger(instant)) return { verdict: "within", says: message("reading.instant", { takenInstant: instant }) };
  return { verdict: "within", says: message("reading.taken", { typed: asTypedAll(readings) }) };
}

function entered(state: JobState, instance: Instance, counting: readonly Live[]): Outcome {
  if (instance.item.kind === "picture") return pictureOutcome(state, instance, counting);
  if (instance.item.kind === "answer") return answerOutcome(instance, counting);
  return readingOutcome(state, instance, counting);
}

/** The set-ups that read most places of a step that a height mark stands in. */
const mostRead = oncePer((state: JobState, step: string): ReadonlySet<string> => {
  const places = state.sheet?.items.filter((item) => item.step === step && item.inSetUp && !item.heightMark) ?? [];
  const read = new Map<string, number>();
  for (const place of places) {
    const setUps = new Set(seriesOf(state, { item: place }).counting.map((f) => f.what.setUp));
    for (const setUp of setUps) if (typeof setUp === "string") read.set(setUp, (read.get(setUp) ?? 0) + 1);
  }
  const most = Math.max(...read.values());
  return new Set([...read].filter(([, count]) => count === most).map(([setUp]) => setUp));
});

/** A height mark is owed where the set-ups that read most places of its step have all gone without it. */
function isMarkOwed(state: JobState, { item }: Instance, counting: readonly Live[]): boolean {
  if (item.heightMark !== true || counting.length === 0) return false;
  const used = mostRead(state, item.step);
  return used.size > 0 && !counting.some((f) => used.has(String(f.what.setUp)));
}

/** What an item holds: itself, or through the 'one of' that it stands in. */
export function weightOf(state: JobState, instance: Instance): { readonly weight: Weight; readonly holds?: string } {
  const one = state.sheet && oneOfHolding(state.sheet, instance.item.id);
  if (one) return { weight: "holds", holds: one.holds };
  const holds = instance.item.weight === "holds" ? coveringHeld(state, instance.item, instance.item.tags, instance.tag) : undefined;
  return { weight: instance.item.weight, ...(holds === undefined ? {} : { holds }) };
}

function outcomeOf(state: JobState, instance: Instance, series: Series, word: Word | undefined): Outcome {
  if (word) return wordPart(word);
  if (series.counting.length > 0 && !isMarkOwed(state, instance, series.counting)) return entered(state, instance, series.counting);
  return { verdict: "not taken", says: message(series.cut ? "item.not-taken-again" : "item.not-taken") };
}

/** Water that an item wins over the basin's plan area, millilitres. */
function winsOf(state: JobState, { wins }: Item, holds: string | undefined): Pick<Finding, "wins"> {
  const area = wins && planArea(state, holds);
  if (wins === undefined || area === undefined) return {};
  const volume = (depth: number): number => toInteger(((area * depth) / fixedPerSi("length")) * fixedPerSi("volume"));
  return { wins: { kind: "volume", lower: volume(wins.lower), upper: volume(wins.upper) } };
}

/** The finding of one item, for one tag where it repeats. */
export function itemFinding(state: JobState, instance: Instance): Finding {
  const { item, tag } = instance;
  const own = aboutOf(instance);
  const names = (about: About): boolean => sameAbout(about, own);
  const series = seriesOf(state, instance);
  const newest = Math.max(-1, series.counting.at(-1)?.position ?? -1, series.cut?.position ?? -1);
  const word = lastWord(state, names, item.mayNotApply === true, newest);
  const weight = weightOf(state, instance);
  const outcome = outcomeOf(state, instance, series, word);
  return {
    step: item.step,
    check: item.id,
    of: item.kind,
    ...(tag === undefined ? {} : { tag }),
    ...weight,
    ...outcome,
    entries: [...series.counting.map((f) => f.id), ...(word ? [word.fact.id] : [])],
    ...(outcome.verdict === "not taken" ? { missing: [own] } : {}),
    ...winsOf(state, item, weight.holds),
    ...ruledBy(outcome),
  };

  function ruledBy({ verdict }: Outcome): { readonly by?: Passage } {
    if (verdict === "does not apply") return word ? { by: { way: "does not apply", entry: word.fact.id } } : {};
    if (verdict === "within") return series.beforeRework.length > 0 && series.cut ? { by: { way: "rework", entry: series.cut.entry } } : {};
    const by = passageOf(state, { names, holds: weight.holds, newest: Math.max(newest, word?.fact.position ?? -1) });
    return by ? { by } : {};
  }
}
