import { type Outcome, ok } from "#core/outcome/index.ts";
import type { JobOpened } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { companyPlace } from "../company/change.ts";
import { laneOf, untilFirst } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import type { Asked, Changed } from "./asked.ts";
import { freshServices } from "./fresh.ts";
import { numberOf, type PlannedJob, type Planning, plannedChange, plannedOpening } from "./planned.ts";
import { newSites } from "./sites.ts";
import { thingsOf } from "./things.ts";

const LANE_MS = 30_000;

/** What planning needs to know beforehand, read once. */
export async function planningOf(services: Services, author: Session, asked: readonly Asked[], at: number): Promise<Outcome<Planning>> {
  const { company } = author;
  const numbers = asked.flatMap((one) => numberOf(one) ?? []);
  const [things, known, sites] = await Promise.all([
    thingsOf(services, company),
    services.ownNumbers.known(company, numbers),
    newSites(services, author, asked, at),
  ]);
  return sites.ok ? ok({ services, fresh: freshServices(services), author, things, known, sites: sites.value, at }) : sites;
}

/**
 * Opens jobs with their sites, and changes others, all of it or nothing, in one batch. Refuses what `plannedOpening` refuses, its place
 * under the number of the opening where there are several; `database-busy`.
 */
export async function openJobs(
  services: Services,
  author: Session,
  asked: readonly Asked[],
  at: number,
  changed: readonly Changed[] = [],
): Promise<Outcome<readonly JobOpened[]>> {
  const place = companyPlace(author.company);
  const under = (i: number, inside: string): string =>
    [...(asked.length + changed.length > 1 ? [String(i)] : []), inside].filter((part) => part !== "").join("/");
  const attempt = async (): Promise<Outcome<readonly JobOpened[]> | "taken by another"> => {
    const planning = await planningOf(services, author, asked, at);
    if (!planning.ok) return planning;
    const planned: PlannedJob[] = [];
    for (const [i, work] of [...asked, ...changed].entries()) {
      const one = await ("opening" in work ? plannedOpening(planning.value, work) : plannedChange(planning.value, work));
      if (!one.ok) return { ok: false, refusal: { ...one.refusal, place: under(i, one.refusal.place) } };
      planned.push(one.value);
    }
    const { sites } = planning.value;
    const additions = [sites.addition, ...planned.map(({ addition }) => addition)];
    const statements = [...sites.statements, ...planned.flatMap((one) => one.statements)];
    const opened = planned.map((one) => one.opened);
    if (statements.length === 0) return ok(opened);
    return (await services.ledgers.write(additions, statements)) ? ok(opened) : "taken by another";
  };
  return services.lanes.in(laneOf(place), LANE_MS, () => untilFirst(place, attempt));
}
