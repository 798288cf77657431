import type { About, Check, Finding, Item, Words } from "../job/index.ts";
import { byId } from "./by-id.ts";
import { fill, type Speaking, sentences } from "./speaking.ts";

/** What things of the tolerance sheet are called. */
export function makeTitles({ language, sheet }: Speaking) {
  const texts = sentences[language];
  const words = (w: Words | undefined): string => (w === undefined ? "" : (w[language] ?? w.en));

  const [items, checks, sets] = [byId(sheet?.items), byId(sheet?.checks), byId(sheet?.tagSets)];
  const itemOf = (id: string | undefined): Item | undefined => (id === undefined ? undefined : items.get(id));
  const checkOf = (id: string | undefined): Check | undefined => (id === undefined ? undefined : checks.get(id));

  function tagged(title: string, tag: string | undefined, set: string | undefined): string {
    if (tag === undefined) return title;
    const named = words(set === undefined ? undefined : sets.get(set)?.title);
    return fill(texts["title.tagged"], { title, set: named.toLowerCase(), tag });
  }

  /** The title of an item or check, with its tag. */
  function title(about: About): string {
    const check = checkOf(about.check);
    const item = itemOf(about.item);
    const set = item?.tags ?? sheet?.items.find((i) => check?.items.includes(i.id) && i.tags !== undefined)?.tags;
    const own = sheet?.tagSets.find((t) => t.id === about.item) ?? sheet?.steps.find((s) => s.id === about.step);
    return tagged(words(check?.title ?? item?.title ?? own?.title) || (about.check ?? about.item ?? ""), about.tag, set);
  }

  const titleOf = (finding: Finding): string =>
    title({
      ...(finding.of === "check" ? { check: finding.check } : { item: finding.check }),
      ...(finding.tag === undefined ? {} : { tag: finding.tag }),
    });

  const figureTitle = (id: string): string => words(sheet?.figures.find((f) => f.id === id)?.title) || id;

  return { words, itemOf, checkOf, title, titleOf, figureTitle };
}

export type Titles = ReturnType<typeof makeTitles>;
