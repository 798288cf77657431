import type { Item, Live } from "../../../job/index.ts";

/** One point of a set-up, in the order in which it is called out. */
export interface SetUpPoint {
  readonly item: Item;
  readonly tag?: string;
  readonly fact?: Live;
}

/** The points in order: the height mark, each place, the mark again. What was read in this set-up is put to them. */
export function pointsOf(
  marks: readonly Item[],
  places: readonly Item[],
  tag: string | undefined,
  facts: readonly Live[],
): readonly SetUpPoint[] {
  const [mark] = marks;
  const order = [...(mark === undefined ? [] : [mark]), ...places, ...(mark === undefined ? [] : [mark])];
  const left = [...facts];
  return order.map((item) => {
    const own = item.tags === undefined ? undefined : tag;
    const at = left.findIndex(({ what }) => what.item === item.id && what.tag === own);
    const [fact] = at < 0 ? [] : left.splice(at, 1);
    return { item, ...(own === undefined ? {} : { tag: own }), ...(fact === undefined ? {} : { fact }) };
  });
}
