import { type Finding, findings, RULES } from "#core/job/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { observedOf } from "../questions/observed.ts";
import { cutUp, MADE } from "../questions/parts.ts";
import type { Services } from "../services.ts";
import { afterWorkOf } from "./after-work-of.ts";
import { listedOf } from "./listed.ts";
import { currentJob, headOf } from "./read.ts";
import type { ReadJob } from "./read-job.ts";

/** What is kept of a job's findings. */
export interface Computed {
  readonly findings: readonly Finding[];
}

/** The findings of a job as stored, or computed and stored now when they are behind its ledger or the rules. */
export async function currentFindings(services: Services, place: Place, job: ReadJob): Promise<Computed> {
  const stored = await services.jobs.get(place);
  const { number } = headOf(job.stored);
  if (stored && stored.number === number && stored.rules === RULES) return JSON.parse(stored.computed) as Computed;
  return computeAndKeep(services, place, job);
}

export async function computeAndKeep(services: Services, place: Place, job: ReadJob): Promise<Computed> {
  const computed = { findings: findings(job.state) };
  await keepComputed(services, place, job, computed);
  return computed;
}

/** Findings, the rows of the lists and of what comes after the work, and the owner's rows, in one batch. */
export async function keepComputed(services: Services, place: Place, job: ReadJob, computed: Computed): Promise<void> {
  const { number } = headOf(job.stored);
  const rows = services.observed.put(place, number, MADE, cutUp(observedOf(place.job, job.state, computed.findings)));
  const afterWork = services.afterWork.put(place, number, JSON.stringify(afterWorkOf(job.state)));
  const listed = services.listed.put(place, number, RULES, JSON.stringify(listedOf(job.state, computed.findings, services.clock())));
  await services.jobs.put(place, { number, rules: RULES, computed: JSON.stringify(computed) }, [...rows, afterWork, listed]);
}

const waiting = new Set<string>();
const LANE_MS = 10_000;

/**
 * Findings follow an append; a reader that finds them behind computes them, so that this may be lost without harm. Of many
 * appends at once one computation runs and one waits: it will see what all the others wrote.
 */
export async function follow(services: Services, place: Place): Promise<void> {
  const name = `follow ${place.company}/${place.job}`;
  if (waiting.has(name)) return;
  waiting.add(name);
  try {
    await services.lanes.in(name, LANE_MS, async () => {
      waiting.delete(name);
      await computeAndKeep(services, place, await currentJob(services, place));
    });
  } finally {
    waiting.delete(name);
  }
}
