import { happenedAt } from "./live.ts";

import { entersItem } from "./series.ts";
import type { JobMoment } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** When something first happened, milliseconds, and the entry that shows it. */
export interface MomentFound {
  readonly at: number;
  readonly entry: string;
}

/** A moment that the sheet names by an item: the first entry of it that counts, in the order of the work. */
export function momentOf(state: JobState, moment: JobMoment): MomentFound | undefined {
  const marking = (state.sheet?.items ?? []).filter((item) => item.marks === moment).map((item) => item.id);
  const first = marking.flatMap((id) => (state.byItem.get(id) ?? []).filter(entersItem)).sort((a, b) => a.position - b.position)[0];
  return first && { at: happenedAt(first), entry: first.id };
}
