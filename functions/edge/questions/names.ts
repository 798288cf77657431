import type { ToleranceSheet, Words } from "#core/job/index.ts";
import type { JobObserved, NamesKnown } from "#core/quality/index.ts";
import type { Services } from "../services.ts";

/** Names for whatever the answers speak of: the company's people, its jobs, its newest tolerance sheets and instruments. */
export async function namesFor(services: Services, company: string, jobs: readonly JobObserved[]): Promise<NamesKnown> {
  const [people, things] = await Promise.all([services.companies.people(company), services.companies.newest(company)]);
  return {
    people: Object.fromEntries(people.map(({ id, name }) => [id, name])),
    jobs: Object.fromEntries(jobs.map(({ job, title }) => [job, title])),
    sheets: Object.fromEntries(
      things.flatMap(({ kind, name, content }) => (kind === "sheet" ? [[name, content as unknown as ToleranceSheet]] : [])),
    ),
    instruments: Object.fromEntries(
      things.flatMap(({ kind, name, content }) => (kind === "instrument" ? [[name, titleOf((content as { title?: unknown }).title)]] : [])),
    ),
  };
}

const titleOf = (title: unknown): Words => (typeof title === "string" ? { en: title } : (title as Words));
