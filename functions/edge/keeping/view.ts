import type { KeptKind } from "#core/keeping/index.ts";
import { isoDay } from "#core/units/index.ts";
import { dayAt, daysLater, isAfter } from "#core/warranty/index.ts";
import type { KeepingView } from "#core/wire/index.ts";
import type { Services } from "../services.ts";
import { goingOf, goingOfSite, jobsRead } from "./end.ts";
import { periodsOf, sitesKept } from "./sites.ts";

/** Days ahead of which what goes is counted: a quarter of a year. */
const AHEAD_DAYS = 91;

/** How long everything of a company is kept, and what goes next, before it goes. */
export async function keepingOfCompany(services: Services, company: string): Promise<KeepingView> {
  const own = await services.companies.get(company);
  const zone = own?.zone ?? "UTC";
  const today = dayAt(services.clock(), zone);
  const ahead = daysLater(today, AHEAD_DAYS);
  const [{ periods, notBefore, isOwn }, kept] = await Promise.all([periodsOf(services, company, zone), sitesKept(services, company, zone)]);
  const sites: KeepingView["sites"] = [];
  for (const site of kept) {
    const { jobs, titles, from, waits, endings } = site;
    const kinds: readonly KeptKind[] = endings.flatMap(({ kind, until }) => (isAfter(ahead, until) ? [kind] : []));
    const going =
      kinds.length === 0 ? undefined : await goingOf(services, company, await jobsRead(services, company, site), new Set(kinds));
    const ofSite = going && (await goingOfSite(services, company, site.site, new Set(kinds)));
    sites.push({
      ...(site.site === undefined ? {} : { site: site.site }),
      ...(site.address === undefined ? {} : { address: site.address }),
      jobs: jobs.map(({ job }) => ({ job, title: titles.get(job) ?? "" })),
      from: isoDay(from),
      waits,
      endings: endings.map(({ kind, until }) => ({ kind, until: isoDay(until) })),
      ...(going === undefined
        ? {}
        : { goes: { kinds: [...kinds], bodies: going.bodies.length + (ofSite?.length ?? 0), files: going.files.length } }),
    });
  }
  return { periods, isOwn, ...(isAfter(today, notBefore) ? {} : { notice: isoDay(notBefore) }), today: isoDay(today), sites };
}
