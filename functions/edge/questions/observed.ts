import { type Finding, factsOf, type JobState } from "#core/job/index.ts";
import { type JobObserved, observe } from "#core/quality/index.ts";

/** What media found of a job's photos, as its own entries tell it: photo -> hash of what it shows. */
function likenessesOf(state: JobState): ReadonlyMap<string, string> {
  return new Map(
    factsOf(state, "picture-read").flatMap(({ what: { photo, facts } }) => {
      const { likeness } = (facts ?? {}) as { readonly likeness?: { readonly hashes?: readonly unknown[] } | null };
      const hash = likeness?.hashes?.[0];
      return typeof hash === "string" ? [[photo, hash] as const] : [];
    }),
  );
}

/** A job as the owner's questions read it, from its ledger alone. */
export const observedOf = (job: string, state: JobState, found: readonly Finding[]): JobObserved =>
  observe(job, state, found, likenessesOf(state));
