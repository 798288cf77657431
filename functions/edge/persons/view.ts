import { coveredUntil } from "#core/keeping/index.ts";
import { isoDay } from "#core/units/index.ts";
import { coversOf, dayAt, daysLater, readTerms } from "#core/warranty/index.ts";
import { BACKUP_DAYS, type PersonFound, type PersonRequest } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { companyPlace } from "../company/change.ts";
import { type AfterWork, afterWorkOf } from "../jobs/after-work-of.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";
import { termsSaid } from "../warranties/terms.ts";
import type { Found } from "./found.ts";
import { companyBodies, removalFrom } from "./remove.ts";

/** What is known of each found job beside its entries. */
async function afterWorks(services: Services, company: string, { jobs }: Found): Promise<ReadonlyMap<string, AfterWork>> {
  const known = new Map<string, AfterWork>();
  for (const { job } of jobs) known.set(job, afterWorkOf((await currentJob(services, { company, job })).state));
  return known;
}

/** The last day of the covers that still run in the person's own jobs, by job. */
async function coversRunning(
  services: Services,
  company: string,
  { jobs }: Found,
  known: ReadonlyMap<string, AfterWork>,
): Promise<ReadonlyMap<string, string>> {
  const said = await termsSaid(services, company);
  const until = new Map<string, string>();
  for (const { job, isTheirs } of jobs) {
    const clocks = known.get(job)?.clocks;
    if (!isTheirs || clocks === undefined) continue;
    const last = coveredUntil(coversOf(clocks, readTerms(clocks.ownTerms ?? said)), dayAt(services.clock(), clocks.zone));
    if (last !== undefined) until.set(job, isoDay(last));
  }
  return until;
}

/** Until when a cover of the person's own jobs runs; undefined where none does. */
export async function coveredNow(services: Services, company: string, found: Found): Promise<string | undefined> {
  const running = await coversRunning(services, company, found, await afterWorks(services, company, found));
  return [...running.values()].sort().at(-1);
}

async function handedOut(
  services: Services,
  company: string,
  { jobs }: Found,
  titleOf: (job: string) => string,
): Promise<PersonFound["handedOut"]> {
  const out: PersonFound["handedOut"][number][] = [];
  for (const { job } of jobs) {
    for (const { id, version, issued } of await services.records.ofJob({ company, job })) {
      const releases = await services.releases.ofRecord(company, id);
      out.push({
        job,
        title: titleOf(job),
        version,
        issued,
        releases: releases.map(({ receiver, released }) => ({ to: receiver, at: released })),
      });
    }
  }
  return out;
}

/** What was found of a person, what would go if it were removed now, and what would stay. */
export async function foundView(services: Services, session: Session, request: PersonRequest, found: Found): Promise<PersonFound> {
  const { company } = session;
  const known = await afterWorks(services, company, found);
  const titleOf = (job: string): string => known.get(job)?.title ?? "";
  const [removal, running, own] = await Promise.all([
    removalFrom(services, company, found),
    coversRunning(services, company, found, known),
    services.companies.get(company),
  ]);
  // the request itself names the person too, and is not what was asked after
  const ofCompany = companyBodies(found, companyPlace(company).job).filter(({ id }) => id !== request.request);
  const mentions = found.company.mentions.filter(({ id }) => id !== request.request);
  return {
    ...request,
    jobs: found.jobs.map(({ job, mentions, isTheirs, isWhole }) => {
      const { title = "", ownNumber, callbacks = [] } = known.get(job) ?? {};
      const until = running.get(job);
      return {
        job,
        title,
        ...(ownNumber === undefined ? {} : { ownNumber }),
        entries: new Set(mentions.map(({ id }) => id)).size,
        isTheirs,
        isWhole,
        ...(until === undefined ? {} : { coveredUntil: until }),
        callbacks: callbacks.filter(({ closed }) => closed === undefined).length,
      };
    }),
    company: {
      entries: new Set(mentions.map(({ id }) => id)).size,
      sites: found.sites.length,
      oldWarranties: found.oldWarranties.length,
      isPerson: found.person !== undefined,
    },
    goes: { bodies: removal.bodies.length + ofCompany.length, files: removal.files.length },
    stays: removal.stays.map(({ job, number, kind, parts }) => ({ job, title: titleOf(job), number, kind, parts: [...parts] })),
    handedOut: await handedOut(services, company, found, titleOf),
    backupsUntil: isoDay(daysLater(dayAt(services.clock(), own?.zone ?? "UTC"), BACKUP_DAYS)),
  };
}
