import { calendarDay, dayNumber, typedDay, zonedText } from "../units/index.ts";
import type { CompanyObserved, JobObserved } from "./observation.ts";

/** The instant, milliseconds, at which a day ends in a zone; NaN of what is no day. */
function endOf(day: string, zone: string): number {
  const read = typedDay(day);
  if (read === undefined) return Number.NaN;
  return Date.parse(zonedText({ ...calendarDay(dayNumber(read) + 1), hour: 0, minute: 0 }, zone));
}

/** Rows of a job, and what the company keeps itself, as far as a day that is past. */
export interface UpTo {
  /** Nothing where the job was opened later. */
  readonly job: (job: JobObserved) => JobObserved | undefined;
  readonly company: (company: CompanyObserved) => CompanyObserved;
}

/**
 * Leaves out whatever carries a time of its own after a day, 'YYYY-MM-DD', in the company's zone. A finding stays as it is now: its
 * verdict goes by all of its entries, later ones among them, which whoever shows it has to say.
 */
export function upTo(day: string, zone: string): UpTo {
  const end = endOf(day, zone);
  const earlier = <T extends { readonly at: number }>(list: readonly T[]): readonly T[] => list.filter(({ at }) => at < end);
  return {
    job: (job) =>
      job.opened >= end
        ? undefined
        : {
            ...job,
            readings: earlier(job.readings),
            pictures: earlier(job.pictures),
            reworks: earlier(job.reworks),
            callbacks: job.callbacks.filter((one) => one.day <= day),
            coverings: job.coverings.map((one) => ((one.at ?? 0) < end ? one : { covering: one.covering, openedAgain: false })),
          },
    company: (company) => ({
      ...company,
      taught: company.taught.filter((one) => one.day <= day),
      studies: company.studies.filter((one) => one.day <= day),
      instrumentChecks: earlier(company.instrumentChecks),
    }),
  };
}
