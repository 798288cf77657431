import type { Interval } from "../statistics/index.ts";
import { wilson } from "../statistics/index.ts";
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

/** What the findings of one step or covering show together, as they are gone through. */
interface Shown {
  isWrong: boolean;
  isClose: boolean;
  isEntered: boolean;
}

const stateOf = ({ isWrong, isClose, isEntered }: Shown): EventState =>
  isWrong ? "not right" : isClose ? "too close to call" : isEntered ? "right" : "not entered";

/** The states of everything that findings were asked in, by what they have for it, in the order in which it first appears. */
function statesBy(findings: readonly FindingObserved[], of: "step" | "holds"): ReadonlyMap<string, EventState> {
  const shown = new Map<string, Shown>();
  for (const finding of findings) {
    const key = finding[of];
    if (key === undefined || !isAsked(finding)) continue;
    let own = shown.get(key);
    if (own === undefined) {
      own = { isWrong: false, isClose: false, isEntered: false };
      shown.set(key, own);
    }
    const { first, reworked, afterCovering } = finding;
    if (first === "outside" || reworked || afterCovering) own.isWrong = true;
    else if (first === "too close to call") own.isClose = true;
    if (!isLeftOut(finding)) own.isEntered = true;
  }
  return new Map([...shown].map(([key, own]) => [key, stateOf(own)]));
}

/** One event for each step that a job asked something in. A step with nothing entered counts once the job is done. */
export const stepEvents = (jobs: readonly JobObserved[]): readonly Event[] =>
  jobs.flatMap((job) =>
    [...statesBy(job.findings, "step")].flatMap(([step, state]) =>
      state === "not entered" && job.installed === undefined ? [] : [{ job, step, state }],
    ),
  );

/** One event for each covering that happened and was entered as it did. */
export const coveringEvents = (jobs: readonly JobObserved[]): readonly Event[] =>
  jobs.flatMap((job) => {
    const states = statesBy(job.findings, "holds");
    return job.coverings.flatMap(({ covering, at, unseen }) => {
      const state = at === undefined || unseen ? undefined : states.get(covering);
      return state === undefined ? [] : [{ job, covering, state }];
    });
  });

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
  const counts = { right: 0, "not right": 0, "too close to call": 0, "not entered": 0 };
  for (const { state } of events) counts[state] += 1;
  const { right, "not right": notRight, "too close to call": tooClose, "not entered": notEntered } = counts;
  const n = events.length - tooClose;
  return { asked: events.length, right, notRight, tooClose, notEntered, n, share: wilson(right, n, alpha) };
}
