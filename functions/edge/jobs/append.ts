import type { Outcome } from "#core/outcome/index.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import type { Statement } from "../adapters/statement.ts";
import { type Appended, append, appendAsHeld, type Incoming } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import { admissionOf, admissionTo } from "./admission.ts";
import { usesOf, withheldBodies } from "./consequences.ts";
import { headOf } from "./read.ts";

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
    also: async (rows) => [...(await following(services, place, rows)), ...(also?.() ?? [])],
    whole,
    begins,
    isThere,
  });
}

/** The same in one question, where this isolate holds the job; `unless`: fails where it may not be done. Undefined: not done, ask as usual. */
export const appendToHeldJob = (
  services: Services,
  place: Place,
  incoming: readonly Incoming[],
  received: number,
  unless: Statement,
): Promise<Appended | undefined> =>
  appendAsHeld(services, place, incoming, received, {
    async held() {
      const job = services.held.get(place);
      return job && { head: headOf(job.stored), admission: await admissionOf(services, place, incoming, job) };
    },
    also: async (rows) => [...(await following(services, place, rows)), unless],
  });

/** What goes with new entries of a job. */
async function following(services: Services, place: Place, rows: readonly StoredEntry[]): Promise<readonly Statement[]> {
  const before = rows.some(({ envelope }) => envelope.kind === "body-withheld") ? await services.ledgers.read(place) : [];
  return [...usesOf(services, place, rows), ...withheldBodies(services, place, rows, before)];
}
