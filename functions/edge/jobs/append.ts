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
  readonly isThere?: boolean;
  /** More to be written in the same batch. */
  readonly also?: () => readonly Statement[];
}

/** Appends to a job: the core admits, and photos named, bodies withheld and what else goes with it are written together. */
export async function appendToJob(
  services: Services,
  place: Place,
  incoming: readonly Incoming[],
  received: number,
  { whole = false, begins = false, isThere = false, also }: JobAppend = {},
): Promise<Outcome<Appended>> {
  return append(services, place, incoming, received, {
    admitting: admissionTo(services, place, incoming),
    async also(rows) {
      const before = rows.some(({ envelope }) => envelope.kind === "body-withheld") ? await services.ledgers.read(place) : [];
      return [...usesOf(services, place, rows), ...withheldBodies(services, place, rows, before), ...(also?.() ?? [])];
    },
    whole,
    begins,
    isThere,
  });
}
