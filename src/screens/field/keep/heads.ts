import type { Glance, JobHead, KeptJob, OwnEntry } from "./shapes.ts";

/** The head of a job as it was read: what was said at a glance of an older ledger goes with it. */
export const headOf = ({ job, title, ownNumber, ledger, readAt }: KeptJob): JobHead => ({
  job,
  title,
  ...(ownNumber === undefined ? {} : { ownNumber }),
  hash: ledger.head.hash,
  readAt,
});

const SECOND_MS = 1_000;

/**
 * What of this phone's own counts beside the ledger of a job: its entries there, which of them are refused, and the clock. A skew is
 * learned anew with every contact, a few milliseconds off the last: what it moves by less than a second is nothing new.
 */
export function ownMark(own: readonly OwnEntry[], job: string, skew: number): string {
  const mine = own.filter((one) => one.job === job);
  return [Math.round(skew / SECOND_MS), ...mine.map(({ run, standing }) => `${run}${standing === "refused" ? "r" : ""}`)].join(" ");
}

/** The app that runs here: the name of its first script holds a digest of all that it loads. */
export const appHere = (): string => document.querySelector<HTMLScriptElement>("script[type=module]")?.src ?? "";

/** What a glance is made of: the ledger, this phone's own beside it, and the app that judged it. */
export const glanceMark = ({ hash }: Pick<JobHead, "hash">, own: string, app: string): string => `${hash} ${own} ${app}`;

/** What is kept of a job for the first screen, where it is made of the same and holds at `now`; else nothing. */
export function keptGlance({ glance }: JobHead, mark: string, now: number): Glance | undefined {
  if (glance?.mark !== mark) return undefined;
  return now >= glance.at && now < (glance.until ?? Number.POSITIVE_INFINITY) ? glance : undefined;
}
