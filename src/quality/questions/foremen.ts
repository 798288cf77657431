import { message } from "../../job/index.ts";
import { betaPrior, binomialAtLeast, binomialAtMost, fisherExact, shrunk } from "../../statistics/index.ts";
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
import { coveringEvents, type Event, eventsAlone, type Tally, tally } from "../events.ts";
import type { Question, Table } from "../question.ts";

interface Foreman {
  readonly person: string;
  readonly events: readonly Event[];
  readonly tally: Tally;
}

/** Fewer foremen with enough coverings than this and none is compared (own). */
const LEAST_FOREMEN = 3;

/** One foreman against all the others. Coverings of one job go together: chance is worked out from jobs, each right or not as a whole. */
function compared(all: readonly Foreman[]): readonly Candidate[] {
  const jobs = (events: readonly Event[]) => {
    const byJob = [...grouped(events, ({ job }) => job.job).values()].map((own) =>
      own.filter(({ state }) => state !== "too close to call"),
    );
    const counted = byJob.filter((own) => own.length > 0);
    return { n: counted.length, right: counted.filter((own) => own.every(({ state }) => state === "right")).length };
  };
  const each = all.map((one) => ({ ...one, jobs: jobs(one.events) }));
  const [n, right] = [each.reduce((s, one) => s + one.jobs.n, 0), each.reduce((s, one) => s + one.jobs.right, 0)];
  return each.map(({ person, jobs: own }) => {
    const rest = { n: n - own.n, right: right - own.right };
    return {
      about: label("person", person),
      what: "foreman goes wrong more often",
      p: fisherExact(own.right, own.n, rest.right, rest.n),
      quiet: own.right / Math.max(1, own.n) >= rest.right / Math.max(1, rest.n),
      says: message("foremen.worse", {
        share: percent(own.right / Math.max(1, own.n)),
        others: percent(rest.right / Math.max(1, rest.n)),
        n: own.n,
      }),
    };
  });
}

/** Days on which a foreman's crew was another than on the job before. */
function crewChanges({ person, events }: Foreman) {
  const jobs = [...new Set(events.map(({ job }) => job))].sort((a, b) => a.opened - b.opened);
  return jobs.flatMap((job, i) => {
    const before = jobs[i - 1];
    const [now, then] = [[...job.crew].sort().join(" "), [...(before?.crew ?? [])].sort().join(" ")];
    return before === undefined || now === then
      ? []
      : [row([labelCell(label("person", person)), cellOf(job.installed ?? job.until), labelCell(label("crew", now))])];
  });
}

/** Foremen compared fairly: too few first, shrunk towards all, with intervals; and named only where the owner has said so. */
export const foremen: Question = {
  id: "foremen",
  reads: ["coverings", "findings"],
  keeps: () => eventsAlone,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const events = coveringEvents(jobs);
    const all = [...grouped(events, ({ job }) => job.foreman)].map(
      ([person, own]): Foreman => ({ person, events: own, tally: tally(own, asking.alpha) }),
    );
    const enough = all.filter(({ tally: { n } }) => n >= LEAST_EVENTS);
    const tooFew =
      enough.length < LEAST_FOREMEN ? { tooFew: message("too-few.foremen", { foremen: enough.length, wanted: LEAST_FOREMEN }) } : {};
    const prior = betaPrior(enough.map(({ tally: { right, n } }) => ({ hits: right, n })));
    const counted = [message("foremen.counted", { foremen: all.length, coverings: events.length })];
    if (!asking.persons) return answering("foremen", jobs.length, asking, { ...tooFew, counted, says: [message("foremen.off")] });
    const stands = standing(enough.length < LEAST_FOREMEN ? [] : compared(enough), asking.alpha);
    const ranked = [...enough].sort((a, b) => a.tally.share.value - b.tally.share.value);
    const centre = tally(events, asking.alpha);
    const overall = centre.share.value || 0;
    const sizes = [...new Set(enough.map(({ tally: { n } }) => n))].sort((a, b) => a - b);
    const few = (one: Foreman) => one.tally.n < LEAST_EVENTS;
    const tables: readonly Table[] = [
      table(
        "foremen",
        columns("person label", "coverings count", "right count", "share share", "shrunk share"),
        [...ranked, ...all.filter(few)].map((one) =>
          row(
            [
              labelCell(label("person", one.person)),
              cellOf(one.tally.n),
              cellOf(one.tally.right),
              withEnds(one.tally.share),
              prior === undefined ? {} : withEnds(shrunk(prior, { hits: one.tally.right, n: one.tally.n }, asking.alpha)),
            ],
            few(one) ? "too few to tell" : undefined,
          ),
        ),
      ),
      table("crew-changes", columns("person label", "from-day day", "crew label"), all.flatMap(crewChanges)),
    ];
    return answering("foremen", jobs.length, asking, {
      ...tooFew,
      ...stands,
      counted,
      says: [message(stands.signals.length > 0 ? "foremen.some" : "foremen.none", { foremen: enough.length })],
      tables,
      pictures: [
        {
          draws: "funnel",
          id: "foremen",
          table: "foremen",
          axis: { kind: "share" },
          centre: overall,
          points: enough.map(({ person, tally: { n, share } }) => ({ label: label("person", person), n, share: share.value })),
          limits: sizes.map((n) => {
            const beyond = asking.alpha / Math.max(1, enough.length) / 2;
            const counts = Array.from({ length: n + 1 }, (_, right) => right);
            const lower = counts.find((right) => binomialAtMost(right, n, overall) > beyond) ?? 0;
            const upper = counts.findLast((right) => binomialAtLeast(right, n, overall) > beyond) ?? n;
            return { n, lower: lower / n, upper: upper / n };
          }),
        },
      ],
    });
  },
};
