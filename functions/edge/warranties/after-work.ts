import { type AfterWork, afterWorkOf } from "../jobs/after-work-of.ts";
import { computeAndKeep } from "../jobs/findings.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";

/** Of every job of a company, the newest first, from its rows; a job that has grown since is computed now. */
export async function afterWorkOfAll(services: Services, company: string): Promise<readonly (AfterWork & { readonly job: string })[]> {
  const all: (AfterWork & { readonly job: string })[] = [];
  for (const { job, content } of await services.afterWork.all(company)) {
    if (content !== null) {
      all.push({ job, ...(JSON.parse(content) as AfterWork) });
      continue;
    }
    const place = { company, job };
    const read = await currentJob(services, place);
    await computeAndKeep(services, place, read);
    all.push({ job, ...afterWorkOf(read.state) });
  }
  return all;
}
