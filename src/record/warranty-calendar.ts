import {
  calendarFile,
  coversOf,
  dayAt,
  daysBetween,
  daysLater,
  type WarrantyClocks,
  type WarrantyTerms,
  warrantyPlan,
} from "../warranty/index.ts";
import { makeWarrantySayer } from "./say-warranty.ts";

export interface WarrantyCalendarInput {
  /** The job's id: it names the events, so that a file made again changes them. */
  readonly job: string;
  readonly title: string;
  readonly clocks: WarrantyClocks;
  readonly terms: WarrantyTerms;
  /** When it is made, milliseconds. */
  readonly stamp: number;
}

/** The calendar file of a job, in the job's language: return visit, winter, spring and yearly service, parts to register, last days. */
export function warrantyCalendar({ job, title, clocks, terms, stamp }: WarrantyCalendarInput): string {
  const say = makeWarrantySayer(clocks.language);
  const plan = warrantyPlan(clocks, terms, coversOf(clocks, terms), dayAt(stamp, clocks.zone));
  const uid = (...parts: readonly (string | number)[]): string => `${[job, ...parts].join("-").replaceAll(" ", "-")}@asburied.invalid`;
  return calendarFile({
    name: say.text("calendar-name", { job: title }),
    stamp,
    events: [
      ...plan.services.map(({ kind, day, until }) => ({
        uid: kind === "return visit" ? uid(kind) : uid(kind, day.year),
        day,
        summary: say.text("calendar-service", { service: say.serviceName(kind), job: title }),
        description: say.text("calendar-counts", { from: say.day(daysLater(day, -daysBetween(day, until))), until: say.day(until) }),
      })),
      ...plan.registrations.map(({ part, place, by, with: whom }) => ({
        uid: uid("register", place),
        day: by,
        summary: say.text("calendar-register", { part, whom, job: title }),
        description: say.text("calendar-terms"),
      })),
      ...plan.ends.map(({ part, place, day }) => ({
        uid: uid("ends", place),
        day,
        summary: say.text("calendar-ends", { part, job: title }),
        description: say.text("calendar-terms"),
      })),
    ],
  });
}
