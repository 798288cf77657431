import { canonical, type Json } from "#core/ledger/index.ts";
import type { Rebuilt } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Services } from "../services.ts";
import { afterWorkOf } from "./after-work-of.ts";
import { type Computed, compute } from "./findings.ts";
import { readJob } from "./read.ts";

/** Computes a job's findings again from its ledger alone and compares them with what is stored; so the row of what comes after the work. */
export async function rebuild(services: Services, place: Place): Promise<Rebuilt> {
  const job = await readJob(services, place);
  const stored = await services.jobs.get(place);
  const rebuilt = compute(job, services.clock()).findings as unknown as Json;
  const kept = stored ? ((JSON.parse(stored.computed) as Computed).findings as unknown as Json) : null;
  const differences = differencesOf(kept, JSON.parse(JSON.stringify(rebuilt)) as Json, "findings");
  const row = await services.afterWork.get(place);
  const again = JSON.parse(JSON.stringify(afterWorkOf(job.state))) as Json;
  const all = [...differences, ...differencesOf(row === undefined ? null : (JSON.parse(row) as Json), again, "afterWork")];
  return { job: place.job, same: all.length === 0, differences: all };
}

/** The places at which two values differ, the deepest that can be named. */
export function differencesOf(stored: Json, rebuilt: Json, place: string): Rebuilt["differences"] {
  if (textOf(stored) === textOf(rebuilt)) return [];
  if (!isTree(stored) || !isTree(rebuilt) || Array.isArray(stored) !== Array.isArray(rebuilt)) return [{ place, stored, rebuilt }];
  const keys = [...new Set([...Object.keys(stored), ...Object.keys(rebuilt)])];
  return keys.flatMap((key) => differencesOf(stored[key] ?? null, rebuilt[key] ?? null, `${place}/${key}`));
}

const isTree = (value: Json): value is { readonly [key: string]: Json } => typeof value === "object" && value !== null;

function textOf(value: Json): string {
  const text = canonical(value);
  if (!text.ok) throw new Error(`findings without a canonical form: ${text.refusal.code} at ${text.refusal.place}`);
  return text.value;
}
