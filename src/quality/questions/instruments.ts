import { message } from "../../job/index.ts";
import { answering, cellOf, columns, fixedCell, grouped, jobsAsked, label, labelCell, row, table } from "../answering.ts";
import type { CompanyObserved, InstrumentCheck, JobObserved, ReadingObserved } from "../observation.ts";
import type { Question, Signal } from "../question.ts";

const isGood = ({ off, allowed }: InstrumentCheck): boolean => Math.abs(off) <= allowed;

/** Readings in doubt: taken with an instrument after its last good check and up to the bad one. */
export interface InDoubt {
  readonly instrument: string;
  readonly bad: InstrumentCheck;
  /** Of the last good check; absent: there was none. */
  readonly since?: number;
  readonly readings: readonly { readonly job: JobObserved; readonly reading: ReadingObserved }[];
}

/** What a bad check puts in doubt: everything read with the instrument since the check before it. */
interface Doubted {
  readonly bad: InstrumentCheck;
  readonly since?: number;
}

const doubted = (checks: readonly InstrumentCheck[]): readonly Doubted[] =>
  [...grouped(checks, ({ instrument }) => instrument).values()].flatMap((own) => {
    const ordered = [...own].sort((a, b) => a.at - b.at);
    return ordered.flatMap((bad, i): readonly Doubted[] => {
      // a second bad one in a row adds what came between the two, and no more
      const before = i === 0 ? undefined : ordered[i - 1];
      if (isGood(bad)) return [];
      return [before === undefined ? { bad } : { bad, since: before.at }];
    });
  });

const isDoubtedBy =
  ({ bad, since = Number.NEGATIVE_INFINITY }: Doubted) =>
  ({ instrument, at }: ReadingObserved): boolean =>
    instrument === bad.instrument && at <= bad.at && at > since;

/** Every bad check that no good one came before, and what it puts in doubt. */
export const inDoubt = (checks: readonly InstrumentCheck[], jobs: readonly JobObserved[]): readonly InDoubt[] =>
  doubted(checks).map((one) => {
    const readings = jobs.flatMap((job) => job.readings.filter(isDoubtedBy(one)).map((reading) => ({ job, reading })));
    return { instrument: one.bad.instrument, ...one, readings };
  });

/** Of a job's readings, those that some check puts in doubt. */
const onlyDoubted = ({ instrumentChecks }: CompanyObserved) => {
  const isDoubted = doubted(instrumentChecks).map(isDoubtedBy);
  return (job: JobObserved): JobObserved => ({ ...job, readings: job.readings.filter((reading) => isDoubted.some((is) => is(reading))) });
};

/** The register: each check of an instrument, and what a bad one puts in doubt. */
export const instruments: Question = {
  id: "instruments",
  reads: ["readings"],
  keeps: onlyDoubted,
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const checks = observed.company.instrumentChecks;
    const doubtful = inDoubt(checks, jobs);
    const jobsOf = ({ readings }: InDoubt): number => new Set(readings.map(({ job }) => job.job)).size;
    const signals = doubtful.map(
      (one): Signal => ({
        about: label("instrument", one.instrument),
        what: "instrument off",
        p: 0,
        says: message("instruments.off", { readings: one.readings.length, jobs: jobsOf(one) }),
      }),
    );
    return answering("instruments", jobs.length, asking, {
      ...(checks.length === 0 ? { tooFew: message("too-few.checks") } : {}),
      signals,
      says: [message(doubtful.length > 0 ? "instruments.some" : "instruments.none", { checks: checks.length, bad: doubtful.length })],
      tables: [
        table(
          "instrument-checks",
          columns("instrument label", "at day", "person label", "way word", "off fixed", "allowed fixed", "distance fixed"),
          [...checks]
            .sort((a, b) => b.at - a.at)
            .map((check) =>
              row(
                [
                  labelCell(label("instrument", check.instrument)),
                  cellOf(new Date(check.at).toISOString().slice(0, 10)),
                  labelCell(label("person", check.person)),
                  cellOf(`way-${check.way.replaceAll(" ", "-")}`),
                  ...[check.off, check.allowed, check.distance].map((value) => fixedCell(value, "length")),
                ],
                isGood(check) ? undefined : "stands out",
              ),
            ),
        ),
        table(
          "readings-in-doubt",
          columns("instrument label", "job label", "item label", "typed label", "at day"),
          doubtful.flatMap(({ instrument, readings }) =>
            readings.map(({ job, reading }) =>
              row([
                labelCell(label("instrument", instrument)),
                labelCell(label("job", job.job)),
                labelCell(label("item", reading.item, job.sheet)),
                cellOf(reading.typed),
                cellOf(new Date(reading.at).toISOString().slice(0, 10)),
              ]),
            ),
          ),
        ),
      ],
    });
  },
};
