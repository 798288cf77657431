import type { JobLedger, JobState } from "#core/job/index.ts";
import type { AttachedVersion } from "#core/ledger/index.ts";
import type { StoredEntry } from "../adapters/ledgers.ts";

/** A job as it was read: its rows, what the core reads of them, and what it made of that. */
export interface ReadJob {
  readonly stored: readonly StoredEntry[];
  readonly ledger: JobLedger;
  readonly versions: readonly AttachedVersion[];
  readonly state: JobState;
}
