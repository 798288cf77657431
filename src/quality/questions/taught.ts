import { message } from "../../job/index.ts";
import { differenceOfShares, fisherExact, wilson } from "../../statistics/index.ts";
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
  percent,
  row,
  standing,
  table,
  withEnds,
} from "../answering.ts";
import { type Month, monthsDrawn, rightByMonth } from "../by-month.ts";
import { dayCount } from "../days.ts";
import { type Event, eventsAlone, stepEvents, tally } from "../events.ts";
import type { Taught } from "../observation.ts";
import type { Label, Question } from "../question.ts";

const DAY_MS = 86_400_000;

/** The day that an event counts under: when its step was first entered. */
const dayOf = ({ at = Number.POSITIVE_INFINITY }: Event): number => at / DAY_MS;

/** A step of the jobs that one of those who were taught led. Nobody named: everybody was. */
const ownEvents = ({ step, persons }: Taught, events: readonly Event[]): readonly Event[] =>
  events.filter(
    ({ job, step: of }) => of === step && (persons.length === 0 || (job.foreman !== undefined && persons.includes(job.foreman))),
  );

/** A step before and after somebody was taught it. */
export function beforeAndAfter(one: Taught, events: readonly Event[], alpha: number) {
  const { day } = one;
  const own = ownEvents(one, events);
  const line = dayCount(day);
  const before = tally(
    own.filter((event) => dayOf(event) < line),
    alpha,
  );
  // the day itself belongs to neither side
  const after = tally(
    own.filter((event) => dayOf(event) >= line + 1),
    alpha,
  );
  return { before, after, difference: differenceOfShares(before.share, after.share) };
}

interface TaughtMonths {
  readonly about: Label;
  readonly months: readonly Month[];
  /** Every time that the same people were taught this step: a line in the same picture. */
  readonly taught: readonly Taught[];
}

/** The months of each step that was taught, once for the same people. */
const monthsOf = (taughtOnes: readonly Taught[], events: readonly Event[]): readonly TaughtMonths[] =>
  [...grouped(taughtOnes, ({ step, persons }) => [step, ...[...persons].sort()].join("\n")).values()].flatMap((same) => {
    const [first] = same;
    return first === undefined ? [] : [{ about: label("step", first.step), months: rightByMonth(ownEvents(first, events)), taught: same }];
  });

/** What teaching changed: a step's share right before and after, with the interval of the difference. */
export const taught: Question = {
  id: "taught",
  reads: ["findings"],
  keeps: () => eventsAlone,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const events = stepEvents(jobs);
    const lines = observed.company.taught.map((one) => ({ one, ...beforeAndAfter(one, events, asking.alpha) }));
    const months = monthsOf(observed.company.taught, events);
    const enough = lines.filter(({ before, after }) => before.n >= LEAST_EVENTS && after.n >= LEAST_EVENTS);
    const compared = enough.map(
      ({ one, before, after }): Candidate => ({
        about: label("step", one.step),
        what: "before and after differ",
        p: fisherExact(before.right, before.n, after.right, after.n),
        says: message("taught.differ", { before: percent(before.share.value), after: percent(after.share.value) }),
      }),
    );
    const stands = standing(compared, asking.alpha);
    return answering("taught", jobs.length, asking, {
      ...(enough.length === 0 ? { tooFew: message("too-few.taught", { taught: lines.length, wanted: LEAST_EVENTS }) } : {}),
      ...stands,
      says: [
        ...(enough.length === 0 ? [] : [message(stands.signals.length > 0 ? "taught.changed" : "taught.same")]),
        message("taught.all", { taught: lines.length, judged: enough.length }),
      ],
      tables: [
        table(
          "taught",
          columns(
            "step label",
            "day day",
            "taught-people count",
            "before-n count",
            "before share",
            "after-n count",
            "after share",
            "difference share",
          ),
          lines.map(({ one, before, after, difference }) =>
            row(
              [
                labelCell(label("step", one.step)),
                cellOf(one.day),
                one.persons.length === 0 ? labelCell(label("word", "whole-crew")) : cellOf(one.persons.length),
                cellOf(before.n),
                withEnds(before.share),
                cellOf(after.n),
                withEnds(after.share),
                withEnds(difference),
              ],
              before.n < LEAST_EVENTS || after.n < LEAST_EVENTS ? "too few to tell" : undefined,
            ),
          ),
        ),
        table(
          "taught-months",
          columns("step label", "month label", "n count", "right count", "share share"),
          months.flatMap(({ about, months: all }) =>
            all.map(({ month, hits, n }) =>
              row([labelCell(about), labelCell(label("month", month)), cellOf(n), cellOf(hits), withEnds(wilson(hits, n, asking.alpha))]),
            ),
          ),
        ),
      ],
      pictures: [
        {
          draws: "intervals",
          id: "taught",
          table: "taught",
          axis: { kind: "share" },
          points: enough.map(({ one, difference }) => ({
            label: label("step", one.step),
            value: difference.value,
            low: difference.low,
            high: difference.high,
          })),
          against: 0,
          againstIs: "no change",
        },
        ...months.flatMap(({ about, months: all, taught: lineOf }) =>
          monthsDrawn(all, "p", { id: "taught-months", table: "taught-months", about }, lineOf),
        ),
      ],
    });
  },
};
