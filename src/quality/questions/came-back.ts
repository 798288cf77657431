import { message } from "../../job/index.ts";
import { exactShare, type Interval, kaplanMeier, type SurvivalStep, survivalAt, wilson } from "../../statistics/index.ts";
import { jobsBetween } from "../after/between.ts";
import { comparedParts } from "../after/parts.ts";
import { endOfFirstWinter, jobsWatched, partsWatched, type WatchedFrom } from "../after/watched.ts";
import {
  answering,
  cellOf,
  columns,
  grouped,
  jobsAsked,
  LEAST_EVENTS,
  label,
  labelCell,
  percent,
  row,
  standing,
  table,
  tooFewJobs,
  withEnds,
} from "../answering.ts";
import { dayCount } from "../days.ts";
import type { CurvePicture, Label, Question } from "../question.ts";

const YEAR_DAYS = 365;

/** Share with an event by a time: one less the curve. While there was none, as many as were watched so long say how far that reaches. */
function cameBy(steps: readonly SurvivalStep[], time: number, watchedSoLong: number, alpha: number): Interval {
  const step = survivalAt(steps, time);
  return step === undefined ? exactShare(0, watchedSoLong, alpha) : { value: 1 - step.survival, low: 1 - step.high, high: 1 - step.low };
}

/** Those that had the time by today, whether or not something came of it: one that was called back early has not had it sooner. */
function hadTheTime<T extends WatchedFrom>(watched: readonly T[], today: string, days: (one: WatchedFrom) => number): readonly T[] {
  const now = dayCount(today);
  return watched.filter((one) => now - one.start >= days(one));
}

const line = (about: Label, steps: readonly SurvivalStep[]): CurvePicture["lines"][number] => ({
  label: about,
  points: [{ x: 0, y: 1, low: 1, high: 1 }, ...steps.map(({ time, survival, low, high }) => ({ x: time, y: survival, low, high }))],
});

/** Called back within a year and through the first winter, by month of installation; parts that fail more than the others. */
export const cameBack: Question = {
  id: "came-back",
  reads: ["callbacks", "parts"],
  answer: (observed, asking) => {
    const { alpha, today } = asking;
    const jobs = jobsAsked(observed, asking);
    const watched = jobsWatched(jobs, today);
    const events = watched.filter(({ event }) => event).length;
    const steps = kaplanMeier(watched, alpha);
    const whole = watched.filter(({ time }) => time >= YEAR_DAYS).length;
    const year = cameBy(steps, YEAR_DAYS, whole, alpha);
    const parts = comparedParts(partsWatched(jobs, today), alpha);
    const stands = standing(parts.compared, alpha);
    const months = [...grouped(watched, ({ from }) => from.slice(0, 7))].sort(([a], [b]) => (a < b ? -1 : 1));
    const rows = months.map(([month, own]) => {
      const yearOf = hadTheTime(own, today, () => YEAR_DAYS);
      const inYear = yearOf.filter(({ event, time }) => event && time <= YEAR_DAYS).length;
      // of one month all have the same first winter
      const spring = dayCount(endOfFirstWinter(`${month}-01`));
      const winter = (one: WatchedFrom): number => spring - one.start;
      const winterOf = hadTheTime(own, today, winter);
      const inWinter = winterOf.filter((one) => one.event && one.time < winter(one)).length;
      return row(
        [
          labelCell(label("month", month)),
          ...[own.length, yearOf.length, inYear].map(cellOf),
          withEnds(wilson(inYear, yearOf.length, alpha)),
          ...[winterOf.length, inWinter].map(cellOf),
          withEnds(wilson(inWinter, winterOf.length, alpha)),
        ],
        yearOf.length < LEAST_EVENTS ? "too few to tell" : undefined,
      );
    });
    const settled = hadTheTime(watched, today, () => YEAR_DAYS).map((one) => ({ ...one, event: one.event && one.time <= YEAR_DAYS }));
    const gaps = jobsBetween(settled, alpha);
    return answering("came-back", jobs.length, asking, {
      ...tooFewJobs(jobs.length),
      ...stands,
      says: [
        message("came-back.year", { share: percent(year.value || 0), low: percent(year.low), high: percent(year.high) }),
        message(stands.signals.length > 0 ? "came-back.parts" : "came-back.no-part", { parts: parts.lines.length }),
      ],
      counted: [message("came-back.counted", { jobs: watched.length, events, whole })],
      tables: [
        table(
          "came-back-months",
          columns(
            "month label",
            "jobs count",
            "had-year count",
            "within-year count",
            "within-year-share share",
            "had-winter count",
            "within-winter count",
            "within-winter-share share",
          ),
          rows,
        ),
        table(
          "came-back-parts",
          columns("part label", "watched count", "failed count", "failed-year share", "failed-winter count", "chance probability"),
          parts.lines.map(({ about, n, whole: had, failed, inWinter, steps: own, p }) =>
            row(
              [labelCell(about), cellOf(n), cellOf(failed), withEnds(cameBy(own, YEAR_DAYS, had, alpha)), cellOf(inWinter), cellOf(p)],
              n < LEAST_EVENTS ? "too few to tell" : undefined,
            ),
          ),
        ),
      ],
      pictures: [
        {
          draws: "curve",
          shape: "steps",
          id: "came-back",
          table: "came-back-months",
          axis: { kind: "share" },
          xAxis: "days",
          lines: [line(label("word", "all-jobs"), steps)],
        },
        ...(gaps === undefined ? [] : [gaps]),
      ],
    });
  },
};
