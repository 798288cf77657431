import { message } from "../../job/index.ts";
import { answering, cellOf, columns, fixedCell, grouped, jobsAsked, label, labelCell, row, table } from "../answering.ts";
import type { InstrumentCheck, JobObserved, ReadingObserved } from "../observation.ts";
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

/** Every bad check that no good one came before, and what it puts in doubt. */
export function inDoubt(checks: readonly InstrumentCheck[], jobs: readonly JobObserved[]): readonly InDoubt[] {
  return [...grouped(checks, ({ instrument }) => instrument)].flatMap(([instrument, own]) => {
    const ordered = [...own].sort((a, b) => a.at - b.at);
    return ordered.flatMap((bad, i): readonly InDoubt[] => {
      // a second bad one in a row adds what came between the two, and no more
      const before = ordered.slice(0, i).at(-1);
      if (isGood(bad)) return [];
      const since = before?.at;
      const readings = jobs.flatMap((job) =>
        job.readings
          .filter(
            (reading) => reading.instrument === instrument && reading.at <= bad.at && reading.at > (since ?? Number.NEGATIVE_INFINITY),
          )
          .map((reading) => ({ job, reading })),
      );
      return [{ instrument, bad, readings, ...(since === undefined ? {} : { since }) }];
    });
  });
}

/** The register: each check of an instrument, and what a bad one puts in doubt. */
export const instruments: Question = {
  id: "instruments",
  reads: ["readings"],
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
