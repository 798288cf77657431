import type { RecordModel } from "#core/record/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { RecordRow } from "../adapters/records.ts";
import type { Services } from "../services.ts";
import { fileKey } from "./files.ts";

/** The view model of the last record of the same edition, or of the last one at all; absent where its file does not come. */
export async function modelBefore(
  { store }: Services,
  { company }: Place,
  earlier: readonly RecordRow[],
  edition: RecordRow["edition"],
): Promise<RecordModel | undefined> {
  const last = earlier.findLast((row) => row.edition === edition) ?? earlier.at(-1);
  if (last === undefined) return undefined;
  const found = await store.get(fileKey({ ...last, company }, "model.json"));
  const bytes = found.ok ? await found.value.bytes() : found;
  return bytes.ok ? (JSON.parse(new TextDecoder().decode(bytes.value)) as RecordModel) : undefined;
}
