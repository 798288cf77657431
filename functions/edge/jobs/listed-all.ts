import { RULES } from "#core/job/index.ts";
import type { Services } from "../services.ts";
import { computeAndKeep } from "./findings.ts";
import { type Listed, listedOf } from "./listed.ts";
import { currentJob } from "./read.ts";

/** Of every job of a company, the newest first, from its rows, with the number of its last entry; a job that has grown since is computed now. */
export async function listedOfAll(
  services: Services,
  company: string,
): Promise<readonly (Listed & { readonly job: string; readonly head: number })[]> {
  const all: (Listed & { readonly job: string; readonly head: number })[] = [];
  for (const { job, head, content } of await services.listed.all(company, RULES)) {
    if (content !== null) {
      all.push({ job, head, ...(JSON.parse(content) as Listed) });
      continue;
    }
    const place = { company, job };
    const read = await currentJob(services, place);
    const { findings } = await computeAndKeep(services, place, read);
    all.push({ job, head, ...listedOf(read.state, findings, services.clock()) });
  }
  return all;
}
