import type { FactKind } from "#core/job/index.ts";
import type { Json, PartName } from "#core/ledger/index.ts";
import type { NewSite, Opening } from "#core/wire/index.ts";
import type { CompanyRow, VersionRow } from "../adapters/companies.ts";
import type { SiteRow } from "../adapters/sites.ts";

/** One fact of an opening; `place`: what of the opening it says. */
export interface OpeningFact {
  readonly kind: FactKind;
  readonly place: string;
  readonly contents: { readonly [P in PartName]?: Json };
}

/** The company's things that an opening takes over. */
export interface TakenOver {
  readonly company: CompanyRow;
  readonly versions: readonly (Pick<VersionRow, "name" | "number" | "digest"> & { readonly kind: "sheet" | "kit card" | "settings" })[];
  readonly site?: SiteRow;
}

/** Only what was said. */
export const said = (fields: { readonly [key: string]: Json | undefined }): { readonly [key: string]: Json } =>
  Object.fromEntries(Object.entries(fields).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])));

const isEmpty = (fields: object): boolean => Object.keys(fields).length === 0;
export const partly = (part: PartName, fields: { readonly [key: string]: Json }) => (isEmpty(fields) ? {} : { [part]: fields });

/** A site as the company's ledger has it: marks in what, address in who, position in where. */
export function siteContents(id: string, { address, place, heightMark, tieMarks }: Omit<NewSite, "id">) {
  const { how, reaches, ...position } = place ?? {};
  return {
    what: said({ site: id, heightMark, tieMarks, how, reaches }),
    who: { address },
    ...partly("where", said({ ...position })),
  };
}

/** How a job takes over its site: the marks and address, and where it is. */
export function siteFacts({ id, number, content }: SiteRow): readonly OpeningFact[] {
  const { address, place, heightMark, tieMarks } = content;
  const taken: OpeningFact = {
    kind: "site-taken-over",
    place: "site",
    contents: { what: said({ site: id, number, heightMark, tieMarks }), who: { address } },
  };
  if (place === undefined) return [taken];
  const { how, reaches, ...where } = place;
  return [taken, { kind: "site-located", place: "site/place", contents: { what: said({ how, reaches }), where: said({ ...where }) } }];
}

/** The facts of a job as the office opens it, in their order; the first is of kind job-opened. */
export function openingFacts(opening: Opening, { company, versions, site }: TakenOver): readonly OpeningFact[] {
  const { title, ownNumber, order, invoice, crew, customer, onSite, receiver, late, figures, switches, readings = [] } = opening;
  const { zone = company.zone, language = company.language, units = company.units } = opening;
  const what = said({ title, ownNumber, order, invoice, crew, site: site?.id, zone, language, units, ...(late && { late: true }) });
  const who = said({ address: site?.content.address, customer, onSite, receiver } as { readonly [key: string]: Json | undefined });
  const design = said({ figures, switches } as { readonly [key: string]: Json | undefined });
  return [
    { kind: "job-opened", place: "", contents: { what, ...partly("who", who) } },
    ...(site ? siteFacts(site) : []),
    ...versions.map(({ kind, name, number, digest }) => ({
      kind: "version-taken-over" as const,
      place: kind,
      contents: { what: { thing: kind, name, number, digest } },
    })),
    ...(isEmpty(design) ? [] : [{ kind: "design-set" as const, place: "", contents: { what: design } }]),
    ...readings.map((reading, i) => ({ kind: "reading-taken" as const, place: `readings/${i}`, contents: { what: { ...reading } } })),
    ...(late ? [{ kind: "opened-late" as const, place: "late", contents: { what: said({ ...late }) } }] : []),
  ];
}
