import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { RecordModel } from "#core/record/index.ts";
import { read, storedRecordModel } from "#core/wire/index.ts";
import type { Services } from "../services.ts";
import { fileKey } from "./files.ts";

/**
 * The view model of an issued record as the store has it. Refuses `record-unreadable` for what is none, which an archive may have
 * brought; and what the store refuses.
 */
export async function storedModel(
  { store }: Services,
  record: { readonly company: string; readonly job: string; readonly id: string; readonly version: number },
): Promise<Outcome<RecordModel>> {
  const found = await store.get(fileKey(record, "model.json"));
  if (!found.ok) return found;
  const bytes = await found.value.bytes();
  if (!bytes.ok) return bytes;
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder().decode(bytes.value));
  } catch {
    return refuse("record-unreadable", "record", { why: "no JSON" });
  }
  const model = read(storedRecordModel, value, "record-unreadable", "record");
  // optional members of the shape are those that JSON leaves out, never ones that are there and undefined
  return model.ok ? ok(model.value as RecordModel) : model;
}
