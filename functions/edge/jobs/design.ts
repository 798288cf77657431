import {
  type DesignSwitches,
  designAt,
  designCheck,
  designSwitches,
  expectations,
  type FigureSource,
  switchesBySheetId,
} from "#core/job/index.ts";
import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import { designPageModel } from "#core/record/index.ts";
import type { DesignAnswer, JobDesign, PlannedDesign } from "#core/wire/index.ts";
import { designKey, type Found } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Services } from "../services.ts";
import { currentJob, headOf, readJob } from "./read.ts";

// The core's own types are JSON already; the wire only says that they are.
const asJson = (value: unknown): Json => value as Json;

const answered = (source: FigureSource, switches: DesignSwitches): DesignAnswer => ({
  expectations: expectations(source, switches).map(asJson),
  lines: designCheck(source, switches).map(asJson),
});

/** What the newest design of a job leads to under its tolerance sheet. */
export async function designOf(services: Services, place: Place): Promise<JobDesign> {
  const { state, stored } = await currentJob(services, place);
  const source = { design: designAt(state, Number.POSITIVE_INFINITY), kitCards: state.kitCards };
  const switches = state.sheet === undefined ? {} : designSwitches(state.sheet, source.design);
  return { job: place.job, head: headOf(stored), ...answered(source, switches) };
}

/** What a design leads to that is no job yet. Nothing is stored. */
export function designPlanned({ figures, switches = {}, kitCards = [] }: PlannedDesign): DesignAnswer {
  const cards = kitCards.map((card, i) => ({ id: String(i), ...card }));
  return answered({ design: { figures, switches }, kitCards: cards }, switchesBySheetId(switches));
}

/**
 * The printed check of a job's newest design, made anew at every call: the same design has the same place in the store, so nothing
 * piles up. Refuses print-unavailable, print-failed, store-unavailable.
 */
export async function designPrinted(services: Services, place: Place): Promise<Outcome<Found>> {
  const [{ state }, row] = await Promise.all([
    readJob(services, place),
    services.companies.newestOf(place.company, "settings", "settings"),
  ]);
  const settings = row && (await services.companies.version(place.company, row.digest));
  const model = designPageModel({ job: place.job, state, settings: settings?.content ?? {} });
  const digest = await contentDigest(services.digest, model as unknown as Json);
  if (!digest.ok) throw new Error(`a view model without a canonical form: ${digest.refusal.place}`);
  const key = designKey(place.company, place.job, digest.value);
  const printed = await services.machines.print({ kind: "design-check", model, key });
  if (!printed.ok) return printed;
  const found = await services.store.get(key);
  return found.ok ? ok(found.value) : found;
}
