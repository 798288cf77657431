import { type CalendarDay, isoDay } from "#core/units/index.ts";
import { dayAt, isAfter, lastDayOfCover } from "#core/warranty/index.ts";
import { log, thrownOf } from "../log.ts";
import type { Services } from "../services.ts";
import { at } from "../shards/index.ts";
import { sendNotice } from "../warranties/notice.ts";
import { officeOf } from "../warranties/office.ts";
import { endPeriods } from "./end.ts";
import { periodsOf } from "./sites.ts";

/** As many companies are looked at in one go. */
const MOST = 50;

/** Whether anything of a company can have ended: no site is older than its oldest job. Asked before any ledger is read. */
async function canHaveEnded(services: Services, company: string, zone: string, today: CalendarDay): Promise<boolean> {
  const [oldest, { periods }] = await Promise.all([services.periods.oldest(company), periodsOf(services, company, zone)]);
  const shortest = Math.min(...Object.values(periods));
  return oldest !== undefined && Number.isFinite(shortest) && isAfter(today, lastDayOfCover(dayAt(oldest, zone), shortest));
}

/** Looks at companies whose periods have not been looked at today, until something of one of them is gone; the next call goes on. */
export async function lookAtPeriods(services: Services): Promise<void> {
  const companies = await services.periods.companies();
  const due = companies.filter(({ zone, day }) => day !== isoDay(dayAt(services.clock(), zone)));
  for (const { id, zone } of due.slice(0, MOST)) {
    const today = dayAt(services.clock(), zone);
    const home = await at(services, id);
    if (!(await home.periods.take(id, isoDay(today)))) continue;
    // told before anything ends, and never in the way of what has to end
    await sendNotice(officeOf(home, id), zone, today, services.clock()).catch((thrown: unknown) =>
      log({ event: "notice-broke", thrown: thrownOf(thrown) }),
    );
    if ((await canHaveEnded(home, id, zone, today)) && (await endPeriods(home, id, zone, today)) > 0) return;
  }
}
