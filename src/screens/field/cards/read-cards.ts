import { cardJobs, readCard } from "../../../job/index.ts";
import { digest } from "../../parts/digest.ts";
import type { Keep } from "../keep/index.ts";
import type { CardsSeen } from "./seen.ts";
import { type CardSays, cardsSaid } from "./where-to.ts";

/** What the cards in a photo say, against the jobs that this phone holds. Nothing where nobody could look. */
export async function readCards(keep: Keep, company: string, seen: CardsSeen): Promise<readonly CardSays[]> {
  if (seen.is === "not looked") return [];
  const { books } = keep.state;
  const texts = new Set(seen.codes.map(({ text }) => text));
  const reads = await Promise.all(
    [...texts].map(async (text) => {
      const named = await cardJobs(
        digest,
        text,
        company,
        books.map(({ kept }) => kept.job),
      );
      // a job's steps are worked out only where a code names it
      const jobs = books
        .filter(({ kept }) => named.includes(kept.job))
        .map(({ kept: { job }, state }) => ({ job, steps: (state.sheet?.steps ?? []).map(({ id }) => id) }));
      return readCard(digest, text, company, jobs);
    }),
  );
  return cardsSaid(reads);
}
