import { coveredOf } from "./covered.ts";
import type { Design } from "./figures.ts";
import { isAsked } from "./figures.ts";
import { oncePer } from "./once-per.ts";
import { coveringHeld, type Instance, seriesOf } from "./series.ts";
import { type Check, type Item, type ToleranceSheet, tagSetOf } from "./sheet.ts";
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

/** Whether something is asked under the design that it is judged by, for a tag of its set where it repeats. */
const isAskedNow = (
  state: JobState,
  sheet: ToleranceSheet,
  asked: Check | Item,
  set: string | undefined,
  tag: string | undefined,
): boolean => asked.switches === undefined || isAsked(sheet, designFor(state, coveringHeld(state, asked, set, tag)), asked.switches);

/** Every item that the sheet asks under this design, once for each tag where it repeats. */
export function askedItems(state: JobState, sheet: ToleranceSheet): readonly Instance[] {
  return sheet.items.flatMap((item) => {
    if (item.whenNoTagOf !== undefined && state.tags.some((t) => t.set === item.whenNoTagOf)) return [];
    return tagsOf(state, item.tags)
      .map((tag) => withTag({ item }, tag))
      .filter(({ tag }) => isAskedNow(state, sheet, item, item.tags, tag));
  });
}

export function askedChecks(state: JobState, sheet: ToleranceSheet): readonly CheckInstance[] {
  return sheet.checks.flatMap((check) => {
    const set = tagSetOf(sheet.items, check);
    return tagsOf(state, set)
      .map((tag) => withTag({ check }, tag))
      .filter(({ tag }) => isAskedNow(state, sheet, check, set, tag));
  });
}

/** Whether an instance has anything to show for itself. */
export const isEntered = (state: JobState, instance: Instance): boolean => seriesOf(state, instance).counting.length > 0;
