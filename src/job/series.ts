import type { About } from "./fact.ts";
import { type Finding, message } from "./finding.ts";
import type { Live } from "./live.ts";
import { oncePer } from "./once-per.ts";
import type { Check, Item, OneOf, ToleranceSheet } from "./sheet.ts";
import { type Cut, factsOf, type JobState } from "./state.ts";

/** An item, for one tag where it repeats. */
export interface Instance {
  readonly item: Item;
  readonly tag?: string;
}

/** What was entered for an instance: what counts now, and what counted before rework or before it was opened up again. */
export interface Series {
  readonly counting: readonly Live[];
  readonly beforeRework: readonly Live[];
  /** What last set older entries aside. */
  readonly cut?: Cut;
}

export const aboutOf = ({ item, tag }: Instance): About => (tag === undefined ? { item: item.id } : { item: item.id, tag });

export const oneOfHolding = oncePer((sheet: ToleranceSheet, item: string): OneOf | undefined =>
  sheet.oneOf.find((one) => one.groups.some((group) => group.items.includes(item))),
);

/** The covering that something can hold, for a tag where the sheet says 'by tag'. */
export function coveringHeld(
  state: JobState,
  weighted: { readonly holds?: string },
  tagSet: string | undefined,
  tag: string | undefined,
): string | undefined {
  if (weighted.holds !== "by tag") return weighted.holds;
  return state.tags.find((t) => t.set === tagSet && t.tag === tag)?.hiddenBy;
}

const entryKinds: Readonly<Record<Item["kind"], readonly string[]>> = {
  reading: ["reading-taken"],
  picture: ["picture-taken", "received-otherwise"],
  answer: ["answered"],
};

/** Whether a fact is the entry of an item: a reading, a picture or an answer. */
export const entersItem = ({ kind }: Live): boolean => entering.has(kind);
const entering: ReadonlySet<string> = new Set(Object.values(entryKinds).flat());

const readBy = oncePer((sheet: ToleranceSheet, item: string): readonly Check[] =>
  sheet.checks.filter((check) => check.items.includes(item)),
);

const checksReading = (sheet: ToleranceSheet | undefined, item: string): readonly Check[] => (sheet ? readBy(sheet, item) : []);

/** Whether a fact about something is about this instance: itself, or a check that reads it. */
export function concerns(state: JobState, about: About, { item, tag }: Instance): boolean {
  if (about.tag !== undefined && about.tag !== tag) return false;
  if (about.item !== undefined) return about.item === item.id;
  return about.check !== undefined && checksReading(state.sheet, item.id).some((check) => check.id === about.check);
}

/** Whether a covering hides what an instance shows: it is held by it, or by a check that reads it. */
function isHiddenBy(state: JobState, { item, tag }: Instance, covering: string): boolean {
  const one = state.sheet && oneOfHolding(state.sheet, item.id);
  const holding = [item, ...checksReading(state.sheet, item.id)].filter(({ weight }) => weight === "holds");
  return one?.holds === covering || holding.some((thing) => coveringHeld(state, thing, item.tags, tag) === covering);
}

function cutConcerns(state: JobState, cut: Cut, instance: Instance): boolean {
  return cut.covering === undefined ? concerns(state, cut.about, instance) : isHiddenBy(state, instance, cut.covering);
}

const seriesOfTags = oncePer((_: JobState, __: Item) => new Map<string | undefined, Series>());

export function seriesOf(state: JobState, { item, tag }: Instance): Series {
  const known = seriesOfTags(state, item);
  const series = known.get(tag) ?? sortedOut(state, tag === undefined ? { item } : { item, tag });
  known.set(tag, series);
  return series;
}

function sortedOut(state: JobState, instance: Instance): Series {
  const { item, tag } = instance;
  const all = (state.byItem.get(item.id) ?? []).filter((fact) => entryKinds[item.kind].includes(fact.kind) && fact.what.tag === tag);
  const cuts = state.cuts.filter((cut) => cutConcerns(state, cut, instance));
  const cut = cuts.at(-1);
  const rework = cuts.filter((c) => c.why === "reworked").at(-1);
  const counting = all.filter((fact) => cut === undefined || fact.position > cut.position);
  const beforeRework = rework === undefined ? [] : all.filter((fact) => fact.position < rework.position);
  return { counting, beforeRework, ...(cut ? { cut } : {}) };
}

export const sameAbout = (about: About, own: About): boolean =>
  about.item === own.item && about.check === own.check && (about.tag === undefined || about.tag === own.tag);

/** The last word on an instance beside its own entries: it does not apply, or could not be taken. */
export interface Word {
  readonly way: "does not apply" | "could not be taken";
  readonly reason: string;
  readonly fact: Live;
}

/** `itself` tells whether a fact's About is the thing asked for; `mayNotApply` whether anybody may say so, or only the office. */
export function lastWord(state: JobState, itself: (about: About) => boolean, mayNotApply: boolean, after: number): Word | undefined {
  const words: Word[] = [];
  for (const fact of factsOf(state, "does-not-apply")) {
    if (fact.position > after && itself(fact.what.about) && (mayNotApply || fact.what.role !== "crew")) {
      words.push({ way: "does not apply", reason: fact.what.reason, fact });
    }
  }
  for (const fact of factsOf(state, "could-not-be-taken")) {
    if (fact.position > after && itself(fact.what.about)) words.push({ way: "could not be taken", reason: fact.what.reason, fact });
  }
  return words.sort((a, b) => a.fact.position - b.fact.position).at(-1);
}

/** What such a word makes of the finding that it is about. */
export const wordPart = ({ way, reason }: Word): Pick<Finding, "verdict" | "says"> => ({
  verdict: way,
  says: message(way === "does not apply" ? "item.does-not-apply" : "item.could-not-be-taken", { reason }),
});
