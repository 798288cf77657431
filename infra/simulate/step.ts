import type { Work } from "./work.ts";

/** What somebody does in one go; each is driven through the edge, and its requests are served one after another. */
export const stepNames = [
  "open a job",
  "send entries",
  "send a photo",
  "photo read",
  "look",
  "read a job that grew",
  "office looks",
  "issue a record",
  "owner asks",
  "month's report",
  "every minute",
] as const;
export type StepName = (typeof stepNames)[number];

/** The requests of one step as they were driven. */
export interface Trace {
  readonly step: StepName;
  readonly works: readonly Work[];
  /** Driven after the older company was given its past, or at the same point of the young one's days: the two can be compared. */
  readonly comparable: boolean;
  /** Whether its company has a past that was copied in. */
  readonly old: boolean;
}
