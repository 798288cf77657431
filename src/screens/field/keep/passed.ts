import type { WireProblem } from "../../../wire/index.ts";

/**
 * How a pass of sending ended: everything gone, the edge out of reach or in trouble, the session ended, another page of this phone is
 * at it, or the crew of another company has signed in.
 */
export type Passed = "all sent" | "away" | "signed out" | "another is sending" | "another's";

export interface Progress {
  readonly photo?: string;
  /** Of the photo that is on its way, 0 to 1. */
  readonly share?: number;
}

export type Tell = (progress: Progress) => void;

export const isSignedOut = (problem: WireProblem): boolean => problem.status === 401;
/** Not this entry's fault: the edge is in trouble or asks for patience. */
export const isForNow = (problem: WireProblem): boolean => problem.status >= 500 || problem.status === 429 || problem.status === 408;
