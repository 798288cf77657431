import { askedItems, type Instance, type Item, isEntered } from "../../../job/index.ts";
import type { ToldOnPhone } from "../told.ts";

/** The instances that a step asks, in the order of the tolerance sheet; those of one tag where one is named. */
export function askedIn({ now: { state } }: Pick<ToldOnPhone, "now">, step: string, tag?: string): readonly Instance[] {
  if (state.sheet === undefined) return [];
  return askedItems(state, state.sheet).filter(
    ({ item, tag: own }) => item.step === step && (tag === undefined || own === undefined || own === tag),
  );
}

/** The next thing of the same step that nobody has entered, after this one; readings of a set-up have a page of their own. */
export function nextOpen(told: Pick<ToldOnPhone, "now">, { id, step }: Item, tag: string | undefined): Instance | undefined {
  const asked = askedIn(told, step, tag);
  const here = asked.findIndex((one) => one.item.id === id && one.tag === tag);
  return [...asked.slice(here + 1), ...asked.slice(0, Math.max(0, here))].find(
    (one) => one.item.inSetUp !== true && one.item.apart !== true && !isEntered(told.now.state, one),
  );
}
