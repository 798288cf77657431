import type { Uncertain } from "../doubt/index.ts";
import type { SideSaid } from "../geometry/index.ts";
import { pointOf } from "./evaluation.ts";
import { type Live, whatOf } from "./live.ts";
import { type Reading, readingsOf } from "./measured.ts";
import { oncePer } from "./once-per.ts";
import type { Item } from "./sheet.ts";
import type { JobState, Tag } from "./state.ts";

/** One distance to a mark as it counts. */
export interface TieTaken {
  /** As its entry names the mark. */
  readonly mark: string;
  readonly facts: readonly Live[];
  /** Metres. */
  readonly distance: Uncertain;
  /** Two readings of it differ by more than their doubt. */
  readonly disagree: boolean;
}

/** Something that was tied to marks, or that a tie calls a mark. */
export interface TiedThing {
  /** Alike for all ties of one point, and for no others. */
  readonly key: string;
  /** The item of its first tie. */
  readonly item: Item;
  readonly tag?: Tag;
  readonly ties: readonly TieTaken[];
  /** Which side it lies on, by the marks of its first two ties. */
  readonly side?: SideSaid;
}

/** Ties of one point differ in the number at the end of their items' names, and in nothing else. */
const keyOf = (item: Item, tag: string | undefined): string => `${stemOf(item, "-")} ${tag ?? ""}`;
const stemOf = oncePer(({ id }: Item, _: "-"): string => id.replace(/-\d+$/, ""));

export const isMarkSaid = (fact: Live): boolean => {
  const { mark } = whatOf(fact, "reading-taken");
  return typeof mark === "string" && mark.trim() !== "";
};
const markOf = (fact: Live): string => String(whatOf(fact, "reading-taken").mark ?? "").trim();

function groupedBy<T>(things: readonly T[], key: (thing: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const own = key(thing);
    const known = groups.get(own);
    if (known) known.push(thing);
    else groups.set(own, [thing]);
  }
  return groups;
}

function tieOf(mark: string, readings: readonly Reading[]): readonly TieTaken[] {
  const point = pointOf(readings);
  return point === undefined ? [] : [{ mark, facts: readings.map(({ fact }) => fact), distance: point.value, disagree: !point.agrees }];
}

function sideOf(readings: readonly Reading[], [first, second]: readonly TieTaken[]): SideSaid | undefined {
  const said = readings.map(({ fact }) => whatOf(fact, "reading-taken").side).findLast((side) => side === "left" || side === "right");
  return said === undefined || first === undefined || second === undefined ? undefined : { from: first.mark, to: second.mark, side: said };
}

/** Everything that was tied to marks and still counts, each with its distances, in the order of the tolerance sheet. */
export function tiedThings(state: JobState): readonly TiedThing[] {
  const items = (state.sheet?.items ?? []).filter((item) => item.fromMark === true);
  const tagsOf = (item: Item): readonly (Tag | undefined)[] =>
    item.tags === undefined ? [undefined] : state.tags.filter((tag) => tag.set === item.tags);
  const read = items.flatMap((item) =>
    tagsOf(item).flatMap((tag) =>
      readingsOf(state, tag === undefined ? { item } : { item, tag: tag.tag })
        .filter(({ fact }) => isMarkSaid(fact))
        .map((reading) => ({ item, tag, reading })),
    ),
  );
  return [...groupedBy(read, ({ item, tag }) => keyOf(item, tag?.tag))].flatMap(([key, all]): readonly TiedThing[] => {
    const [first] = all;
    if (first === undefined) return [];
    const readings = all.map(({ reading }) => reading);
    const ties = [...groupedBy(readings, ({ fact }) => markOf(fact))].flatMap(([mark, of]) => tieOf(mark, of));
    const side = sideOf(readings, ties);
    return [{ key, item: first.item, ties, ...(first.tag ? { tag: first.tag } : {}), ...(side ? { side } : {}) }];
  });
}

/** The key of the point that these items tie, for a tag where they repeat. */
export const keyOfTies = (items: readonly Item[], tag: string | undefined): string | undefined => {
  const [first] = items;
  return first && keyOf(first, tag);
};
