import { tagSetOf } from "./evaluate.ts";
import type { Design } from "./figures.ts";
import { isAsked } from "./figures.ts";
import { coveringHeld, type Instance, oneOfHolding, seriesOf } from "./series.ts";
import type { Check, Item, OneOf, ToleranceSheet } from "./sheet.ts";
import { designAt, factsOf, type JobState } from "./state.ts";

export interface CheckInstance {
  readonly check: Check;
  readonly tag?: string;
}

/** Place in the work at which a covering happened and has not been opened up again since. */
export function coveredAt(state: JobState, covering: string | undefined): number | undefined {
  if (covering === undefined) return undefined;
  const covered = factsOf(state, "covered")
    .filter((f) => f.what.covering === covering)
    .at(-1);
  const opened = factsOf(state, "opened-up-again")
    .filter((f) => f.what.covering === covering)
    .at(-1);
  if (covered === undefined || (opened !== undefined && opened.position > covered.position)) return undefined;
  return covered.position;
}

/** The design that something is judged by: the one in force when it was covered, else the newest. */
export function designFor(state: JobState, covering: string | undefined): Design {
  return designAt(state, coveredAt(state, covering) ?? Number.POSITIVE_INFINITY);
}

const tagsOf = (state: JobState, set: string | undefined): readonly (string | undefined)[] =>
  set === undefined ? [undefined] : state.tags.filter((t) => t.set === set).map((t) => t.tag);

const withTag = <T extends object>(thing: T, tag: string | undefined): T & { tag?: string } =>
  tag === undefined ? thing : { ...thing, tag };

/** Every item that the sheet asks under this design, once for each tag where it repeats. */
export function askedItems(state: JobState, sheet: ToleranceSheet): readonly Instance[] {
  return sheet.items.flatMap((item) => {
    if (item.whenNoTagOf !== undefined && state.tags.some((t) => t.set === item.whenNoTagOf)) return [];
    return tagsOf(state, item.tags)
      .map((tag) => withTag({ item }, tag))
      .filter((instance) => isAsked(sheet, designFor(state, coveringHeld(state, item, item.tags, instance.tag)), item.switches));
  });
}

export function askedChecks(state: JobState, sheet: ToleranceSheet): readonly CheckInstance[] {
  return sheet.checks.flatMap((check) => {
    const set = tagSetOf(sheet.items, check);
    return tagsOf(state, set)
      .map((tag) => withTag({ check }, tag))
      .filter(({ tag }) => isAsked(sheet, designFor(state, coveringHeld(state, check, set, tag)), check.switches));
  });
}

/** Whether an instance has anything to show for itself. */
export const isEntered = (state: JobState, instance: Instance): boolean => seriesOf(state, instance).counting.length > 0;

/**
 * The group of a 'one of' by which it is satisfied: the first whole one; while none is whole, the one that is furthest on,
 * so that the lines of a clearance ask for the rest of what was begun.
 */
export function chosenGroup(state: JobState, sheet: ToleranceSheet, one: OneOf, settled: (item: Item) => boolean): number {
  const shares = one.groups.map((group) => {
    const items = sheet.items.filter((item) => group.items.includes(item.id));
    return items.filter((item) => settled(item) || isEntered(state, { item })).length / Math.max(1, items.length);
  });
  const whole = shares.indexOf(1);
  if (whole >= 0) return whole;
  return shares.indexOf(Math.max(...shares));
}

/** Whether a check belongs to a group of a 'one of' that was not chosen, and so asks for nothing. */
export function inGroupNotChosen(sheet: ToleranceSheet, ids: readonly string[], chosen: ReadonlyMap<string, number>): boolean {
  return ids.some((id) => {
    const one = oneOfHolding(sheet, id);
    if (one === undefined) return false;
    const group = one.groups[chosen.get(one.id) ?? 0];
    return group !== undefined && !group.items.includes(id);
  });
}
