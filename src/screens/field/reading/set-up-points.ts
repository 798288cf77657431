import type { Item, Live } from "../../../job/index.ts";
import type { ToldOnPhone } from "../told.ts";
import { askedIn } from "./next-open.ts";

/** One point of a set-up, in the order in which it is called out. */
export interface SetUpPoint {
  readonly item: Item;
  readonly tag?: string;
  readonly fact?: Live;
}

/**
 * What one standing of an instrument is asked for in a step: the height mark, each place, the mark again. A mark that has an item of
 * its own for the second time is read by that; one that has not is read twice.
 */
export function setUpItems(told: Pick<ToldOnPhone, "now">, step: string, tag?: string): readonly Item[] {
  const own = askedIn(told, step, tag).filter((one) => one.item.inSetUp === true && one.item.apart !== true);
  const marks = own.filter(({ item }) => item.heightMark === true).map(({ item }) => item);
  const places = own.filter(({ item }) => item.heightMark !== true).map(({ item }) => item);
  const [first] = marks.length > 0 ? marks : (told.now.state.sheet?.items ?? []).filter(({ heightMark }) => heightMark === true);
  const last = marks.at(-1) ?? first;
  return [...(first === undefined ? [] : [first]), ...places, ...(last === undefined ? [] : [last])];
}

/** The points in their order. What was read in this set-up is put to them. */
export function pointsOf(items: readonly Item[], tag: string | undefined, facts: readonly Live[]): readonly SetUpPoint[] {
  const left = [...facts];
  return items.map((item) => {
    const own = item.tags === undefined ? undefined : tag;
    const at = left.findIndex(({ what }) => what.item === item.id && what.tag === own);
    const [fact] = at < 0 ? [] : left.splice(at, 1);
    return { item, ...(own === undefined ? {} : { tag: own }), ...(fact === undefined ? {} : { fact }) };
  });
}
