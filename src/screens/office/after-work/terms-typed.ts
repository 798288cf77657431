import { serviceKinds, type WarrantyTerms } from "../../../warranty/index.ts";
import type { WarrantySettings } from "../../../wire/index.ts";

/** What a page of terms holds, by the names of its fields. */
export interface TermsTyped {
  readonly text: (name: string) => string;
  readonly all: (name: string) => readonly string[];
}

const number = (typed: string): number | undefined => (/^\d{1,5}$/.test(typed.trim()) ? Number(typed.trim()) : undefined);
const given = <V>(name: string, value: V | undefined | ""): object => (value === undefined || value === "" ? {} : { [name]: value });
const lines = (typed: string): readonly string[] =>
  typed
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== "");

function termTyped({ text, all }: TermsTyped, place: number): readonly object[] {
  const of = (name: string): string => text(`${name}-${place}`).trim();
  const [part, months] = [of("part"), number(of("months"))];
  if (part === "" || months === undefined) return [];
  const [days, whom] = [number(of("registerDays")), of("registerWith")];
  return [
    {
      part,
      months,
      starts: of("starts"),
      ...given("conditions", of("conditions")),
      ...given("services", all(`services-${place}`).length > 0 ? all(`services-${place}`) : undefined),
      ...given("register", days !== undefined && whom !== "" ? { days, with: whom } : undefined),
      ...given("replacement", of("replacement")),
      ...given("newOwner", of("newOwner")),
      ...given("newOwnerDays", number(of("newOwnerDays"))),
    },
  ];
}

function serviceTyped({ text }: TermsTyped, kind: (typeof serviceKinds)[number]): readonly object[] {
  const of = (name: string): number | undefined => number(text(`${name} ${kind}`));
  const within = given("within", of("within"));
  if (kind === "return visit") return of("daysAfter") === undefined ? [] : [{ kind, daysAfter: of("daysAfter"), ...within }];
  if (kind === "yearly") return text("on yearly") === "" ? [] : [{ kind, ...within }];
  return of("month") === undefined ? [] : [{ kind, month: of("month"), day: of("day") ?? 1, ...within }];
}

/** The company's terms as typed. A part without a name or its months is left out: that is how one is taken away. */
export function termsTyped(typed: TermsTyped, parts: number): WarrantySettings {
  const accepted = number(typed.text("acceptedDays"));
  return {
    text: { en: lines(typed.text("text-en")), es: lines(typed.text("text-es")) },
    terms: Array.from({ length: parts }, (_, place) => termTyped(typed, place)).flat(),
    services: serviceKinds.flatMap((kind) => serviceTyped(typed, kind)),
    ...given("acceptedByUseAfterDays", accepted),
  } as WarrantySettings;
}

/** What stands in the page's fields for these terms. */
export function termsShown({ text, terms, services, acceptedByUseAfterDays }: WarrantyTerms): ReadonlyMap<string, string> {
  const ofTerms = terms.flatMap((term, place) =>
    Object.entries({
      part: term.part,
      months: term.months,
      starts: term.starts,
      conditions: term.conditions,
      registerDays: term.register?.days,
      registerWith: term.register?.with,
      replacement: term.replacement,
      newOwner: term.newOwner,
      newOwnerDays: term.newOwnerDays,
      services: term.services?.join(","),
    }).map(([name, value]) => [`${name}-${place}`, String(value ?? "")] as const),
  );
  const ofServices = services.flatMap(({ kind, daysAfter, month, day, within }) =>
    Object.entries({ daysAfter, month, day, within, on: kind === "yearly" ? "yes" : undefined }).map(
      ([name, value]) => [`${name} ${kind}`, String(value ?? "")] as const,
    ),
  );
  return new Map([
    ["text-en", text.en.join("\n")],
    ["text-es", text.es.join("\n")],
    ["acceptedDays", String(acceptedByUseAfterDays ?? "")],
    ...ofTerms,
    ...ofServices,
  ]);
}
