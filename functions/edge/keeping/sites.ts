import { coveredUntil, type KeptSite, keepingOf, NOTICE_DAYS, type Periods, type SiteKeeping, usualPeriods } from "#core/keeping/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { CalendarDay } from "#core/units/index.ts";
import { coversOf, dayAt, daysLater, isAfter, readTerms } from "#core/warranty/index.ts";
import { settings } from "#core/wire/index.ts";
import { companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";
import { afterWorkOfAll } from "../warranties/after-work.ts";
import { termsSaid } from "../warranties/terms.ts";

/** A site with the titles of its jobs, as it is kept. */
export interface Kept extends SiteKeeping {
  readonly address?: string;
  readonly titles: ReadonlyMap<string, string>;
}

function periodsIn(content: Json | undefined): Periods | undefined {
  const read = settings.safeParse(content);
  return read.success ? (read.data.periods as Periods | undefined) : undefined;
}

/** The periods in force, and the last day of their notice. */
export interface InForce {
  readonly periods: Periods;
  readonly notBefore: CalendarDay;
  /** The company has set them itself. */
  readonly isOwn: boolean;
}

/** The notice runs from the saving by which the periods came to be what they are. */
export async function periodsOf(services: Services, company: string, zone: string): Promise<InForce> {
  const said = periodsIn(await services.companies.settings(company));
  const never = { year: 1970, month: 1, day: 1 };
  if (said === undefined) return { periods: usualPeriods, notBefore: never, isOwn: false };
  const same = JSON.stringify(said);
  let since: number | undefined;
  for (const { digest, at } of await services.companies.versionsOf(company, companyPlace(company).job, "settings", "settings")) {
    const earlier = await services.companies.version(company, digest);
    if (JSON.stringify(periodsIn(earlier?.content)) !== same) break;
    since = at;
  }
  return { periods: said, isOwn: true, notBefore: since === undefined ? never : daysLater(dayAt(since, zone), NOTICE_DAYS) };
}

const latest = (days: readonly CalendarDay[]): CalendarDay | undefined =>
  days.reduce<CalendarDay | undefined>((last, day) => (last === undefined || isAfter(day, last) ? day : last), undefined);

/** Every site of a company, and every job without one, as it is kept: the next to end first. */
export async function sitesKept(services: Services, company: string, zone: string): Promise<readonly Kept[]> {
  const [all, sites, entered, terms, inForce] = await Promise.all([
    afterWorkOfAll(services, company),
    services.sites.all(company),
    services.periods.lastEntered(company),
    termsSaid(services, company),
    periodsOf(services, company, zone),
  ]);
  const now = dayAt(services.clock(), zone);
  const jobs = new Map(
    all.map(({ job, clocks, callbacks }) => {
      const covers = coversOf(clocks, readTerms(clocks.ownTerms ?? terms));
      // a cover that has run out still tells from when the periods run
      const end = coveredUntil(covers, now) ?? latest(covers.flatMap((cover) => (cover.end === undefined ? [] : [cover.end])));
      const open = callbacks.filter(({ closed }) => closed === undefined).length;
      const last = dayAt(entered.get(job) ?? services.clock(), zone);
      return [job, { job, lastEntered: last, ...(end === undefined ? {} : { coveredUntil: end }), openCallbacks: open }];
    }),
  );
  const titles = new Map(all.map(({ job, title }) => [job, title]));
  const placed = new Set(sites.flatMap((site) => site.jobs));
  const together: readonly (KeptSite & { readonly address?: string })[] = [
    ...sites.map(({ id, content, jobs: own }) => ({ site: id, address: content.address, jobs: own.flatMap((job) => jobs.get(job) ?? []) })),
    ...[...jobs.values()].filter(({ job }) => !placed.has(job)).map((job) => ({ jobs: [job] })),
  ];
  return together
    .filter((site) => site.jobs.length > 0)
    .map((site) => ({ ...keepingOf(site, inForce.periods, inForce.notBefore), titles }))
    .sort(nextFirst);
}

function nextFirst(a: SiteKeeping, b: SiteKeeping): number {
  const [first, second] = [a.endings[0]?.until, b.endings[0]?.until];
  if (first === undefined || second === undefined) return first === second ? 0 : first === undefined ? 1 : -1;
  return isAfter(first, second) ? 1 : isAfter(second, first) ? -1 : 0;
}
