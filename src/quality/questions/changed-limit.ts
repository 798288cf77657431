import { message } from "../../job/index.ts";
import { exactShare } from "../../statistics/index.ts";
import {
  answering,
  cellOf,
  columns,
  fixedCell,
  jobsAsked,
  label,
  labelCell,
  percent,
  row,
  table,
  tooFewJobs,
  withEnds,
} from "../answering.ts";
import type { FindingObserved, JobObserved } from "../observation.ts";
import type { Asking, Question } from "../question.ts";

/** Confirmed callbacks under which nothing is said about what came back (own). */
const LEAST_CONFIRMED = 5;

type Limit = NonNullable<Asking["limit"]>;

const isBeyond = (value: number, { lower, upper }: Pick<Limit, "lower" | "upper">): boolean =>
  (upper !== undefined && value > upper) || (lower !== undefined && value < lower);

interface Judged {
  readonly job: JobObserved;
  readonly finding: FindingObserved;
  readonly now: boolean;
  readonly asked: boolean;
}

const judged = (jobs: readonly JobObserved[], limit: Limit): readonly Judged[] =>
  jobs.flatMap((job) =>
    job.findings
      .filter(({ check, firstValue }) => check === limit.check && firstValue !== undefined)
      .map((finding) => {
        const value = finding.firstValue ?? 0;
        return { job, finding, now: isBeyond(value, finding), asked: isBeyond(value, limit) };
      }),
  );

/** What another limit would have caught; what came back under it only with enough confirmed callbacks. */
export const changedLimit: Question = {
  id: "changed-limit",
  reads: ["findings", "callbacks"],
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const { limit } = asking;
    if (limit === undefined) return answering("changed-limit", jobs.length, asking, { says: [message("changed-limit.ask")] });
    const all = judged(jobs, limit);
    const [now, asked] = [all.filter((one) => one.now).length, all.filter((one) => one.asked).length];
    const more = all.filter((one) => one.asked && !one.now);
    const confirmed = all.filter(({ job }) => job.callbacks.some((callback) => callback.confirmed));
    const kind = all[0]?.finding.kind ?? "length";
    const back = (of: readonly Judged[]) => of.filter(({ job }) => job.callbacks.some((callback) => callback.confirmed)).length;
    const left = all.filter((one) => !one.asked && !one.now);
    const isEnough = confirmed.length >= LEAST_CONFIRMED;
    return answering("changed-limit", jobs.length, asking, {
      ...tooFewJobs(all.length),
      says: [
        message("changed-limit.would", {
          n: all.length,
          now,
          asked,
          more: more.length,
          share: percent(all.length === 0 ? 0 : asked / all.length),
        }),
        message(isEnough ? "changed-limit.back" : "changed-limit.back-too-few", { confirmed: confirmed.length, wanted: LEAST_CONFIRMED }),
      ],
      tables: [
        table("changed-limit", columns("which word", "lower fixed", "upper fixed", "n count", "caught count", "caught-share share"), [
          row([
            cellOf("limit-now"),
            fixedCell(all[0]?.finding.lower, kind),
            fixedCell(all[0]?.finding.upper, kind),
            cellOf(all.length),
            cellOf(now),
            withEnds(exactShare(now, all.length, asking.alpha)),
          ]),
          row([
            cellOf("limit-asked"),
            fixedCell(limit.lower, kind),
            fixedCell(limit.upper, kind),
            cellOf(all.length),
            cellOf(asked),
            withEnds(exactShare(asked, all.length, asking.alpha)),
          ]),
        ]),
        ...(isEnough
          ? [
              table("changed-limit-back", columns("which word", "n count", "back count", "back-share share"), [
                row([
                  cellOf("caught-more"),
                  cellOf(more.length),
                  cellOf(back(more)),
                  withEnds(exactShare(back(more), more.length, asking.alpha)),
                ]),
                row([
                  cellOf("caught-never"),
                  cellOf(left.length),
                  cellOf(back(left)),
                  withEnds(exactShare(back(left), left.length, asking.alpha)),
                ]),
              ]),
            ]
          : []),
        table(
          "changed-limit-jobs",
          columns("job label", "about label", "value fixed"),
          more.map(({ job, finding }) =>
            row([
              labelCell(label("job", job.job)),
              labelCell(label("check", finding.check, job.sheet)),
              fixedCell(finding.firstValue, kind),
            ]),
          ),
        ),
      ],
    });
  },
};
