import type { CalendarDay } from "../units/index.ts";
import type { OnDay, WarrantyClocks } from "./clocks.ts";
import { daysLater, earliest, isAfter, lastDayOfCover } from "./days.ts";
import { handedOver } from "./handed-over.ts";
import { type ServiceDue, servicesDue } from "./services.ts";
import type { CoverStart, ReplacementRule, WarrantyTerm, WarrantyTerms } from "./terms.ts";

/** A part put in for another; `rule` absent: the company's terms say none, and the old end stands. */
export interface Replaced extends OnDay {
  readonly why: "under warranty" | "sold" | "after the cover";
  readonly rule?: ReplacementRule;
}

export interface Registration {
  readonly with: string;
  readonly by: CalendarDay;
  readonly done?: OnDay & { readonly number?: string };
}

/** The cover of one part. Both days belong to it. */
export interface Cover {
  readonly part: string;
  readonly months: number;
  readonly starts: CoverStart;
  readonly conditions?: string;
  /** An old part that stayed: no cover, whatever the terms say of such parts. */
  readonly kept?: { readonly why: string; readonly entry: string };
  readonly start?: OnDay;
  readonly end?: CalendarDay;
  readonly replaced: readonly Replaced[];
  readonly registration?: Registration;
  readonly services: readonly ServiceDue[];
  /** The last sale of the house within the cover, and what the terms make of it; absent rule: they say nothing. */
  readonly newOwner?: OnDay & { readonly becomes: "passes on" | "ended" | "not said" };
}

const plain = (text: string): string => text.trim().toLowerCase().replaceAll(/\s+/g, " ");
const isOf = (term: WarrantyTerm, part: string | undefined): boolean => part !== undefined && plain(part) === plain(term.part);

function startOf(clocks: WarrantyClocks, terms: WarrantyTerms, term: WarrantyTerm): OnDay | undefined {
  if (term.starts === "first running") return clocks.firstRunning;
  if (term.starts === "handover") return handedOver(clocks, terms);
  const said = clocks.starts.filter(({ rule }) => rule === term.starts);
  const own = said.filter(({ part }) => isOf(term, part));
  // an invoice covers the whole job; a date of sale only the part that it was said of
  const shared = term.starts === "invoice paid" ? said.filter(({ part }) => part === undefined) : [];
  return (own.length > 0 ? own : shared).at(-1);
}

function later(a: CalendarDay, b: CalendarDay): CalendarDay {
  return isAfter(a, b) ? a : b;
}

function endAfter(end: CalendarDay, day: CalendarDay, { months, replacement }: WarrantyTerm): CalendarDay {
  if (replacement === "new term") return lastDayOfCover(day, months);
  return replacement === "longer of both" ? later(end, lastDayOfCover(day, months)) : end;
}

/** The end as replacements move it, in the order of their days. A sold part has the whole term of its own. */
function replacedEnd(clocks: WarrantyClocks, term: WarrantyTerm, first: CalendarDay): Pick<Cover, "replaced"> & { end: CalendarDay } {
  const own = clocks.replaced.filter(({ part }) => isOf(term, part)).sort((a, b) => (isAfter(a.day, b.day) ? 1 : -1));
  let end = first;
  const replaced = own.map(({ day, entry, why }): Replaced => {
    if (why === "sold") {
      end = lastDayOfCover(day, term.months);
      return { day, entry, why };
    }
    if (isAfter(day, end)) return { day, entry, why: "after the cover" };
    end = endAfter(end, day, term);
    return { day, entry, why, ...(term.replacement === undefined ? {} : { rule: term.replacement }) };
  });
  return { replaced, end };
}

function newOwnerOf(clocks: WarrantyClocks, term: WarrantyTerm, start: CalendarDay, end: CalendarDay): Cover["newOwner"] {
  const within = clocks.owners.filter(({ day }) => !isAfter(start, day) && !isAfter(day, end));
  const judged = within.map(({ day, entry, told }) => {
    const isTold = !isAfter(told, daysLater(day, term.newOwnerDays ?? 0));
    const passes = term.newOwner === "passes on" || (term.newOwner === "passes on when told" && isTold);
    const becomes: "passes on" | "ended" | "not said" = term.newOwner === undefined ? "not said" : passes ? "passes on" : "ended";
    return { day, entry, becomes };
  });
  return earliest(judged.filter(({ becomes }) => becomes === "ended")) ?? judged.at(-1);
}

function registrationOf(clocks: WarrantyClocks, term: WarrantyTerm, start: CalendarDay): Registration | undefined {
  if (term.register === undefined) return undefined;
  const done = clocks.registered.filter(({ part }) => isOf(term, part)).at(-1);
  const { day, entry, number } = done ?? {};
  return {
    with: term.register.with,
    by: daysLater(start, term.register.days),
    ...(day === undefined || entry === undefined ? {} : { done: { day, entry, ...(number === undefined ? {} : { number }) } }),
  };
}

function coverOf(clocks: WarrantyClocks, terms: WarrantyTerms, term: WarrantyTerm): Cover {
  const { part, months, starts, conditions } = term;
  const own = { part, months, starts, ...(conditions === undefined ? {} : { conditions }) };
  const kept = clocks.kept.filter((one) => isOf(term, one.part)).at(-1);
  if (kept !== undefined) return { ...own, kept: { why: kept.why, entry: kept.entry }, replaced: [], services: [] };
  const start = startOf(clocks, terms, term);
  if (start === undefined) return { ...own, replaced: [], services: [] };
  const moved = replacedEnd(clocks, term, lastDayOfCover(start.day, months));
  const newOwner = newOwnerOf(clocks, term, start.day, moved.end);
  const end = newOwner?.becomes === "ended" ? newOwner.day : moved.end;
  const plans = terms.services.filter(({ kind }) => term.services?.includes(kind));
  const registration = registrationOf(clocks, term, start.day);
  return {
    ...own,
    start: { day: start.day, entry: start.entry },
    end,
    replaced: moved.replaced,
    ...(registration === undefined ? {} : { registration }),
    services: plans.flatMap((plan) => servicesDue(plan, clocks.services, start.day, end)),
    ...(newOwner === undefined ? {} : { newOwner }),
  };
}

/** An old part that the company's terms do not name: it stayed, and has no cover. */
const keptBeside = (clocks: WarrantyClocks, terms: WarrantyTerms): readonly Cover[] =>
  clocks.kept
    .filter(({ part }) => !terms.terms.some((term) => isOf(term, part)))
    .map(({ part, why, entry }) => ({ part, months: 0, starts: "handover", kept: { why, entry }, replaced: [], services: [] }));

/** The covers of a job's parts under these terms, in their order; kept parts that no term names come last. Never refuses. */
export const coversOf = (clocks: WarrantyClocks, terms: WarrantyTerms): readonly Cover[] => [
  ...terms.terms.map((term) => coverOf(clocks, terms, term)),
  ...keptBeside(clocks, terms),
];
