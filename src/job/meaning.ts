import { type Instance, seriesOf } from "./series.ts";
import type { ChoiceMeaning } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** What the last answers of these instances mean together; undefined where none of them was answered. */
export function meaningOf(state: JobState, instances: readonly Instance[]): readonly ChoiceMeaning[] | undefined {
  const answers = instances.flatMap((instance) => {
    const fact = instance.item.kind === "answer" ? seriesOf(state, instance).counting.at(-1) : undefined;
    return fact === undefined ? [] : [instance.item.choices?.find(({ id }) => id === fact.what.choice)?.means ?? []];
  });
  return answers.length === 0 ? undefined : answers.flat();
}
