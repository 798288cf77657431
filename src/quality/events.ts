import type { Interval } from "../statistics/index.ts";
import { wilson } from "../statistics/index.ts";
import type { EventState, EventsObserved, StepObserved } from "./kept.ts";
import type { FindingObserved, JobObserved } from "./observation.ts";

export interface Event {
  readonly job: JobObserved;
  readonly step?: string;
  readonly covering?: string;
  readonly state: EventState;
  /** Of a step: when it was first entered. */
  readonly at?: number;
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

/** What findings show of everything that they were asked in, by what they have for it, in the order in which it first appears. */
function shownBy(findings: readonly FindingObserved[], of: "step" | "holds"): ReadonlyMap<string, Shown> {
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
  return shown;
}

const stepsOf = ({ findings }: JobObserved): readonly StepObserved[] => {
  const first = new Map<string, number>();
  for (const { step, at } of findings) if (at !== undefined && !(at >= (first.get(step) ?? Number.POSITIVE_INFINITY))) first.set(step, at);
  return [...shownBy(findings, "step")].map(([step, shown]) => {
    const at = first.get(step);
    return at === undefined ? { step, state: stateOf(shown) } : { step, state: stateOf(shown), at };
  });
};

function coveringsOf({ findings, coverings }: JobObserved): EventsObserved["coverings"] {
  const shown = shownBy(findings, "holds");
  return coverings.flatMap(({ covering, at, unseen }) => {
    const own = at === undefined || unseen ? undefined : shown.get(covering);
    return own === undefined ? [] : [{ covering, state: stateOf(own) }];
  });
}

/** For questions that go by events alone: of many jobs the findings need not lie in memory together. */
export const eventsAlone = (job: JobObserved): JobObserved => ({
  ...job,
  events: { steps: stepsOf(job), coverings: coveringsOf(job) },
  findings: [],
  coverings: [],
});

/** One event for each step that a job asked something in. A step with nothing entered counts once the job is done. */
export const stepEvents = (jobs: readonly JobObserved[]): readonly Event[] =>
  jobs.flatMap((job) =>
    (job.events?.steps ?? stepsOf(job)).flatMap((one) =>
      one.state === "not entered" && job.installed === undefined ? [] : [Object.assign({ job }, one)],
    ),
  );

/** One event for each covering that happened and was entered as it did. */
export const coveringEvents = (jobs: readonly JobObserved[]): readonly Event[] =>
  jobs.flatMap((job) => (job.events?.coverings ?? coveringsOf(job)).map((one) => Object.assign({ job }, one)));

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
