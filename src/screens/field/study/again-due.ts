import { type ReadAgain, readAgainDue } from "../../../job/index.ts";
import type { Keep } from "../keep/index.ts";
import { standingNow } from "../reading/standing.ts";
import type { ToldOnPhone } from "../told.ts";

/**
 * What somebody else can read again now, before one covering or before any. A height is compared within one standing of an instrument
 * alone, so what was read from another one is not asked for any more.
 */
export function againDue(job: string, { now: { state, findings } }: ToldOnPhone, now: number, covering?: string): readonly ReadAgain[] {
  const standing = standingNow(state, now);
  return readAgainDue(job, state, findings).filter(
    (one) => (covering === undefined || one.covering === covering) && (one.setUp === undefined || one.setUp === standing),
  );
}

/** Where the phone keeps that nobody else was there: it is asked once. */
const placeOf = (job: string, covering: string): string => `again ${job} ${covering}`;

export const isLeft = async (keep: Keep, job: string, covering: string): Promise<boolean> =>
  (await keep.draft<boolean>(placeOf(job, covering))) === true;

export const leaveIt = (keep: Keep, job: string, covering: string): Promise<void> => keep.keepDraft(placeOf(job, covering), true);
