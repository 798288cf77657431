import type { EntryReference } from "#core/job/index.ts";
import { customerEdition, type Ledger, type LedgerEntry, partNames, withhold } from "#core/ledger/index.ts";
import { contentOf } from "../ledger/index.ts";

/** Written for the office alone. */
const wholeBodies = ["note-for-office"];

/**
 * The ledger as a record attaches it. The company's edition is whole; the customer's is without names and positions,
 * without the office's own notes, and without what was filed under this job by mistake. Every entry and the chain remain.
 */
export function editionOf(ledger: Ledger, edition: "customer" | "company"): Ledger {
  if (edition === "company") return ledger;
  const foreign = new Set(ledger.entries.flatMap(movedOut));
  const entries = ledger.entries.map((entry): LedgerEntry => {
    if (!foreign.has(entry.envelope.id)) return entry;
    const edited = withhold(entry, partNames, "wrong-job");
    if (!edited.ok) throw new Error("withhold refused its own reason");
    return edited.value;
  });
  return customerEdition({ ...ledger, entries }, { wholeBodies });
}

function movedOut({ envelope, body }: LedgerEntry): readonly string[] {
  if (envelope.kind !== "moved-out") return [];
  // a job that came as an archive may say anything here
  const entries = (contentOf(body, "what") as { readonly entries?: unknown } | null | undefined)?.entries;
  return Array.isArray(entries) ? entries.flatMap((one: Partial<EntryReference> | null) => one?.id ?? []) : [];
}
