import { message } from "../../job/index.ts";
import { hypergeometricAtMost, looksNeeded, mostOff } from "../../statistics/index.ts";
import { answering, cellOf, columns, jobsAsked, label, percent, row, table } from "../answering.ts";
import type { JobObserved } from "../observation.ts";
import type { Asking, Question } from "../question.ts";
import { differs, lookedAgain, secondLooks } from "./second-look.ts";

type Sample = NonNullable<Asking["sample"]>;

/** Nothing typed: coverings that happened, those that someone else measured again, and those where that differed. */
function ownSample(jobs: readonly JobObserved[]): Sample {
  const lot = jobs.reduce((sum, { coverings }) => sum + coverings.filter(({ at }) => at !== undefined).length, 0);
  const looks = secondLooks(jobs);
  const looked = new Set(looks.map(({ job, first }) => `${job.job} ${first.step}`));
  const off = new Set(looks.filter(differs).map(({ job, first }) => `${job.job} ${first.step}`));
  return { lot: Math.max(lot, looked.size), looked: looked.size, off: off.size };
}

const isWhole = (n: number): boolean => Number.isSafeInteger(n) && n >= 0;
/** A lot that nobody has (own): the sums grow with it. */
const MOST = 100_000;
const isSample = ({ lot, looked, off }: Sample): boolean =>
  [lot, looked, off].every(isWhole) && off <= looked && looked <= lot && lot <= MOST && lot > 0;

/** How few of the whole could be off and stay unseen: shares at which a table is worth its line. */
const ALLOWED = [0, 0.01, 0.02, 0.05, 0.1, 0.2] as const;

/** One sentence: so many looked at, so many off; so many could still be. And how many to look at for a wanted certainty. */
export const sampling: Question = {
  id: "sampling",
  reads: ["coverings", "readings"],
  keeps: () => lookedAgain,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const sample = asking.sample ?? ownSample(jobs);
    if (!isSample(sample)) return answering("sampling", jobs.length, asking, { tooFew: message("sampling.not-a-sample") });
    const { lot, looked, off } = sample;
    const sure = percent(1 - asking.alpha);
    const most = mostOff(lot, looked, off, asking.alpha);
    const shares = [...new Set(ALLOWED.map((share) => Math.floor(share * lot)))];
    const step = Math.max(1, Math.floor(lot / 100));
    const counts = Array.from({ length: Math.floor(lot / step) + 1 }, (_, i) => i * step);
    return answering("sampling", jobs.length, asking, {
      says: [message(looked === 0 ? "sampling.none" : "sampling.could", { looked, lot, off, most, sure })],
      tables: [
        table(
          "looks-needed",
          columns("still-off count", "looks count"),
          shares.map((allowed) => row([cellOf(allowed), cellOf(looksNeeded(lot, allowed, asking.alpha))])),
        ),
        table(
          "operating-curve",
          columns("really-off count", "seen-chance probability"),
          counts.map((count) => row([cellOf(count), cellOf(hypergeometricAtMost(off, lot, count, looked))])),
        ),
      ],
      pictures:
        looked === 0
          ? []
          : [
              {
                draws: "curve",
                shape: "smooth",
                id: "operating-curve",
                table: "operating-curve",
                axis: { kind: "share" },
                xAxis: "really-off",
                lines: [
                  {
                    label: label("word", "chance-of-as-few"),
                    points: counts.map((count) => ({ x: count, y: hypergeometricAtMost(off, lot, count, looked) })),
                  },
                ],
              },
            ],
    });
  },
};
