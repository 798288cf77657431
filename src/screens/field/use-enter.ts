import { useCallback } from "preact/hooks";
import { type Entered, useKeep, type Words } from "./keep/index.ts";

const twoDigits = (count: number): string => String(count).padStart(2, "0");

/** The day where this phone is, as `2026-11-25`. */
export function dayHere(milliseconds: number): string {
  const here = new Date(milliseconds);
  return `${here.getFullYear()}-${twoDigits(here.getMonth() + 1)}-${twoDigits(here.getDate())}`;
}

/**
 * Enters facts of one job in the name of the person who was chosen on this phone today. Where nobody was chosen yet this day, it is
 * asked over the page that is open, and goes on from there; `undefined` where the question was left open: nothing was entered then.
 */
export function useEnter(job: string): (kind: string, words: Words) => Promise<Entered | undefined> {
  const { keep } = useKeep();
  return useCallback(
    async (kind, words) => {
      if (keep.state.today?.day !== dayHere(keep.now()) && !(await keep.askWho())) return undefined;
      return keep.enter(job, kind, words);
    },
    [job, keep],
  );
}
