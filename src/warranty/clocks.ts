import { factsOf, type JobState, type Live, momentOf } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import { type CalendarDay, typedDay } from "../units/index.ts";
import { dayAt } from "./days.ts";
import type { CoverStart } from "./terms.ts";

/** Something of a job that has its day, and the entry that says so. */
export interface OnDay {
  readonly day: CalendarDay;
  readonly entry: string;
}

export interface Handing extends OnDay {
  readonly how: "signed" | "delivered without signature";
  /** Why nobody signed. */
  readonly because?: "not reached" | "declined" | "vacant";
  /** Word for word. */
  readonly objection?: string;
}

/**
 * What a job's ledger says of its warranty, before any terms: days in the site's zone. Kept with the job's findings, so
 * that the list of a whole company needs no ledger.
 */
export interface WarrantyClocks {
  readonly zone: string;
  readonly language: "en" | "es";
  /** The terms that the job took over; absent: those of the company now. */
  readonly ownTerms?: Json;
  readonly handings: readonly Handing[];
  /** An objection that was entered, signed or not: use alone accepts nothing then. */
  readonly objections: readonly string[];
  readonly used?: OnDay;
  readonly firstRunning?: OnDay;
  readonly starts: readonly (OnDay & { readonly rule: CoverStart; readonly part?: string })[];
  readonly kept: readonly { readonly part: string; readonly why: string; readonly entry: string }[];
  readonly replaced: readonly (OnDay & { readonly part: string; readonly why: "under warranty" | "sold" })[];
  readonly registered: readonly (OnDay & { readonly part: string; readonly number?: string })[];
  readonly services: readonly (OnDay & { readonly service: string })[];
  /** `told`: the day on which it was entered. */
  readonly owners: readonly (OnDay & { readonly told: CalendarDay })[];
}

type Fact<W> = Live & { readonly what: W };

/** Facts with the day that they name; a day that is none says nothing. */
const dated = <W, T>(facts: readonly Fact<W>[], day: (what: W) => string, more: (fact: Fact<W>) => T): readonly (OnDay & T)[] =>
  facts.flatMap((fact) => {
    const read = typedDay(day(fact.what));
    return read === undefined ? [] : [{ day: read, entry: fact.id, ...more(fact) }];
  });

function handingsOf(state: JobState, zone: string): readonly Handing[] {
  const signed = factsOf(state, "signed").map((fact): Handing => ({ how: "signed", day: dayAt(fact.at, zone), entry: fact.id }));
  const delivered = dated(
    factsOf(state, "delivered-unsigned"),
    ({ day }) => day,
    ({ what: { because, objection } }) => ({
      how: "delivered without signature" as const,
      because,
      ...(objection === undefined ? {} : { objection }),
    }),
  );
  return [...signed, ...delivered];
}

const optional = <K extends string>(key: K, value: string | undefined): { readonly [P in K]?: string } =>
  (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: string };

function ownTermsOf({ settings }: JobState): Json | undefined {
  if (typeof settings !== "object" || settings === null || !("warranty" in settings)) return undefined;
  const of = settings.warranty;
  return of === undefined || of === null ? undefined : of;
}

/** What the ledger says of handing over, starts of cover, parts, services and owners. */
export function warrantyClocks(state: JobState): WarrantyClocks {
  const zone = state.opened?.zone ?? "UTC";
  const ownTerms = ownTermsOf(state);
  const running = momentOf(state, "first running");
  const used = dated(
    factsOf(state, "in-use"),
    ({ since }) => since,
    () => ({}),
  ).at(-1);
  const objections = [
    ...factsOf(state, "declined").map(({ what }) => what.objection),
    ...factsOf(state, "delivered-unsigned").flatMap(({ what }) => what.objection ?? []),
  ];
  return {
    zone,
    language: state.opened?.language ?? "en",
    ...(ownTerms === undefined ? {} : { ownTerms }),
    handings: handingsOf(state, zone),
    objections,
    ...(used === undefined ? {} : { used }),
    ...(running === undefined ? {} : { firstRunning: { day: dayAt(running.at, zone), entry: running.entry } }),
    starts: dated(
      factsOf(state, "cover-started"),
      ({ day }) => day,
      ({ what: { rule, part } }) => ({ rule, ...optional("part", part) }),
    ),
    kept: factsOf(state, "part-kept").map(({ id, what: { part, why } }) => ({ part, why, entry: id })),
    replaced: dated(
      factsOf(state, "part-replaced"),
      ({ day }) => day,
      ({ what: { part, why } }) => ({ part, why }),
    ),
    registered: dated(
      factsOf(state, "part-registered"),
      ({ day }) => day,
      ({ what: { part, number } }) => ({ part, ...optional("number", number) }),
    ),
    services: dated(
      factsOf(state, "service-done"),
      ({ date }) => date,
      ({ what: { service } }) => ({ service }),
    ),
    owners: dated(
      factsOf(state, "new-owner"),
      ({ day }) => day,
      ({ at }) => ({ told: dayAt(at, zone) }),
    ),
  };
}
