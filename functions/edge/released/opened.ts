import { type Outcome, ok } from "#core/outcome/index.ts";
import type { RecordModel } from "#core/record/index.ts";
import { counted, limits, notIn } from "../access/limits.ts";
import type { RecordRow } from "../adapters/records.ts";
import { sha256Hex } from "../chance.ts";
import { storedModel } from "../records/model.ts";
import type { Call } from "../routes/route.ts";
import { behind } from "../shards/index.ts";

export interface ReleasedRecord {
  readonly row: RecordRow & { readonly company: string };
  readonly model: RecordModel;
}

/** The record that a released link leads to. Refuses `release-ended`: never given, or ended by the office; the two read the same. */
export async function releasedRow({ services: edge, parameters, request }: Call): Promise<Outcome<ReleasedRecord["row"]>> {
  const token = parameters.token ?? "";
  const services = await behind(edge, await sha256Hex(token));
  const release = await services.releases.open(token);
  const row = release && (await services.records.get(release.company, release.record));
  if (!release || !row) return notIn(services, limits.released, request, "release-ended", "link");
  const may = await counted(services, limits.opened, release.hash);
  return may.ok ? ok({ ...row, company: release.company }) : may;
}

/** The same with its view model, as it was issued. */
export async function releasedRecord(call: Call): Promise<Outcome<ReleasedRecord>> {
  const row = await releasedRow(call);
  if (!row.ok) return row;
  const model = await storedModel(call.services, row.value);
  return model.ok ? ok({ row: row.value, model: model.value }) : model;
}

/** Only whoever holds the link reads it, and not a day longer than the office wants: nothing on the way keeps it. */
export const releasedHeaders = { "cache-control": "no-store", "x-robots-tag": "noindex" } as const;
