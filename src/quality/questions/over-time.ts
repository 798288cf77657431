import { message } from "../../job/index.ts";
import { beyondLimits, individuals, runsOnOneSide, trend } from "../../statistics/index.ts";
import {
  answering,
  type Candidate,
  cellOf,
  columns,
  fixedCell,
  jobsAsked,
  LEAST_JOBS,
  label,
  labelCell,
  row,
  standing,
  sumOf,
  table,
} from "../answering.ts";
import { capable, isTold } from "../capable.ts";
import { type Deviation, deviationsByInstrument, deviationsOf } from "../deviations.ts";
import type { CompanyObserved, JobObserved } from "../observation.ts";
import type { ControlPicture, Label, Observed, Question } from "../question.ts";
import { studyFound } from "../study.ts";

/** The run rule: so many in a row on one side of the centre (Nelson's second; the older rule has eight). */
const RUN = 9;
/** Chance of a point beyond three sigma, and of one that ends a run of nine, where nothing is. */
const [FALSE_BEYOND, FALSE_RUN] = [0.0026998, 2 * 0.5 ** RUN];
const YEAR_MS = 365.25 * 86_400_000;
/** Fewer jobs than this, and one that went wrong early or late makes a drift of its own: none is told (own). */
const LEAST_FOR_DRIFT = 20;

interface Charted {
  readonly about: Label;
  readonly points: readonly Deviation[];
  readonly picture: ControlPicture;
  readonly breaks: number;
  readonly falseExpected: number;
  readonly drift: ReturnType<typeof trend>;
}

function charted(instrument: string, points: readonly Deviation[], { company }: Observed): Charted | undefined {
  const values = points.map(({ value }) => value);
  const limits = individuals(values);
  if (points.length < LEAST_JOBS || limits === undefined) return undefined;
  const about = label("instrument", instrument);
  const beyond = new Set(beyondLimits(values, [limits]));
  const runs = new Set(runsOnOneSide(values, limits.centre, RUN));
  const { centre, lower, upper } = limits;
  const marks = company.instrumentChecks
    .filter((check) => check.instrument === instrument)
    .map(({ at }) => ({ at, says: message("over-time.checked") }));
  return {
    about,
    points,
    breaks: new Set([...beyond, ...runs]).size,
    falseExpected: values.length * FALSE_BEYOND + Math.max(0, values.length - RUN + 1) * FALSE_RUN,
    drift: trend(points.map(({ at, value }) => ({ x: at / YEAR_MS, y: value }))),
    picture: {
      draws: "control chart",
      chart: "individuals",
      id: "over-time",
      table: "over-time",
      about,
      axis: { kind: "fixed", quantity: "length" },
      marks,
      points: points.map(({ job, at, value }, i) => ({
        x: i + 1,
        label: label("job", job.job),
        at,
        value,
        centre,
        lower,
        upper,
        ...(beyond.has(i) ? { breaks: "beyond the limits" as const } : runs.has(i) ? { breaks: "run on one side" as const } : {}),
      })),
    },
  };
}

function drifts({ about, drift, points }: Charted): readonly Candidate[] {
  if (drift === undefined || points.length < LEAST_FOR_DRIFT) return [];
  return [{ about, what: "instrument drifts", p: drift.p, says: message("over-time.drifts", { slope: Math.round(drift.slope) }) }];
}

const studiedIn = ({ studies }: CompanyObserved): ReadonlySet<string> =>
  new Set(studies.filter((study) => studyFound(study) !== undefined).map(({ instrument }) => instrument));

/** Of a job's findings, what they deviate by and those whose spread is told of. */
const deviationsAlone = (company: CompanyObserved) => {
  const isToldOf = isTold(studiedIn(company));
  return (job: JobObserved): JobObserved => ({
    ...job,
    deviations: deviationsOf(job.findings),
    findings: job.findings.filter(isToldOf),
  });
};

/** Deviations from the design by instrument, in order of time; two rules, and how many false alarms they make by themselves. */
export const overTime: Question = {
  id: "over-time",
  reads: ["findings"],
  keeps: deviationsAlone,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const all = [...deviationsByInstrument(jobs)];
    const charts = all.flatMap(([instrument, points]) => charted(instrument, points, observed) ?? []);
    const stands = standing(charts.flatMap(drifts), asking.alpha);
    const studied = studiedIn(observed.company);
    const expected = Math.round(sumOf(charts, ({ falseExpected }) => falseExpected) * 10) / 10;
    return answering("over-time", jobs.length, asking, {
      ...(charts.length === 0 ? { tooFew: message("too-few.points", { wanted: LEAST_JOBS }) } : {}),
      ...stands,
      says: [
        message("over-time.breaks", { breaks: sumOf(charts, ({ breaks }) => breaks), expected, run: RUN }),
        message(studied.size > 0 ? "over-time.capability" : "over-time.no-study"),
      ],
      tables: [
        table(
          "over-time",
          columns(
            "instrument label",
            "jobs count",
            "centre fixed",
            "lower fixed",
            "upper fixed",
            "breaks count",
            "false-expected number",
            "drift fixed",
            "chance probability",
          ),
          charts.map(({ about, points, picture, breaks, falseExpected, drift }) =>
            row(
              [
                labelCell(about),
                cellOf(points.length),
                ...[picture.points[0]?.centre, picture.points[0]?.lower, picture.points[0]?.upper].map((value) =>
                  fixedCell(value, "length"),
                ),
                cellOf(breaks),
                cellOf(Math.round(falseExpected * 10) / 10),
                fixedCell(drift?.slope, "length"),
                cellOf(drift?.p),
              ],
              points.length < LEAST_FOR_DRIFT ? "too few to tell" : undefined,
            ),
          ),
        ),
        table("capability", columns("about label", "n count", "cp number", "cpk number"), capable(jobs, studied, asking.alpha)),
      ],
      pictures: charts.map(({ picture }) => picture),
    });
  },
};
