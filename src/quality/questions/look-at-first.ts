import { message } from "../../job/index.ts";
import { answering, cellOf, columns, jobsAsked, label, labelCell, row, table } from "../answering.ts";
import type { FindingObserved, JobObserved } from "../observation.ts";
import type { Question } from "../question.ts";

/** As many as a list for the van holds. */
const LISTED = 20;

export interface Near {
  readonly job: JobObserved;
  readonly finding: FindingObserved;
  /** Room to the nearest limit in units of the value's own standard uncertainty: below zero it lies beyond. */
  readonly rooms: number;
  readonly why: "accepted outside" | "too close to call" | "near its limit";
}

/** Room at which the value with its doubt still lies inside by as much again (own). */
const NEAR = 4;

function nearOf(job: JobObserved, finding: FindingObserved): readonly Near[] {
  const { value, doubt, lower, upper, weight } = finding;
  if (value === undefined || weight !== "holds" || !doubt) return [];
  const room = Math.min((upper ?? Number.POSITIVE_INFINITY) - value, value - (lower ?? Number.NEGATIVE_INFINITY));
  const rooms = room / (doubt / 2);
  if (!Number.isFinite(rooms) || rooms > NEAR) return [];
  return [{ job, finding, rooms, why: rooms < -2 ? "accepted outside" : rooms < 2 ? "too close to call" : "near its limit" }];
}

/** What lies nearest to its limits in each installed job, the nearest job first. No model: distances, and nothing else. */
export const nearest = (jobs: readonly JobObserved[]): readonly (readonly [JobObserved, readonly Near[]])[] =>
  jobs
    .filter(({ installed }) => installed !== undefined)
    .map((job) => [job, job.findings.flatMap((finding) => nearOf(job, finding)).sort((a, b) => a.rooms - b.rooms)] as const)
    .filter(([, near]) => near.length > 0)
    .sort(([, a], [, b]) => (a[0]?.rooms ?? 0) - (b[0]?.rooms ?? 0));

/** Jobs to look at on the return visit, each with its reasons. */
export const lookAtFirst: Question = {
  id: "look-at-first",
  reads: ["findings", "callbacks"],
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const all = nearest(jobs);
    const listed = all.slice(0, LISTED);
    return answering("look-at-first", jobs.length, asking, {
      says: [message(listed.length > 0 ? "look-at-first.some" : "look-at-first.none", { jobs: all.length, listed: listed.length })],
      tables: [
        table(
          "look-at-first",
          columns("job label", "installed day", "about label", "why word", "rooms number", "callbacks count"),
          listed.flatMap(([job, near]) =>
            near
              .slice(0, 3)
              .map(({ finding, rooms, why }) =>
                row([
                  labelCell(label("job", job.job)),
                  cellOf(job.installed),
                  labelCell(label("check", finding.check, job.sheet)),
                  cellOf(why.replaceAll(" ", "-")),
                  cellOf(Math.round(rooms * 10) / 10),
                  cellOf(job.callbacks.length),
                ]),
              ),
          ),
        ),
      ],
    });
  },
};
