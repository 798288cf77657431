import { type Outcome, ok } from "#core/outcome/index.ts";
import type { RecordModel } from "#core/record/index.ts";
import { counted, limits, notIn } from "../access/limits.ts";
import type { RecordRow } from "../adapters/records.ts";
import { fileKey } from "../records/files.ts";
import type { Call } from "../routes/route.ts";

export interface ReleasedRecord {
  readonly row: RecordRow & { readonly company: string };
  readonly model: RecordModel;
}

/** The record that a released link leads to. Refuses `release-ended`: never given, or ended by the office; the two read the same. */
export async function releasedRow({ services, parameters, request }: Call): Promise<Outcome<ReleasedRecord["row"]>> {
  const release = await services.releases.open(parameters.token ?? "");
  const row = release && (await services.records.get(release.company, release.record));
  if (!release || !row) return notIn(services, limits.released, request, "release-ended", "link");
  const may = await counted(services, limits.opened, release.hash);
  return may.ok ? ok({ ...row, company: release.company }) : may;
}

/** The same with its view model, as it was issued. */
export async function releasedRecord(call: Call): Promise<Outcome<ReleasedRecord>> {
  const row = await releasedRow(call);
  if (!row.ok) return row;
  const found = await call.services.store.get(fileKey(row.value, "model.json"));
  if (!found.ok) return found;
  const bytes = await found.value.bytes();
  if (!bytes.ok) return bytes;
  return ok({ row: row.value, model: JSON.parse(new TextDecoder().decode(bytes.value)) as RecordModel });
}

/** Only whoever holds the link reads it, and not a day longer than the office wants: nothing on the way keeps it. */
export const releasedHeaders = { "cache-control": "no-store", "x-robots-tag": "noindex" } as const;
