import type { CompanyObserved, JobObserved, ObservedPart, Question } from "#core/quality/index.ts";
import { PAGE } from "../adapters/observed.ts";
import { computeAndKeep } from "../jobs/findings.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";
import { BASE, cutTo, MADE, putTogether } from "./parts.ts";

/** Jobs that are made up for while somebody waits; the others are said to be missing. */
const MADE_NOW = 24;

export interface RowsRead {
  /** How many jobs were read, and each by its name. */
  readonly count: number;
  readonly titles: Readonly<Record<string, string>>;
  /** What a question goes by of every job, in the order of their ids. */
  readonly of: (question: Question) => readonly JobObserved[];
  /** Jobs whose rows are behind their ledgers still. */
  readonly behind: number;
}

/** The jobs of a company page by page, each with the parts asked for. */
async function* pagesOf(services: Services, company: string, parts: readonly ObservedPart[]): AsyncGenerator<readonly JobObserved[]> {
  for (let after = ""; ; ) {
    const [bases = [], ...lists] = await services.observed.page(company, [BASE, ...parts], after);
    yield putTogether(
      bases,
      parts.map((part, i) => [part, lists[i] ?? []]),
    );
    const last = bases.at(-1);
    if (last === undefined || bases.length < PAGE) return;
    after = last.job;
  }
}

const partsOf = (of: readonly Question[]): readonly ObservedPart[] => [...new Set(of.flatMap(({ reads }) => reads))];

interface Holder {
  readonly jobs: readonly JobObserved[];
  readonly take: (row: JobObserved) => void;
}

/** Holds what some questions go by of each job, of rows that have these parts. */
function holderOf(parts: readonly ObservedPart[], of: readonly Question[], keep = (job: JobObserved): JobObserved => job): Holder {
  const own = new Set<string>(partsOf(of));
  const isCut = parts.some((part) => !own.has(part));
  const jobs: JobObserved[] = [];
  return { jobs, take: (row) => jobs.push(keep(isCut ? cutTo(row, own) : row)) };
}

/** Rows that are behind are made, some of them. */
async function caughtUp(services: Services, company: string): Promise<number> {
  const { jobs: late, count } = await services.observed.behind(company, BASE, MADE, MADE_NOW);
  for (const job of late) {
    const place = { company, job };
    await computeAndKeep(services, place, await currentJob(services, place));
  }
  return count - late.length;
}

/**
 * What some questions read of every job of a company. A page of rows is held at a time; of it stays what each question goes by, so
 * that readings and pictures of thousands of jobs never lie in memory together. `asFar`: what is left of a job, before anything else.
 */
export async function rowsOf(
  services: Services,
  company: string,
  own: CompanyObserved,
  asked: readonly Question[],
  asFar: (job: JobObserved) => JobObserved | undefined = (job) => job,
): Promise<RowsRead> {
  const behind = await caughtUp(services, company);
  const parts = partsOf(asked);
  const whole = holderOf(
    parts,
    asked.filter(({ keeps }) => keeps === undefined),
  );
  const holders = new Map(asked.map((question) => [question, question.keeps ? holderOf(parts, [question], question.keeps(own)) : whole]));
  const each = [...new Set(holders.values())];
  const titles: Record<string, string> = {};
  for await (const page of pagesOf(services, company, parts)) {
    for (const one of page) {
      const row = asFar(one);
      if (row === undefined) continue;
      titles[row.job] = row.title;
      for (const holder of each) holder.take(row);
    }
  }
  return { count: Object.keys(titles).length, titles, of: (question) => holders.get(question)?.jobs ?? [], behind };
}
