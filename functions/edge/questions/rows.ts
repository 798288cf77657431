import type { CompanyObserved, JobObserved, ObservedPart, Question } from "#core/quality/index.ts";
import { type LateJobs, PAGE } from "../adapters/observed.ts";
import { computeAndKeep } from "../jobs/findings.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";
import type { Begun } from "./begun.ts";
import { BASE, type ObservedRow, putTogether } from "./parts.ts";

export interface RowsRead {
  /** Each job by its name. */
  readonly titles: Readonly<Record<string, string>>;
  /** What the question goes by of every job, in the order of their ids. */
  readonly jobs: readonly JobObserved[];
  /** Jobs whose rows are behind their ledgers still. */
  readonly behind: number;
}

type Page = readonly (readonly ObservedRow[])[];

/** The jobs of a company page by page from the first on, each with the parts asked for. */
async function* pagesOf(
  services: Services,
  company: string,
  parts: readonly ObservedPart[],
  first: Page,
): AsyncGenerator<readonly JobObserved[]> {
  for (let [bases = [], ...lists] = first; ; ) {
    yield putTogether(
      bases,
      parts.map((part, i) => [part, lists[i] ?? []]),
    );
    const last = bases.at(-1);
    if (last === undefined || bases.length < PAGE) return;
    [bases = [], ...lists] = await services.observed.page(company, [BASE, ...parts], last.job);
  }
}

/** Rows that are behind are made, some of them. */
async function caughtUp(services: Services, company: string, { jobs, count }: LateJobs): Promise<number> {
  for (const job of jobs) {
    const place = { company, job };
    await computeAndKeep(services, place, await currentJob(services, place));
  }
  return count - jobs.length;
}

/**
 * What a question reads of every job of a company. A page of rows is held at a time; of it stays what the question goes by, so that
 * readings and pictures of thousands of jobs never lie in memory together. `asFar`: what is left of a job, before anything else.
 */
export async function rowsOf(
  services: Services,
  company: string,
  own: CompanyObserved,
  { reads, keeps }: Question,
  { late, page: read }: Pick<Begun, "late" | "page">,
  asFar: (job: JobObserved) => JobObserved | undefined = (job) => job,
): Promise<RowsRead> {
  const behind = await caughtUp(services, company, late);
  // what was read before some of its rows were made anew is read again
  const first = late.count === 0 ? read : await services.observed.page(company, [BASE, ...reads], "");
  const kept = keeps?.(own) ?? ((job: JobObserved) => job);
  const jobs: JobObserved[] = [];
  const titles: Record<string, string> = {};
  for await (const page of pagesOf(services, company, reads, first)) {
    for (const one of page) {
      const row = asFar(one);
      if (row === undefined) continue;
      titles[row.job] = row.title;
      jobs.push(kept(row));
    }
  }
  return { titles, jobs, behind };
}
