import type { RecordModel } from "#core/record/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { RecordRow } from "../adapters/records.ts";
import type { Services } from "../services.ts";
import { storedModel } from "./model.ts";

/** The view model of the last record of the same edition, or of the last one at all; absent where its file does not come or is none. */
export async function modelBefore(
  services: Services,
  { company }: Place,
  earlier: readonly RecordRow[],
  edition: RecordRow["edition"],
): Promise<RecordModel | undefined> {
  const last = earlier.findLast((row) => row.edition === edition) ?? earlier.at(-1);
  if (last === undefined) return undefined;
  const model = await storedModel(services, { ...last, company });
  return model.ok ? model.value : undefined;
}
