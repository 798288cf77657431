import type { SeenBeforeList } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import { jobPath } from "../parts/place.ts";
import { useSpeaking } from "../parts/speaking.ts";

/** The pairs of pictures of which at least one is the job's, kept fresh. */
export const useSeenBefore = (job: string) => useNews(`seen before ${job}`, () => ask<SeenBeforeList>(`/api/jobs/${job}/seen-before`));

/** Leads to the pairs, with how many there are once that is known. */
export function SeenBeforeLink({ job }: { readonly job: string }) {
  const { say } = useSpeaking();
  const { value } = useSeenBefore(job);
  return (
    <Link to={jobPath(job, "seen-before")}>
      {value === undefined ? say("seen-before-title") : say("seen-before-open", { count: value.seenBefore.length })}
    </Link>
  );
}
