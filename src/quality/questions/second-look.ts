import { message } from "../../job/index.ts";
import { chiSquareAbove, moments } from "../../statistics/index.ts";
import {
  answering,
  type Candidate,
  cellOf,
  columns,
  fixedCell,
  grouped,
  jobsAsked,
  label,
  labelCell,
  row,
  standing,
  sumOf,
  table,
} from "../answering.ts";
import type { JobObserved, ReadingObserved } from "../observation.ts";
import type { Question } from "../question.ts";

/** Fewer pairs than this and an item's are not judged (own). */
const LEAST_PAIRS = 5;

export interface SecondLook {
  readonly job: JobObserved;
  readonly first: ReadingObserved;
  readonly second: ReadingObserved;
  /** Second less first, and its own standard uncertainty: fixed unit of the kind. */
  readonly apart: number;
  readonly u: number;
}

/** A reading and the one that repeats it without sight of it, by someone else. */
export const secondLooks = (jobs: readonly JobObserved[]): readonly SecondLook[] =>
  jobs.flatMap((job) => {
    if (job.readings.every(({ blindOf }) => blindOf === undefined)) return [];
    const byEntry = new Map(job.readings.map((reading) => [reading.entry, reading]));
    return job.readings.flatMap((second) => {
      const first = second.blindOf === undefined ? undefined : byEntry.get(second.blindOf);
      if (first?.value === undefined || second.value === undefined || first.person === second.person) return [];
      // two standings of an instrument have two lines: what is read below them is not the same length
      if (first.setUp !== second.setUp) return [];
      const u = Math.hypot(first.u ?? 0, second.u ?? 0);
      return u > 0 ? [{ job, first, second, apart: second.value - first.value, u }] : [];
    });
  });

/** Of a job's readings, those that are one of such a pair. */
export function lookedAgain(job: JobObserved): JobObserved {
  const repeated = new Set(job.readings.flatMap(({ blindOf }) => blindOf ?? []));
  return { ...job, readings: job.readings.filter(({ entry, blindOf }) => blindOf !== undefined || repeated.has(entry)) };
}

/** Further apart than twice the doubt of the difference. */
export const differs = ({ apart, u }: SecondLook): boolean => Math.abs(apart) > 2 * u;

/** Does what someone else reads agree within the doubt that is stated? Σ (d/u)² is chi-square where it does. */
export const secondLook: Question = {
  id: "second-look",
  reads: ["readings"],
  keeps: () => lookedAgain,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const looks = secondLooks(jobs);
    const items = [...grouped(looks, ({ job, first }) => `${job.sheet}\n${first.item}`)].map(([key, own]) => {
      const [sheet, item = ""] = key.split("\n");
      const squares = sumOf(own, ({ apart, u }) => (apart / u) ** 2);
      return { about: label("item", item, sheet), own, p: chiSquareAbove(squares, own.length) };
    });
    const compared = items
      .filter(({ own }) => own.length >= LEAST_PAIRS)
      .map(({ about, own, p }): Candidate => {
        const off = own.filter(differs).length;
        return { about, what: "second look differs", p, says: message("second-look.differs", { off, n: own.length }) };
      });
    const stands = standing(compared, asking.alpha);
    return answering("second-look", jobs.length, asking, {
      ...(looks.length < LEAST_PAIRS ? { tooFew: message("too-few.pairs", { pairs: looks.length, wanted: LEAST_PAIRS }) } : {}),
      ...stands,
      says: [message("second-look.all", { pairs: looks.length, off: looks.filter(differs).length })],
      tables: [
        table(
          "second-looks",
          columns("about label", "pairs count", "differ count", "mean-apart fixed", "stated-doubt fixed", "chance probability"),
          items.map(({ about, own, p }) => {
            const kind = own[0]?.first.kind ?? "length";
            return row(
              [
                labelCell(about),
                cellOf(own.length),
                cellOf(own.filter(differs).length),
                fixedCell(moments(own.map(({ apart }) => apart)).mean, kind),
                fixedCell(Math.sqrt(sumOf(own, ({ u }) => u * u) / own.length), kind),
                cellOf(p),
              ],
              own.length < LEAST_PAIRS ? "too few to tell" : undefined,
            );
          }),
        ),
      ],
    });
  },
};
