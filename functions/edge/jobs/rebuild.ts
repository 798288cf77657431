import { findings } from "#core/job/index.ts";
import { canonical, type Json } from "#core/ledger/index.ts";
import type { Rebuilt } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { observedOf } from "../questions/observed.ts";
import { cutUp } from "../questions/parts.ts";
import type { Services } from "../services.ts";
import { afterWorkOf } from "./after-work-of.ts";
import { type Computed, keepComputed } from "./findings.ts";
import { readJob } from "./read.ts";

/** As it is kept: what JSON has no form for is gone. */
const plain = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;
const parsed = (text: string | undefined): Json => (text === undefined ? null : (JSON.parse(text) as Json));

/**
 * Computes a job's findings again from its ledger alone and compares them with what is stored; so the row of what comes after the work,
 * and the rows of the owner's questions. `rewrite`: what differs is written anew.
 */
export async function rebuild(services: Services, place: Place, rewrite: boolean): Promise<Rebuilt> {
  const job = await readJob(services, place);
  const stored = await services.jobs.get(place);
  const computed = { findings: findings(job.state) };
  const kept = stored ? ((JSON.parse(stored.computed) as Computed).findings as unknown as Json) : null;
  const [row, rows] = [await services.afterWork.get(place), await services.observed.ofJob(place)];
  const observed = cutUp(observedOf(place.job, job.state, computed.findings));
  const differences = [
    ...differencesOf(kept, plain(computed.findings), "findings"),
    ...differencesOf(parsed(row), plain(afterWorkOf(job.state)), "afterWork"),
    ...Object.entries(observed).flatMap(([part, content]) => differencesOf(parsed(rows[part]), parsed(content), `observed/${part}`)),
  ];
  if (rewrite && differences.length > 0) await keepComputed(services, place, job, computed);
  return { job: place.job, same: differences.length === 0, differences };
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
