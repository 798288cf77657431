import { message } from "../../job/index.ts";
import { differenceOfShares, fisherExact } from "../../statistics/index.ts";
import {
  answering,
  type Candidate,
  cellOf,
  columns,
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
import { dayCount } from "../days.ts";
import { type Event, stepEvents, tally } from "../events.ts";
import type { Taught } from "../observation.ts";
import type { Question } from "../question.ts";

const DAY_MS = 86_400_000;

/** The day that an event counts under: when its step was first entered. */
const dayOf = ({ job, step }: Event): number =>
  Math.min(...job.findings.filter((finding) => finding.step === step).map(({ at }) => at ?? Number.POSITIVE_INFINITY)) / DAY_MS;

/** A step before and after somebody was taught it: jobs that one of those who were taught led. Nobody named: everybody was. */
export function beforeAndAfter({ day, step, persons }: Taught, events: readonly Event[], alpha: number) {
  const own = events.filter(
    ({ job, step: of }) => of === step && (persons.length === 0 || (job.foreman !== undefined && persons.includes(job.foreman))),
  );
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

/** What teaching changed: a step's share right before and after, with the interval of the difference. */
export const taught: Question = {
  id: "taught",
  reads: ["findings"],
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const events = stepEvents(jobs);
    const lines = observed.company.taught.map((one) => ({ one, ...beforeAndAfter(one, events, asking.alpha) }));
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
      says: [message("taught.all", { taught: lines.length, judged: enough.length })],
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
                cellOf(one.persons.length),
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
        },
      ],
    });
  },
};
