import type { LineSaid, TableField, ToleranceSheet } from "#core/job/index.ts";
import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { readQuantity } from "#core/reading/index.ts";
import type { NewSite, Opening } from "#core/wire/index.ts";
import type { PersonRow, VersionRow } from "../adapters/companies.ts";
import type { SiteRow } from "../adapters/sites.ts";

/** What the names of a table stand for in this company. */
export interface TableNames {
  readonly people: readonly PersonRow[];
  readonly sheets: readonly VersionRow[];
  readonly sites: readonly SiteRow[];
  /** Taken over where a line names none. */
  readonly usual: VersionRow | undefined;
}

type Fields = LineSaid["fields"];
const contacts = ["customer", "onSite", "receiver"] as const;
const plain = (text: string): string => text.normalize("NFC").trim().replaceAll(/\s+/g, " ").toLowerCase();

/** The contacts that a line names; one of whom only the telephone is said has none to go with it. */
export function contactsOf(fields: Fields): Pick<Opening, "customer" | "onSite" | "receiver"> {
  return Object.fromEntries(
    contacts.flatMap((of) => {
      const [name, phone, contact] = (["name", "phone", "contact"] as const).map((part) => fields[`${of}-${part}` as TableField]);
      return name === undefined ? [] : [[of, { name, ...(phone && { phone }), ...(contact && { contact }) }] as const];
    }),
  );
}

export function crewOf({ crew }: Fields, { people }: TableNames): Outcome<Opening["crew"]> {
  if (crew === undefined) return ok(undefined);
  const named = crew
    .split(/[;,]/)
    .map((name) => name.trim())
    .filter((name) => name !== "");
  const found = named.map((name) => people.find((one) => one.role === "crew" && one.left === undefined && plain(one.name) === plain(name)));
  const missing = found.indexOf(undefined);
  if (missing >= 0) return refuse("table-name-unknown", "crew", { found: named[missing] ?? "" });
  return ok(found.flatMap((person) => (person ? [person.id] : [])));
}

export function sheetOf({ sheet }: Fields, { sheets, usual }: TableNames): Outcome<VersionRow | undefined> {
  if (sheet === undefined) return ok(usual);
  const found = sheets.find(({ name, content }) => {
    const { title } = content as unknown as ToleranceSheet;
    return [name, title.en, title.es ?? ""].some((known) => plain(known) === plain(sheet));
  });
  return found ? ok(found) : refuse("table-name-unknown", "sheet", { found: sheet });
}

function degrees(text: string, place: "latitude" | "longitude", most: number): Outcome<number> {
  const read = readQuantity(text, { kind: "angle", unit: "°", signed: true, place });
  if (!read.ok) return read;
  return Math.abs(read.value.value) > most * 1e6 ? refuse("reading-out-of-range", place, { found: text }) : ok(read.value.value * 10);
}

function placeOf({ latitude, longitude }: Fields): Outcome<NewSite["place"]> {
  if (latitude === undefined || longitude === undefined) return ok(undefined);
  const [north, east] = [degrees(latitude, "latitude", 90), degrees(longitude, "longitude", 180)];
  if (!north.ok) return north;
  return east.ok ? ok({ latitude: north.value, longitude: east.value, how: "CSV" }) : east;
}

/** The site of a line: one that the company has at this very address, else a new one. */
function siteOf(fields: Fields, { sites }: TableNames): Outcome<Opening["site"]> {
  const { address, heightMark, tieMarks } = fields;
  if (address === undefined) return ok(undefined);
  const known = sites.find(({ content }) => plain(content.address) === plain(address));
  if (known) return ok({ known: known.id });
  const place = placeOf(fields);
  if (!place.ok) return place;
  const marks = (tieMarks ?? "")
    .split(";")
    .map((mark) => mark.trim())
    .filter((mark) => mark !== "")
    .slice(0, 20);
  return ok({
    address,
    ...(place.value && { place: place.value }),
    ...(heightMark && { heightMark }),
    ...(marks.length > 0 && { tieMarks: marks }),
  });
}

function languageOf({ language }: Fields): Outcome<Opening["language"]> {
  if (language === undefined) return ok(undefined);
  if (/^(en|english|ingl[eé]s)$/i.test(language)) return ok("en");
  return /^(es|spanish|espa[nñ]ol)$/i.test(language) ? ok("es") : refuse("table-name-unknown", "language", { found: language });
}

/** A line as an opening, or everything about it that cannot be taken. */
export function openingOf(
  { fields, figures, readings }: LineSaid,
  names: TableNames,
): Outcome<Opening> & { readonly refusals: readonly Refusal[] } {
  const { number, title, order, invoice } = fields;
  const [crew, sheet, site, language] = [crewOf(fields, names), sheetOf(fields, names), siteOf(fields, names), languageOf(fields)];
  const titled = title === undefined ? refuse("table-title-missing", "title", {}) : ok(title);
  const refusals = [titled, crew, sheet, site, language].flatMap((one) => (one.ok ? [] : [one.refusal]));
  const [first] = refusals;
  if (first !== undefined || !titled.ok || !crew.ok || !sheet.ok || !site.ok || !language.ok)
    return { ok: false, refusal: first ?? refuse("table-title-missing", "title", {}).refusal, refusals };
  const value: Opening = {
    title: titled.value,
    ...(number && { ownNumber: number }),
    ...(order && { order }),
    ...(invoice && { invoice }),
    ...contactsOf(fields),
    ...(crew.value && { crew: crew.value }),
    ...(site.value && { site: site.value }),
    ...(language.value && { language: language.value }),
    ...(sheet.value && { sheetVersion: sheet.value.digest }),
    ...(Object.keys(figures).length > 0 && { figures: { ...figures } }),
    ...(readings.length > 0 && { readings: [...readings] }),
  };
  return { ok: true, value, refusals };
}
