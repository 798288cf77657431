import type { Json } from "../ledger/index.ts";

/** When a part's cover starts. */
export const coverStarts = ["handover", "first running", "invoice paid", "date of sale"] as const;
export type CoverStart = (typeof coverStarts)[number];

/** How long a part has that was put in for one under warranty. */
export const replacementRules = ["rest of the old term", "new term", "longer of both"] as const;
export type ReplacementRule = (typeof replacementRules)[number];

/** What becomes of a cover when the house is sold. */
export const newOwnerRules = ["passes on", "passes on when told", "ends"] as const;
export type NewOwnerRule = (typeof newOwnerRules)[number];

/** What a company comes back for without anything being wrong. */
export const serviceKinds = ["return visit", "winter", "spring", "yearly"] as const;
export type ServiceKind = (typeof serviceKinds)[number];

/** The terms of one part: all of it the company's own choice. */
export interface WarrantyTerm {
  readonly part: string;
  /** Whole months from its start. */
  readonly months: number;
  readonly starts: CoverStart;
  readonly conditions?: string;
  /** Cover rests on these being done; entries of services done are its evidence. */
  readonly services?: readonly ServiceKind[];
  /** It has to be registered, with whom and within how many days of its start. */
  readonly register?: { readonly days: number; readonly with: string };
  readonly replacement?: ReplacementRule;
  readonly newOwner?: NewOwnerRule;
  /** With 'passes on when told': within so many days of the sale. */
  readonly newOwnerDays?: number;
}

/** When a service is due: once so many days after handing over, on a day of each year, or each year after handing over. */
export interface PlannedService {
  readonly kind: ServiceKind;
  readonly daysAfter?: number;
  readonly month?: number;
  readonly day?: number;
  /** It counts when it was done so many days before or after. */
  readonly within: number;
}

export interface WarrantyTerms {
  /** By language; the other language's where one has none. */
  readonly text: Readonly<Record<"en" | "es", readonly string[]>>;
  readonly terms: readonly WarrantyTerm[];
  readonly services: readonly PlannedService[];
  /** Days of use after which the work counts as handed over; absent: the company's terms name none. */
  readonly acceptedByUseAfterDays?: number;
}

/** Days around its day in which a service counts, where the company says none (own). */
const WITHIN_DAYS = 45;
const LONGEST_MONTHS = 1200;

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};
const list = (value: Json | undefined): readonly Json[] => (Array.isArray(value) ? value : []);
const texts = (value: Json | undefined): readonly string[] => list(value).filter((one): one is string => typeof one === "string");
const oneOf = <T extends string>(all: readonly T[], value: Json | undefined): T | undefined => all.find((one) => one === value);
const counted = (value: Json | undefined, least: number, most: number): number | undefined =>
  typeof value === "number" && Number.isSafeInteger(value) && value >= least && value <= most ? value : undefined;

const given = <K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } =>
  (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: V };

function registerOf(value: Json | undefined): WarrantyTerm["register"] {
  const { days, with: whom } = fields(value);
  const within = counted(days, 0, 36_500);
  return within !== undefined && typeof whom === "string" ? { days: within, with: whom } : undefined;
}

function termOf(value: Json): readonly WarrantyTerm[] {
  const said = fields(value);
  const months = counted(said.months, 0, LONGEST_MONTHS);
  if (typeof said.part !== "string" || months === undefined) return [];
  const services = serviceKinds.filter((kind) => list(said.services).includes(kind));
  return [
    {
      part: said.part,
      months,
      starts: oneOf(coverStarts, said.starts) ?? "handover",
      ...given("conditions", typeof said.conditions === "string" ? said.conditions : undefined),
      ...given("services", services.length > 0 ? services : undefined),
      ...given("register", registerOf(said.register)),
      ...given("replacement", oneOf(replacementRules, said.replacement)),
      ...given("newOwner", oneOf(newOwnerRules, said.newOwner)),
      ...given("newOwnerDays", counted(said.newOwnerDays, 0, 36_500)),
    },
  ];
}

function serviceOf(value: Json): readonly PlannedService[] {
  const said = fields(value);
  const kind = oneOf(serviceKinds, said.kind);
  if (kind === undefined) return [];
  const month = counted(said.month, 1, 12);
  return [
    {
      kind,
      ...given("daysAfter", counted(said.daysAfter, 0, 36_500)),
      ...given("month", month),
      ...given("day", month === undefined ? undefined : (counted(said.day, 1, 31) ?? 1)),
      within: counted(said.within, 0, 182) ?? WITHIN_DAYS,
    },
  ];
}

/** The company's `warranty` as it was saved. What does not read is left out: a record prints all the same. Never refuses. */
export function readTerms(json: Json | undefined): WarrantyTerms {
  const said = fields(json);
  const byLanguage = fields(said.text);
  const [en, es] = Array.isArray(said.text) ? [texts(said.text), texts(said.text)] : [texts(byLanguage.en), texts(byLanguage.es)];
  return {
    text: { en: en.length > 0 ? en : es, es: es.length > 0 ? es : en },
    terms: list(said.terms).flatMap(termOf),
    services: list(said.services).flatMap(serviceOf),
    ...given("acceptedByUseAfterDays", counted(said.acceptedByUseAfterDays, 0, 3650)),
  };
}
