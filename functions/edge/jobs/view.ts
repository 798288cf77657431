import { beforehandOf, clearances, factsOf, handingOver, RULES } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { JobList, JobView } from "#core/wire/index.ts";
import type { JobRow } from "../adapters/jobs.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { PhotoRow } from "../adapters/photos.ts";
import type { Services } from "../services.ts";
import { type Computed, computeAndKeep, currentFindings } from "./findings.ts";
import { currentJob, headOf } from "./read.ts";

// The core's own types are JSON already; the wire only says that they are.
const asJson = (value: unknown): Json => value as Json;

export const photoView = ({ sha256, bytes, type, state, facts, givenUp, blurred }: PhotoRow) => ({
  sha256,
  bytes,
  type,
  state,
  ...(facts === undefined ? {} : { facts: asJson(facts) }),
  ...(givenUp === undefined ? {} : { givenUp }),
  ...(blurred === undefined ? {} : { blurred }),
});

/** A job with its findings and, as of now, its clearances. */
export async function viewOf(services: Services, place: Place): Promise<JobView> {
  const [job, photos] = await Promise.all([currentJob(services, place), services.photos.ofJob(place)]);
  const { findings } = await currentFindings(services, place, job);
  const { state } = job;
  const now = services.clock();
  const head = headOf(job.stored);
  const over = handingOver(state, findings, now);
  const sheet = factsOf(state, "version-taken-over")
    .filter((fact) => fact.what.thing === "sheet" && fact.what.digest === state.sheetDigest)
    .at(-1)?.what;
  return {
    job: place.job,
    title: state.opened?.title ?? "",
    ...(state.opened?.ownNumber === undefined ? {} : { ownNumber: state.opened.ownNumber }),
    head,
    entries: head.number,
    rules: RULES,
    computedTo: head.number,
    findings: findings.map(asJson),
    clearances: clearances(state, findings, now).map(asJson),
    handingOver: asJson(over),
    beforehand: beforehandOf(state, findings, now).map(asJson),
    ...(sheet ? { sheet: { name: sheet.name, number: sheet.number, digest: sheet.digest } } : {}),
    tags: state.tags.map(({ set, tag, hiddenBy }) => ({ set, tag, hiddenBy })),
    coverings: (state.sheet?.coverings ?? []).map(({ id, title, done }) => ({ covering: id, title: asJson(title), done: asJson(done) })),
    leftToDo: over.leftToDo.map(asJson),
    photos: Object.fromEntries(photos.map((photo) => [photo.sha256, photoView(photo)])),
    now,
  };
}

/** The company's jobs; findings that are behind their ledger are computed now. */
export async function listOf(services: Services, company: string): Promise<JobList> {
  const now = services.clock();
  const jobs: JobList["jobs"] = [];
  for (const row of await services.jobs.jobs(company)) {
    const { title, ownNumber, clearances: kept, titles } = await computedOf(services, { company, job: row.job }, row);
    const coverings = kept.map((clearance) => {
      // A line that waited only for its time has gone by now.
      const lines = clearance.lines.filter((line) => line.from === undefined || line.from > now).length;
      const waited = clearance.state === "not yet" && clearance.lines.length > 0 && lines === 0;
      const state = waited ? (clearance.onWord ? "on word" : "clear") : clearance.state;
      return {
        covering: clearance.covering,
        title: titles[clearance.covering] ?? null,
        done: clearance.covered !== undefined,
        clear: state !== "not yet",
        state,
        lines,
        ...(clearance.announced ? { about: clearance.announced.about } : {}),
      };
    });
    jobs.push({ job: row.job, title, ...(ownNumber === undefined ? {} : { ownNumber }), state: { coverings }, entries: row.head });
  }
  return { jobs };
}

/** What is kept of a job, computed now where that is behind its ledger or `enough` finds something missing that an older program did not keep. */
export async function computedOf(
  services: Services,
  place: Place,
  row: JobRow,
  enough: (kept: Computed) => boolean = () => true,
): Promise<Computed> {
  const kept = row.number === row.head && row.rules === RULES ? (JSON.parse(row.computed) as Computed) : undefined;
  if (kept !== undefined && enough(kept)) return kept;
  return computeAndKeep(services, place, await currentJob(services, place));
}
