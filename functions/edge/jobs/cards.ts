import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import { cardsPageModel } from "#core/record/index.ts";
import { cardsKey, type Found } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Services } from "../services.ts";
import { currentJob } from "./read.ts";

/**
 * The printed cards of a job, made anew at every call: the same cards have the same place in the store, so nothing piles up.
 * Refuses print-unavailable, print-failed, store-unavailable.
 */
export async function cardsPrinted(services: Services, { company, job }: Place): Promise<Outcome<Found>> {
  const [{ state }, row] = await Promise.all([
    currentJob(services, { company, job }),
    services.companies.newestOf(company, "settings", "settings"),
  ]);
  const settings = row && (await services.companies.version(company, row.digest));
  const model = await cardsPageModel({ company, job, state, settings: settings?.content ?? {}, digest: services.digest });
  if (!model.ok) return model;
  const digest = await contentDigest(services.digest, model.value as unknown as Json);
  if (!digest.ok) throw new Error(`a view model without a canonical form: ${digest.refusal.place}`);
  const key = cardsKey(company, job, digest.value);
  const printed = await services.machines.print({ kind: "cards", model: model.value, key });
  if (!printed.ok) return printed;
  const found = await services.store.get(key);
  return found.ok ? ok(found.value) : found;
}
