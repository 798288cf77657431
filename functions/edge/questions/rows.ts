import type { JobObserved, ObservedPart } from "#core/quality/index.ts";
import { PAGE } from "../adapters/observed.ts";
import { computeAndKeep } from "../jobs/findings.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";
import { BASE, MADE, putTogether } from "./parts.ts";

/** Jobs that are made up for while somebody waits; the others are said to be missing. */
const MADE_NOW = 24;

async function allOf(services: Services, company: string, part: string): Promise<ReadonlyMap<string, string>> {
  const all = new Map<string, string>();
  for (let after = ""; ; ) {
    const rows = await services.observed.page(company, part, after);
    for (const { job, content } of rows) all.set(job, content);
    const last = rows.at(-1);
    if (last === undefined || rows.length < PAGE) return all;
    after = last.job;
  }
}

export interface RowsRead {
  readonly jobs: readonly JobObserved[];
  /** Jobs whose rows are behind their ledgers still. */
  readonly behind: number;
}

/** What a question reads of every job of a company, in the order of their ids. Rows that are behind are made first, some of them at a time. */
export async function rowsOf(services: Services, company: string, parts: readonly ObservedPart[]): Promise<RowsRead> {
  const { jobs: late, count } = await services.observed.behind(company, BASE, MADE, MADE_NOW);
  for (const job of late) {
    const place = { company, job };
    await computeAndKeep(services, place, await currentJob(services, place));
  }
  const [bases, ...read] = await Promise.all([BASE, ...parts].map((part) => allOf(services, company, part)));
  const jobs = [...(bases ?? [])].map(([job, base]) => {
    const own = parts.flatMap((part, i) => {
      const content = read[i]?.get(job);
      return content === undefined ? [] : [[part, content] as const];
    });
    return putTogether(base, Object.fromEntries(own));
  });
  return { jobs, behind: count - late.length };
}
