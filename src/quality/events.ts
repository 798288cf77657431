import type { Interval } from "../statistics/index.ts";
import { wilson } from "../statistics/index.ts";
import { grouped } from "./answering.ts";
import type { FindingObserved, JobObserved } from "./observation.ts";

/** How one step of one job, or one covering, went. Four corners of one basin are one of these. */
export type EventState = "right" | "not right" | "too close to call" | "not entered";

export interface Event {
  readonly job: JobObserved;
  readonly step?: string;
  readonly covering?: string;
  readonly state: EventState;
}

const isAsked = ({ weight, verdict }: FindingObserved): boolean =>
  (weight === "holds" || weight === "asked") && verdict !== "does not apply";
const isLeftOut = ({ first }: FindingObserved): boolean => first === "not taken" || first === "could not be taken";

/** Undefined where nothing was asked. */
export function stateOf(findings: readonly FindingObserved[]): EventState | undefined {
  const asked = findings.filter(isAsked);
  if (asked.length === 0) return undefined;
  if (asked.some(({ first, reworked, afterCovering }) => first === "outside" || reworked || afterCovering)) return "not right";
  if (asked.some(({ first }) => first === "too close to call")) return "too close to call";
  return asked.every(isLeftOut) ? "not entered" : "right";
}

/** One event for each step that a job asked something in. A step with nothing entered counts once the job is done. */
export const stepEvents = (jobs: readonly JobObserved[]): readonly Event[] =>
  jobs.flatMap((job) =>
    [...grouped(job.findings, ({ step }) => step)].flatMap(([step, findings]) => {
      const state = stateOf(findings);
      return state === undefined || (state === "not entered" && job.installed === undefined) ? [] : [{ job, step, state }];
    }),
  );

/** One event for each covering that happened and was entered as it did. */
export const coveringEvents = (jobs: readonly JobObserved[]): readonly Event[] =>
  jobs.flatMap((job) =>
    job.coverings.flatMap(({ covering, at, unseen }) => {
      const state = at === undefined || unseen ? undefined : stateOf(job.findings.filter(({ holds }) => holds === covering));
      return state === undefined ? [] : [{ job, covering, state }];
    }),
  );

/** Counts of one group, and its share right: too close to call stands apart. */
export interface Tally {
  readonly asked: number;
  readonly right: number;
  readonly notRight: number;
  readonly tooClose: number;
  readonly notEntered: number;
  /** Out of which the share is: asked, less too close to call. */
  readonly n: number;
  readonly share: Interval;
}

export function tally(events: readonly Event[], alpha: number): Tally {
  const count = (wanted: EventState): number => events.filter(({ state }) => state === wanted).length;
  const [right, notRight, tooClose, notEntered] = [count("right"), count("not right"), count("too close to call"), count("not entered")];
  const n = events.length - tooClose;
  return { asked: events.length, right, notRight, tooClose, notEntered, n, share: wilson(right, n, alpha) };
}
