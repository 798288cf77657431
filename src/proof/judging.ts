import { type Clearance, clearances, type Finding, findings, jobLedgerOf, jobState, RULES } from "../job/index.ts";
import type { Ledger } from "../ledger/index.ts";

/** What a rules file exports: this program's judging as it stood when that version of the rules was built. */
export interface Judging {
  readonly rules: number;
  /** All findings and clearances of a ledger or an edition of one, the clearances as they stand at `at` (ms since 1970 UTC). */
  readonly judge: (ledger: Ledger, at: number) => Judged;
}

export interface Judged {
  readonly findings: readonly Finding[];
  readonly clearances: readonly Clearance[];
}

export const rules: Judging["rules"] = RULES;

/** Judges by the rules of this program. A ledger whose shape was not verified may make it throw. */
export const judge: Judging["judge"] = (ledger, at) => {
  const state = jobState(jobLedgerOf(ledger));
  const found = findings(state);
  return { findings: found, clearances: clearances(state, found, at) };
};
