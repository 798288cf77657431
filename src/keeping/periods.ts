import type { CalendarDay } from "../units/index.ts";
import { isAfter, lastDayOfCover } from "../warranty/index.ts";

/**
 * Kinds of things that a company keeps for a time of its own. Names: names and contacts; places: positions; pictures: photos and papers;
 * records: the issued PDFs with what lies beside them; entries: everything else that was entered.
 */
export const keptKinds = ["names", "places", "pictures", "records", "entries"] as const;
export type KeptKind = (typeof keptKinds)[number];

/** Whole months; absent: kept for good. */
export type Periods = { readonly [Kind in KeptKind]?: number };

/** Own: twenty years for what is about people and their homes; what was built is kept for good. A company sets its own. */
export const usualPeriods: Periods = { names: 240, places: 240, pictures: 240 };

/** Days between the setting of a period and the first thing that goes by it: nobody loses anything by a slip of the hand. Own. */
export const NOTICE_DAYS = 30;

/** A job as keeping sees it. */
export interface KeptJob {
  readonly job: string;
  /** The day of the last thing that somebody entered. */
  readonly lastEntered: CalendarDay;
  /** The last day of its covers, where any has a start. */
  readonly coveredUntil?: CalendarDay;
  /** Callbacks that are open: nothing of the site goes meanwhile. */
  readonly openCallbacks: number;
}

/** The jobs of one site: they are kept together, as long as the one that is kept longest. */
export interface KeptSite {
  /** Absent: a job without a site, which is kept for itself. */
  readonly site?: string;
  readonly jobs: readonly KeptJob[];
}

export interface Ending {
  readonly kind: KeptKind;
  /** The last day on which it is kept. */
  readonly until: CalendarDay;
}

export interface SiteKeeping extends KeptSite {
  /** The day from which the periods run: the last entry or the last day of the last cover, whichever is later. */
  readonly from: CalendarDay;
  /** The next to end first. Empty: everything is kept for good. */
  readonly endings: readonly Ending[];
  /** Open callbacks: what has ended waits for them. */
  readonly waits: boolean;
}

const latest = (days: readonly CalendarDay[]): CalendarDay => days.reduce((last, day) => (isAfter(day, last) ? day : last));

/**
 * Until when each kind of thing of a site is kept. Each period runs from the last entry or the end of the last cover of any of its jobs;
 * a period ends on the day of the same number, else on the month's last, as covers do. `notBefore`: the last day of the notice of the periods
 * that are in force.
 */
export function keepingOf(site: KeptSite, periods: Periods, notBefore: CalendarDay): SiteKeeping {
  const days = site.jobs.flatMap(({ lastEntered, coveredUntil }) =>
    coveredUntil === undefined ? [lastEntered] : [lastEntered, coveredUntil],
  );
  const from = latest(days);
  const endings = keptKinds.flatMap((kind): readonly Ending[] => {
    const months = periods[kind];
    return months === undefined ? [] : [{ kind, until: latest([lastDayOfCover(from, months), notBefore]) }];
  });
  const sorted = endings.sort((a, b) => (isAfter(a.until, b.until) ? 1 : isAfter(b.until, a.until) ? -1 : 0));
  return { ...site, from, endings: sorted, waits: site.jobs.some(({ openCallbacks }) => openCallbacks > 0) };
}

/** The kinds whose period has ended before a day. None while a callback is open. */
export const endedBy = ({ endings, waits }: SiteKeeping, today: CalendarDay): readonly KeptKind[] =>
  waits ? [] : endings.flatMap(({ kind, until }) => (isAfter(today, until) ? [kind] : []));
