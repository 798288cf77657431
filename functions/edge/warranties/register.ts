import { isoDay } from "#core/units/index.ts";
import { type Cover, coversOf, dayAt, readTerms, standingOn } from "#core/warranty/index.ts";
import type { OldWarranty, WarrantyRegister } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Services } from "../services.ts";
import { afterWorkOfAll } from "./after-work.ts";
import { termsSaid } from "./terms.ts";

type Line = WarrantyRegister["covers"][number];

function lineOf(cover: Cover, today: ReturnType<typeof dayAt>, of: Pick<Line, "job" | "title" | "ownNumber">): Line {
  const { is, registration, missed, next } = standingOn(cover, today);
  const { start, end, registration: to } = cover;
  return {
    ...of,
    part: cover.part,
    is,
    ...(start === undefined ? {} : { start: isoDay(start.day) }),
    ...(end === undefined ? {} : { end: isoDay(end) }),
    ...(to === undefined || registration === undefined ? {} : { register: { with: to.with, by: isoDay(to.by), is: registration } }),
    ...(next === undefined || is !== "runs" ? {} : { next: { kind: next.kind, due: isoDay(next.day), until: isoDay(next.until) } }),
    missed: missed.length,
    today: isoDay(today),
  };
}

function oldLine(old: OldWarranty, today: string): Line {
  const { number, customer, address, part, start, end } = old;
  return {
    title: `${customer}, ${address}`,
    ownNumber: number,
    part,
    is: today < start ? "not begun" : today > end ? "over" : "runs",
    start,
    end,
    missed: 0,
    old,
    today,
  };
}

const ranks: Readonly<Record<Line["is"], number>> = { runs: 0, "not begun": 0, "start not known": 1, over: 2, "kept, no cover": 3 };

/** Soonest to run out first; then those whose start nobody entered, then what is over (the latest first), then kept parts. */
function soonestFirst(a: Line, b: Line): number {
  if (ranks[a.is] !== ranks[b.is]) return ranks[a.is] - ranks[b.is];
  const [first, second] = a.is === "over" ? [b, a] : [a, b];
  return (first.end ?? "").localeCompare(second.end ?? "") || a.title.localeCompare(b.title) || a.part.localeCompare(b.part);
}

/** Every cover of a company, of its jobs and of old papers, as it stands where each site is. */
export async function registerOf(services: Services, session: Session): Promise<WarrantyRegister> {
  const { company } = session;
  const [jobs, said, old, own] = await Promise.all([
    afterWorkOfAll(services, company),
    termsSaid(services, company),
    services.oldWarranties.all(company),
    services.companies.get(company),
  ]);
  const now = services.clock();
  const covers: Line[] = [];
  for (const { job, title, ownNumber, clocks } of jobs) {
    const terms = readTerms(clocks.ownTerms ?? said);
    const of = { job, title, ...(ownNumber === undefined ? {} : { ownNumber }) };
    covers.push(...coversOf(clocks, terms).map((cover) => lineOf(cover, dayAt(now, clocks.zone), of)));
  }
  const today = isoDay(dayAt(now, own?.zone ?? "UTC"));
  covers.push(...old.map((one) => oldLine(one, today)));
  return { covers: covers.sort(soonestFirst), terms: readTerms(said).terms.length };
}
