import { message } from "../../job/index.ts";
import { fisherExact, wilson } from "../../statistics/index.ts";
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
  tooFewJobs,
  withEnds,
} from "../answering.ts";
import { type Month, monthsDrawn, rightByMonth } from "../by-month.ts";
import { coveringEvents, type Event, eventsAlone, stepEvents, type Tally, tally } from "../events.ts";
import type { Label, Question } from "../question.ts";

interface Line {
  readonly about: Label;
  readonly tally: Tally;
}

const lines = (events: readonly Event[], of: "step" | "covering", alpha: number): readonly Line[] =>
  [...grouped(events, (event) => `${event.job.sheet}\n${event[of] ?? ""}`)].map(([key, own]) => {
    const [sheet, id = ""] = key.split("\n");
    return { about: label(of, id, sheet), tally: tally(own, alpha) };
  });

/** Each group against all the others together: does it go wrong more often than they do? */
function worseThanRest(all: readonly Line[]): readonly Candidate[] {
  const compared = all.filter(({ tally: { n } }) => n >= LEAST_EVENTS);
  const [right, n] = [compared.reduce((s, l) => s + l.tally.right, 0), compared.reduce((s, l) => s + l.tally.n, 0)];
  if (compared.length < 2) return [];
  return compared.map(({ about, tally: own }) => {
    const [rest, restOf] = [right - own.right, n - own.n];
    return {
      about,
      what: "step goes wrong more often",
      p: fisherExact(own.right, own.n, rest, restOf),
      quiet: own.right / own.n >= rest / Math.max(1, restOf),
      says: message("first-time-right.worse", { share: percent(own.right / own.n), others: percent(rest / Math.max(1, restOf)), n: own.n }),
    };
  });
}

const heads = columns(
  "about label",
  "asked count",
  "right count",
  "not-right count",
  "too-close count",
  "not-entered count",
  "share share",
);

const tableOf = (id: string, all: readonly Line[]) =>
  table(
    id,
    heads,
    [...all]
      .sort((a, b) => a.tally.share.value - b.tally.share.value)
      .map(({ about, tally: { asked, right, notRight, tooClose, notEntered, n, share } }) =>
        row(
          [labelCell(about), ...[asked, right, notRight, tooClose, notEntered].map(cellOf), withEnds(share)],
          n < LEAST_EVENTS ? "too few to tell" : undefined,
        ),
      ),
  );

const monthsTable = (all: readonly Month[], alpha: number) =>
  table(
    "first-time-right-months",
    columns("month label", "n count", "right count", "share share"),
    all.map(({ month, hits, n }) => row([labelCell(label("month", month)), cellOf(n), cellOf(hits), withEnds(wilson(hits, n, alpha))])),
  );

/** Right the first time, by step, by covering and by month. */
export const firstTimeRight: Question = {
  id: "first-time-right",
  reads: ["coverings", "findings"],
  keeps: () => eventsAlone,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const events = stepEvents(jobs);
    const all = tally(events, asking.alpha);
    const steps = lines(events, "step", asking.alpha);
    const coverings = lines(coveringEvents(jobs), "covering", asking.alpha);
    const stands = standing(worseThanRest(steps), asking.alpha);
    const byMonth = rightByMonth(events);
    const drawn = [...steps].filter(({ tally: { n } }) => n > 0).sort((a, b) => a.tally.share.value - b.tally.share.value);
    return answering("first-time-right", jobs.length, asking, {
      ...tooFewJobs(jobs.length),
      ...stands,
      says: [
        message("first-time-right.all", { right: all.right, n: all.n, share: percent(all.share.value || 0) }),
        message(stands.signals.length > 0 ? "first-time-right.which" : "first-time-right.none", { steps: steps.length }),
      ],
      counted: [message("first-time-right.counted", { asked: all.asked, tooClose: all.tooClose, notEntered: all.notEntered })],
      tables: [
        tableOf("first-time-right-steps", steps),
        tableOf("first-time-right-coverings", coverings),
        monthsTable(byMonth, asking.alpha),
      ],
      pictures: [
        {
          draws: "intervals",
          id: "first-time-right-steps",
          table: "first-time-right-steps",
          axis: { kind: "share" },
          points: drawn.map(({ about, tally: { share } }) => ({ label: about, value: share.value, low: share.low, high: share.high })),
          ...(all.n > 0 ? { against: all.share.value } : {}),
        },
        ...monthsDrawn(byMonth, "p", { id: "first-time-right-months", table: "first-time-right-months" }, observed.company.taught),
      ],
    });
  },
};
