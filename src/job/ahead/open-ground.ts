import { coveredOf, lastOpened } from "../covered.ts";
import { instanceFor } from "../evaluation.ts";
import { askedItems } from "../instances.ts";
import { weightOf } from "../item-finding.ts";
import { seriesOf } from "../series.ts";
import type { Covering, ToleranceSheet } from "../sheet.ts";
import type { JobState } from "../state.ts";

/** Whether something was entered in a step that has evidence of this covering, or for one of its tags: the ground is open. */
function isBegun(state: JobState, sheet: ToleranceSheet, covering: string): boolean {
  if (lastOpened(state, covering) >= 0) return true;
  const asked = askedItems(state, sheet);
  const held = asked.filter((instance) => weightOf(state, instance).holds === covering);
  const steps = new Set(held.filter(({ tag }) => tag === undefined).map(({ item }) => item.step));
  const own = new Set(held);
  return asked.some(
    (instance) =>
      (own.has(instance) || (instance.tag === undefined && steps.has(instance.item.step))) &&
      seriesOf(state, instanceFor(instance.item, instance.tag)).counting.length > 0,
  );
}

/** Coverings that leave something open in the ground until they happen, where it was begun and they have not. */
export function openGround(state: JobState): readonly Covering[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  return sheet.coverings.filter(
    ({ id, leavesOpen }) => leavesOpen !== undefined && coveredOf(state, id) === undefined && isBegun(state, sheet, id),
  );
}
