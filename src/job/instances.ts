import { coveredOf } from "./covered.ts";
import type { Design } from "./figures.ts";
import { isAsked } from "./figures.ts";
import { oncePer } from "./once-per.ts";
import { coveringHeld, type Instance, seriesOf } from "./series.ts";
import { type Check, type ToleranceSheet, tagSetOf } from "./sheet.ts";
import { designAt, type JobState } from "./state.ts";

export interface CheckInstance {
  readonly check: Check;
  readonly tag?: string;
}

/** The design that something is judged by: the one in force when it was covered, else the newest. */
export const designFor = oncePer((state: JobState, covering: string | undefined): Design => {
  const covered = coveredOf(state, covering);
  return designAt(state, covered?.position ?? Number.POSITIVE_INFINITY, covered?.at);
});

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
