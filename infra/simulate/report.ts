import { next, order } from "./advice.ts";
import { HISTORY } from "./driven.ts";
import type { Waits } from "./fifo.ts";
import type { Reported } from "./reported.ts";
import { MOST_CREWS } from "./resources.ts";
import { until, whole } from "./said.ts";
import { stepNames } from "./step.ts";

const time = (ms: number): string => (ms < 1 ? `${ms.toFixed(2)} ms` : ms < 1000 ? `${ms.toFixed(0)} ms` : `${whole(ms / 1000)} s`);
const waits = ({ mean, p95, p99 }: Waits): readonly string[] => [mean, p95, p99].map(time);
const columns = (rows: readonly (readonly string[])[]): string => {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows
    .map((row) => `  ${row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join("  ")}`)
    .join("\n");
};

const driveTable = ({ outcome }: Reported): string =>
  columns([
    ["step", "of the day", "requests", "calls", "statements", "rows", "written", "kB read", "SQLite ms", "edge ms", "of databases"],
    ...stepNames.map((name) => {
      const one = outcome.counts[name];
      const figures = [
        one.requests,
        one.calls,
        one.statements,
        one.rows,
        one.written,
        one.characters / 1000,
        one.sqliteMs,
        one.processorMs,
      ];
      return [
        name,
        whole(outcome.day[name]),
        ...figures.map((value) => (value < 10 ? value.toFixed(1) : whole(value))),
        `${(100 * outcome.shares[name]).toFixed(1)} %`,
      ];
    }),
  ]);

const resourceTable = ({ outcome }: Reported): string =>
  columns([
    ["resource", "in use", "hour UTC", "mean wait", "95 of 100", "99 of 100", "may be", "passed from crews"],
    ...outcome.resources.map((one) => [
      one.name,
      `${whole(100 * one.use)} %`,
      String(((one.hour % 24) + 24) % 24),
      ...(one.use > 1 ? ["-", "-", "falls behind"] : waits(one.waits)),
      time(one.most),
      until(one.breaksAt),
    ]),
  ]);

const pastLines = ({ outcome, platform }: Reported): readonly string[] => {
  const monthly = (platform.day.crewsPerCompany * platform.day.workingDaysPerMonth) / platform.day.daysPerJob;
  return outcome.past.map(({ what, kind, limit, counted, jobs }) => {
    const most = `${kind}: ${counted < 10 ? counted.toFixed(1) : whole(counted)} of ${whole(limit)}`;
    const when =
      jobs === undefined ? "does not grow" : `passes it at ${whole(jobs)} jobs of one company, after ${whole(jobs / monthly)} months`;
    return `${what.padEnd(24)} ${most}; ${when}`;
  });
};

/** The whole outcome in plain words, what was measured apart from what was modelled. */
export function report(all: Reported): string {
  const { options, driven, outcome, platform, inputs } = all;
  const { costs } = outcome;
  const breaks = order(all);
  const [first] = breaks;
  const behind = outcome.resources.some(({ name, use }) => name === "time of a database" && use > 1);
  const answered = (behind ? [] : (["send entries", "look", "month's report"] as const)).flatMap((name) => {
    const one = outcome.answers[name];
    return one === undefined ? [] : [`${name}: mean ${time(one.mean)}, 99 of 100 within ${time(one.p99)}`];
  });
  const refusals = Object.entries(driven.refused).map(([kind, times]) => `  refused ${times} times: ${kind}`);
  const section = (title: string, lines: readonly string[]): string => [title, ...lines.map((line) => `  ${line}`)].join("\n");
  return [
    first === undefined
      ? `NOTHING BREAKS up to ${whole(MOST_CREWS)} crews.`
      : `BREAKS FIRST, at ${whole(first.crews)} crews: ${first.says}.`,
    section(
      "Then, each as if all before it had been put right",
      breaks.slice(1).map(({ crews, says }) => `at ${whole(crews)} crews: ${says}`),
    ),
    section("What to do", next(all)),
    section(`Cost at ${whole(costs.crews)} crews (infra/deploy/costs.ts with what was counted; month ${outcome.months} of running)`, [
      `a working day ${(costs.sum / platform.day.workingDaysPerMonth).toFixed(2)} ${inputs.currency}, a month ${whole(costs.sum)}, a crew's month ${costs.perCrew.toFixed(2)}`,
      `of a month: worker ${whole(costs.worker)}, database ${whole(costs.database)}, queue ${whole(costs.queue)}, store ${whole(costs.store)}, containers ${whole(costs.containers)}`,
      inputs.note,
    ]),
    section(
      `MEASURED: ${whole(driven.crewDays)} crew-days and ${whole(driven.requests)} requests through the deployed worker over SQLite, in this process`,
      [
        `two companies, one with ${HISTORY} finished jobs copied in behind it; no request refused: ${refusals.length === 0 ? "true" : "NO"}`,
        ...refusals,
        `a job: ${driven.perJob.entries} entries, ${driven.perJob.photos} pictures in its script, ${whole(driven.bytesPerJob / 1000)} kB in the database`,
        `means of each step, what grows taken to ${whole(outcome.jobs)} jobs of a company (${outcome.months} months):`,
      ],
    ),
    driveTable(all),
    section("One request and the platform's limits, the kind that comes first (measured, taken on by its line)", pastLines(all)),
    section(
      `MODELLED: ${whole(outcome.crews)} crews, ${options.shards} database${options.shards === 1 ? "" : "s"}, ${options.media} media, ${options.print} print; the busiest hour of ${options.days === 1 ? "the day" : `${options.days} days`}`,
      [],
    ),
    resourceTable(all),
    section("Besides", [
      ...answered,
      `photos for the queue: ${outcome.queuePerSecond} in the busiest second, of ${whole(platform.limits.queuePerSecond)}`,
      `databases grow by ${outcome.gigabytesADay.toFixed(2)} GB a working day`,
      `guessed, and worth measuring first: ${platform.day.screenMinutes} min a day with the page open (a look every ${platform.day.lookSeconds} s), ${inputs.assumptions.photosPerJob} photos and ${inputs.assumptions.recordsPerJob} records a job, ${inputs.assumptions.mediaSecondsPerPhoto} s of media a photo, ${inputs.assumptions.printSecondsPerRecord} s of print a record`,
      "every limit, time and guess with its source: infra/simulate/platform.json; prices: infra/deploy/prices.json",
    ]),
  ].join("\n\n");
}
