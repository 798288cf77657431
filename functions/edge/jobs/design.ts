import { designAt, designCheck, designSwitches, expectations } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { JobDesign } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Services } from "../services.ts";
import { currentJob, headOf } from "./read.ts";

// The core's own types are JSON already; the wire only says that they are.
const asJson = (value: unknown): Json => value as Json;

/** What the newest design of a job leads to under its tolerance sheet. */
export async function designOf(services: Services, place: Place): Promise<JobDesign> {
  const { state, stored } = await currentJob(services, place);
  const source = { design: designAt(state, Number.POSITIVE_INFINITY), kitCards: state.kitCards };
  const switches = state.sheet === undefined ? {} : designSwitches(state.sheet, source.design);
  return {
    job: place.job,
    head: headOf(stored),
    expectations: expectations(source, switches).map(asJson),
    lines: designCheck(source, switches).map(asJson),
  };
}
