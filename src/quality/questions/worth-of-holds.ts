import { message } from "../../job/index.ts";
import { exactShare } from "../../statistics/index.ts";
import {
  answering,
  type Candidate,
  cellOf,
  columns,
  grouped,
  jobsAsked,
  LEAST_EVENTS,
  label,
  labelCell,
  row,
  standing,
  sumOf,
  table,
  tooFewJobs,
  withEnds,
} from "../answering.ts";
import type { FindingObserved, JobObserved } from "../observation.ts";
import type { Label, Question } from "../question.ts";

const MINUTE_MS = 60_000;

/** One held check or item over all jobs. */
export interface HoldWorth {
  readonly about: Label;
  /** Jobs that it was asked in and entered. */
  readonly asked: number;
  /** Jobs in which its first value was not within. */
  readonly notYet: number;
  /** Jobs in which something was done about it: reworked, or within at last. */
  readonly found: number;
  /** Jobs in which it was let pass as it was, and those of them that were never called back. */
  readonly overridden: number;
  readonly nothingCame: number;
  /** Minutes that coverings waited for it. */
  readonly waited: number;
}

interface Held {
  readonly job: JobObserved;
  readonly finding: FindingObserved;
}

const isNotYet = ({ finding: { first } }: Held): boolean => first === "outside" || first === "too close to call";
const isFound = (held: Held): boolean => held.finding.reworked || (isNotYet(held) && held.finding.verdict === "within");
const isOverridden = ({ finding: { passage } }: Held): boolean => passage === "go-ahead" || passage === "concession";

function worthOf(about: Label, held: readonly Held[]): HoldWorth {
  const jobsWith = (is: (one: Held) => boolean): readonly JobObserved[] => [...new Set(held.filter(is).map(({ job }) => job))];
  const overridden = jobsWith(isOverridden);
  return {
    about,
    asked: jobsWith(() => true).length,
    notYet: jobsWith(isNotYet).length,
    found: jobsWith(isFound).length,
    overridden: overridden.length,
    nothingCame: overridden.filter(({ callbacks }) => callbacks.length === 0).length,
    waited: sumOf(held, ({ finding }) => finding.waited ?? 0) / MINUTE_MS,
  };
}

export function holdsWorth(jobs: readonly JobObserved[]): readonly HoldWorth[] {
  const held = jobs.flatMap((job) =>
    job.findings
      .filter(({ weight, first }) => weight === "holds" && first !== "not taken" && first !== "does not apply")
      .map((finding) => ({ job, finding })),
  );
  return [...grouped(held, ({ job, finding: { of, check } }) => `${job.sheet}\n${of === "check" ? "check" : "item"}\n${check}`)].map(
    ([key, own]) => {
      const [sheet, of, id = ""] = key.split("\n");
      return worthOf(label(of === "check" ? "check" : "item", id, sheet), own);
    },
  );
}

/** Never found anything, although what the others find would have shown by now. */
function neverFinds(all: readonly HoldWorth[]): readonly Candidate[] {
  const [found, asked] = [sumOf(all, (one) => one.found), sumOf(all, (one) => one.asked)];
  return all
    .filter((one) => one.asked >= LEAST_EVENTS)
    .map((one) => {
      const rest = (found - one.found) / Math.max(1, asked - one.asked);
      return {
        about: one.about,
        what: "item never finds anything",
        p: one.found > 0 || one.notYet > 0 ? 1 : (1 - rest) ** one.asked,
        says: message("worth.never", { asked: one.asked, others: Math.round(rest * 1000) / 10 }),
      };
    });
}

/** What each hold has found, what it cost in waiting, and how often it was let pass without harm. */
export const worthOfHolds: Question = {
  id: "worth-of-holds",
  reads: ["findings", "callbacks"],
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const all = [...holdsWorth(jobs)].sort((a, b) => b.found / b.asked - a.found / a.asked);
    const stands = standing(neverFinds(all), asking.alpha);
    const sum = (of: (one: HoldWorth) => number): number => Math.round(sumOf(all, of));
    return answering("worth-of-holds", jobs.length, asking, {
      ...tooFewJobs(jobs.length),
      ...stands,
      says: [
        message("worth.all", {
          holds: all.length,
          notYet: sum((o) => o.notYet),
          found: sum((o) => o.found),
          hours: Math.round(sum((o) => o.waited) / 60),
        }),
        message(stands.signals.length > 0 ? "worth.thin" : "worth.keep", { holds: stands.signals.length }),
      ],
      tables: [
        table(
          "holds",
          columns(
            "about label",
            "asked count",
            "not-yet count",
            "found count",
            "found-share share",
            "waited minutes",
            "overridden count",
            "nothing-came count",
          ),
          all.map((one) =>
            row(
              [
                labelCell(one.about),
                ...[one.asked, one.notYet, one.found].map(cellOf),
                withEnds(exactShare(one.found, one.asked, asking.alpha)),
                cellOf(Math.round(one.waited)),
                ...[one.overridden, one.nothingCame].map(cellOf),
              ],
              one.asked < LEAST_EVENTS ? "too few to tell" : undefined,
            ),
          ),
        ),
      ],
      pictures: [
        {
          draws: "bars",
          id: "holds-found",
          table: "holds",
          axis: { kind: "count" },
          bars: all.slice(0, 25).map(({ about, found }) => ({ label: about, value: found })),
        },
      ],
    });
  },
};
