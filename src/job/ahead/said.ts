import type { About } from "../fact.ts";
import type { Message } from "../finding.ts";
import type { Item, ToleranceSheet } from "../sheet.ts";
import type { JobState } from "../state.ts";
import type { Words } from "../words.ts";

/** A sentence before its language, with names of the sheet and of the job for those of its places that are no figures. */
export interface Said extends Message {
  readonly names?: Readonly<Record<string, readonly Words[]>>;
}

export const said = (key: string, figures: Message["figures"] = {}, names?: Said["names"]): Said => ({
  key,
  figures,
  ...(names ? { names } : {}),
});

/** What a tag is called: its set's word, its own, and what it is in words. */
export function tagWords(state: JobState, set: string | undefined, tag: string): Words {
  const title = state.sheet?.tagSets.find(({ id }) => id === set)?.title ?? { en: "" };
  const description = state.tags.find((one) => one.set === set && one.tag === tag)?.description;
  const whole = (word: string): string => [`${word} ${tag}`.trim(), ...(description === undefined ? [] : [description])].join(": ");
  return { en: whole(title.en), ...(title.es === undefined ? {} : { es: whole(title.es) }) };
}

/** The titles of what something waits for. */
export const titlesOf = (sheet: ToleranceSheet, missing: readonly About[]): readonly Words[] =>
  missing.flatMap(({ item }) => sheet.items.find(({ id }) => id === item)?.title ?? []);

export const itemsWhere = (state: JobState, wanted: (item: Item) => boolean): readonly Item[] => (state.sheet?.items ?? []).filter(wanted);
