import type { Outcome } from "#core/outcome/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Statement } from "../adapters/statement.ts";
import { type Appended, append, type Incoming } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import { admissionTo } from "./admission.ts";
import { usesOf, withheldBodies } from "./consequences.ts";

export interface JobAppend {
  readonly whole?: boolean;
  readonly begins?: boolean;
  /** More to be written in the same batch. */
  readonly also?: () => readonly Statement[];
}

/** Appends to a job: the core admits, and photos named, bodies withheld and what else goes with it are written together. */
export async function appendToJob(
  services: Services,
  place: Place,
  incoming: readonly Incoming[],
  received: number,
  { whole = false, begins = false, also }: JobAppend = {},
): Promise<Outcome<Appended>> {
  const withholds = await Promise.all(incoming.map(async (one) => one.sealed({ number: 0, hash: "0".repeat(64) })));
  const reads = withholds.some((one) => one.ok && one.value.sealed.kind === "body-withheld");
  const before = reads ? await services.ledgers.read(place) : [];
  return append(services, place, incoming, received, {
    admission: admissionTo(services, place, incoming),
    also: (rows) => [...usesOf(services, place, rows), ...withheldBodies(services, place, rows, before), ...(also?.() ?? [])],
    whole,
    begins,
  });
}
