import { useCallback } from "preact/hooks";
import { useSpeaking } from "../parts/speaking.ts";
import { type Entered, useKeep, type Words } from "./keep/index.ts";
import { personPath } from "./paths.ts";

/** The day where this phone is, as `2026-11-25`. */
export const dayHere = (milliseconds: number): string => new Date(milliseconds).toLocaleDateString("sv-SE");

/**
 * Enters facts of one job in the name of the person who was chosen on this phone today. Where nobody was chosen yet this day, it
 * leads to that page, keeps where it came from, and enters nothing: `undefined`.
 */
export function useEnter(job: string): (kind: string, words: Words) => Promise<Entered | undefined> {
  const { keep } = useKeep();
  const { go } = useSpeaking();
  return useCallback(
    async (kind, words) => {
      const { today } = keep.state;
      if (today === undefined || today.day !== dayHere(Date.now())) {
        await keep.keepDraft("after-person", location.pathname);
        go(personPath);
        return undefined;
      }
      return keep.enter(job, kind, words);
    },
    [job, keep, go],
  );
}
