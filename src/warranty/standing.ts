import type { CalendarDay } from "../units/index.ts";
import type { Cover } from "./covers.ts";
import { isAfter } from "./days.ts";
import type { ServiceDue } from "./services.ts";

/** How a cover stands on a day. What a missed condition means is for the company's terms: here it is only said. */
export interface CoverStanding {
  readonly is: "kept, no cover" | "start not known" | "not begun" | "runs" | "over";
  /** To be registered by its day, or that day has passed without an entry. */
  readonly registration?: "to do" | "late" | "done" | "done late";
  /** Occasions whose last day has passed without an entry. */
  readonly missed: readonly ServiceDue[];
  /** The next occasion that still counts and is not done. */
  readonly next?: ServiceDue;
}

function registrationOn({ registration }: Cover, today: CalendarDay): CoverStanding["registration"] {
  if (registration === undefined) return undefined;
  const { by, done } = registration;
  if (done !== undefined) return isAfter(done.day, by) ? "done late" : "done";
  return isAfter(today, by) ? "late" : "to do";
}

function coverIs({ kept, start, end }: Cover, today: CalendarDay): CoverStanding["is"] {
  if (kept !== undefined) return "kept, no cover";
  if (start === undefined || end === undefined) return "start not known";
  if (isAfter(start.day, today)) return "not begun";
  return isAfter(today, end) ? "over" : "runs";
}

/** How a cover stands on a day where the site is. */
export function standingOn(cover: Cover, today: CalendarDay): CoverStanding {
  const open = cover.services.filter(({ done }) => done === undefined);
  const next = open.find(({ until }) => !isAfter(today, until));
  const registration = registrationOn(cover, today);
  return {
    is: coverIs(cover, today),
    ...(registration === undefined ? {} : { registration }),
    missed: open.filter(({ until }) => isAfter(today, until)),
    ...(next === undefined ? {} : { next }),
  };
}
