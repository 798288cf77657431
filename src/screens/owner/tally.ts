import type { JobView, RecordList } from "../../wire/index.ts";
import { countsOf, type JobCounts } from "../parts/counts.ts";
import { type Answer, ask } from "../parts/edge.ts";

export interface Tally {
  readonly counts: JobCounts;
  readonly records: number | undefined;
}

/** What one job has, in numbers. */
export async function tallyOf(job: string): Promise<Answer<Tally>> {
  const [view, records] = await Promise.all([ask<JobView>(`/api/jobs/${job}`), ask<RecordList>(`/api/jobs/${job}/records`)]);
  if (view.is !== "given") return view;
  const { findings, clearances } = view.value;
  const counts = countsOf({ findings, clearances });
  return { is: "given", value: { counts, records: records.is === "given" ? records.value.records.length : undefined } };
}
