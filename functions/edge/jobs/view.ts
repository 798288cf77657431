import { beforehandOf, clearances, factsOf, handingOver, RULES } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { JobList, JobView } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { PhotoRow } from "../adapters/photos.ts";
import type { Services } from "../services.ts";
import { currentFindings } from "./findings.ts";
import { listedOfAll } from "./listed-all.ts";
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
    findings: [...findings],
    clearances: [...clearances(state, findings, now)],
    handingOver: over,
    beforehand: [...beforehandOf(state, findings, now)],
    ...(sheet ? { sheet: { name: sheet.name, number: sheet.number, digest: sheet.digest } } : {}),
    tags: state.tags.map(({ set, tag, hiddenBy }) => ({ set, tag, hiddenBy })),
    coverings: (state.sheet?.coverings ?? []).map(({ id, title, done }) => ({ covering: id, title, done })),
    leftToDo: [...over.leftToDo],
    photos: Object.fromEntries(photos.map((photo) => [photo.sha256, photoView(photo)])),
    now,
  };
}

/** The company's jobs; what is behind its ledger is computed now. */
export async function listOf(services: Services, company: string): Promise<JobList> {
  const now = services.clock();
  const jobs = (await listedOfAll(services, company)).map(({ job, head, title, ownNumber, coverings }) => ({
    job,
    title,
    ...(ownNumber === undefined ? {} : { ownNumber }),
    state: {
      coverings: coverings.map(({ onWord, from, ...covering }) => {
        // A line that waited only for its time has gone by now.
        const lines = from.filter((time) => time === null || time > now).length;
        const waited = covering.state === "not yet" && from.length > 0 && lines === 0;
        const state = waited ? (onWord ? "on word" : "clear") : covering.state;
        return { ...covering, clear: state !== "not yet", state, lines };
      }),
    },
    entries: head,
  }));
  return { jobs };
}
