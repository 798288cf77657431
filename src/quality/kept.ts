// What is kept of a job for one question, in the place of its findings.

/** How one step of one job, or one covering, went. Four corners of one basin are one of these. */
export type EventState = "right" | "not right" | "too close to call" | "not entered";

/** How one step went, and when it was first entered, milliseconds. */
export interface StepObserved {
  readonly step: string;
  readonly state: EventState;
  readonly at?: number;
}

/** How the steps of one job went, and its coverings that happened and were entered as they did. */
export interface EventsObserved {
  readonly steps: readonly StepObserved[];
  readonly coverings: readonly { readonly covering: string; readonly state: EventState }[];
}

/** One job's deviations from its design with one instrument, as their mean: the unit is the job, never the single reading. */
export interface DeviationObserved {
  readonly instrument: string;
  readonly at: number;
  /** Micrometres. */
  readonly value: number;
}
