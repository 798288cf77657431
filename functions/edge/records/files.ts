import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { recordKey } from "#functions/shared/index.ts";
import type { Call } from "../routes/route.ts";

export const recordFiles = {
  pdf: { ending: "pdf", type: "application/pdf" },
  model: { ending: "model.json", type: "application/json" },
  ledger: { ending: "ledger.json", type: "application/json" },
} as const;
export type RecordFile = keyof typeof recordFiles;

/**
 * Where a file of a record lies. The record's id is in it, so that no other try at the same version, on another machine
 * or left over from a try that was given up, ever writes over a record that was acknowledged.
 */
export const fileKey = (record: { company: string; job: string; id: string; version: number }, ending: string): string =>
  recordKey(record.company, record.job, record.version, `${record.id}.${ending}`);

/** One of the files of a record of the caller's company. */
export async function recordFile({ services, session, parameters }: Call, which: RecordFile): Promise<Outcome<Response>> {
  const record = await services.records.get(session.company, parameters.record ?? "");
  if (!record) return refuse("record-unknown", "record", {});
  const { ending, type } = recordFiles[which];
  const found = await services.store.get(fileKey({ ...record, company: session.company }, ending));
  if (!found.ok) return found;
  const headers = {
    "content-type": type,
    "content-length": String(found.value.length),
    "content-disposition": `inline; filename="record-${record.version}.${ending}"`,
    "cache-control": "private, max-age=31536000, immutable",
  };
  return ok(new Response(found.value.stream, { headers }));
}
