import type { Item, Tag } from "../../../job/index.ts";

export interface Goal {
  readonly item: Item;
  readonly tag?: string;
}

const alike = (one: Item, other: Item): boolean =>
  one.kind === other.kind && one.quantity === other.quantity && one.inSetUp === other.inSetUp;

/** The places of the same kind that an entry can be meant for: its own step first. */
export function goalsOf(items: readonly Item[], tags: readonly Tag[], from: Goal): readonly Goal[] {
  const goals = items
    .filter((item) => alike(item, from.item))
    .flatMap((item): readonly Goal[] =>
      item.tags === undefined ? [{ item }] : tags.filter(({ set }) => set === item.tags).map(({ tag }) => ({ item, tag })),
    )
    .filter(({ item, tag }) => item.id !== from.item.id || tag !== from.tag);
  const own = ({ item }: Goal): number => (item.id === from.item.id ? 0 : item.step === from.item.step ? 1 : 2);
  return [...goals].sort((a, b) => own(a) - own(b));
}
