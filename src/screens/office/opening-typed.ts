import { type Item, officeReadingsOf, type ToleranceSheet } from "../../job/index.ts";
import { type Outcome, ok } from "../../outcome/index.ts";
import { typedDay, zonedText } from "../../units/index.ts";
import type { Contact, NewSite, Opening, PlannedDesign } from "../../wire/index.ts";
import { type SiteField, siteFields, siteTyped } from "./site-typed.ts";

/** What the fields of a page hold. */
export interface Filled {
  readonly text: (name: string) => string;
  readonly all: (name: string) => readonly string[];
}

export const filledIn = (form: HTMLFormElement): Filled => {
  const data = new FormData(form);
  return {
    text: (name) => String(data.get(name) ?? "").trim(),
    all: (name) => data.getAll(name).map(String),
  };
};

export const contactFields = ["customer", "onSite", "receiver"] as const;
export type ContactField = (typeof contactFields)[number];

/** What the chosen sheet asks of the office. */
export const officeReadings = (sheet: ToleranceSheet | undefined): readonly Item[] => (sheet ? officeReadingsOf(sheet) : []);

/** What a sheet asks of a design in numbers. */
export const figuresAsked = (sheet: ToleranceSheet | undefined, from: "design" | "kit card") =>
  sheet?.figures.filter((figure) => figure.kind !== "text" && figure.from === from) ?? [];

function contactTyped({ text }: Filled, of: ContactField): Contact | undefined {
  const [name, phone, contact] = [text(`${of}-name`), text(`${of}-phone`), text(`${of}-contact`)];
  return name === "" ? undefined : { name, ...(phone && { phone }), ...(contact && { contact }) };
}

export const contactsTyped = (filled: Filled): Partial<Record<ContactField, Contact>> =>
  Object.fromEntries(
    contactFields.flatMap((of) => {
      const typed = contactTyped(filled, of);
      return typed ? [[of, typed]] : [];
    }),
  );

/** The lines of a text, without empty ones. */
const linesOf = (text: string): readonly string[] =>
  text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

/** A site as typed; its position only where a latitude was. Refuses with the field as place, as readings are refused. */
export function newSiteTyped({ text }: Filled, unit: "ft" | "m"): Outcome<NewSite> {
  const tieMarks = linesOf(text("tieMarks"));
  const heightMark = text("heightMark");
  const site = { address: text("address"), ...(heightMark && { heightMark }), ...(tieMarks.length > 0 && { tieMarks: [...tieMarks] }) };
  if (siteFields.every((field) => text(field) === "")) return ok(site);
  const typed = Object.fromEntries(siteFields.map((field) => [field, text(field)])) as Record<SiteField, string>;
  const place = siteTyped(typed, unit);
  return place.ok ? ok({ ...site, place: { ...place.value, how: text("how") || "-" } }) : place;
}

/** The design as it is typed at this moment; a figure is as typed, or the word unknown. */
export function designTyped({ text, all }: Filled, sheet: ToleranceSheet | undefined): Pick<Opening, "figures" | "switches"> {
  const figures = [...figuresAsked(sheet, "design"), ...figuresAsked(sheet, "kit card")].flatMap(({ id, unit = "" }) => {
    const typed = text(`figure-${id}`);
    if (typed === "") return [];
    return [[id, typed.toLowerCase() === "unknown" || typed.toLowerCase() === "no se sabe" ? "unknown" : { typed, unit }] as const];
  });
  const on = new Set(all("switch"));
  const switches = (sheet?.switches ?? []).flatMap(({ id, standard }) => (on.has(id) === standard ? [] : [[id, on.has(id)] as const]));
  return {
    ...(figures.length > 0 && { figures: Object.fromEntries(figures) }),
    ...(switches.length > 0 && { switches: Object.fromEntries(switches) }),
  };
}

/** What the design check is asked. */
export const plannedTyped = (
  filled: Filled,
  sheet: ToleranceSheet | undefined,
  kitCards: NonNullable<PlannedDesign["kitCards"]>,
): PlannedDesign => {
  const { figures = {}, switches } = designTyped(filled, sheet);
  const all = Object.fromEntries((sheet?.switches ?? []).map(({ id, standard }) => [id, switches?.[id] ?? standard]));
  return { figures, switches: all, kitCards };
};

/** `2026-05-11T17:00` of a field for day and time, in the site's zone. */
function instantTyped(typed: string, zone: string): string {
  const day = typedDay(typed.slice(0, 10));
  const match = /T(\d{2}):(\d{2})/.exec(typed);
  return day && match ? zonedText({ ...day, hour: Number(match[1]), minute: Number(match[2]) }, zone) : typed;
}

function readingsTyped({ text }: Filled, sheet: ToleranceSheet | undefined, units: "inch" | "metric", zone: string): Opening["readings"] {
  return officeReadings(sheet).flatMap((item) => {
    const typed = text(`reading-${item.id}`);
    if (typed === "") return [];
    const unit = item.unit?.[units] ?? "";
    return [{ item: item.id, typed: item.quantity === "instant" ? instantTyped(typed, zone) : typed, unit }];
  });
}

/** The coverings that had happened when a record begins with a step: all that they hold lies in earlier ones. */
export function coveringsBefore(sheet: ToleranceSheet, steps: readonly string[]): readonly string[] {
  const before = new Set(steps);
  return sheet.coverings.flatMap(({ id }) => {
    const held = [...sheet.items, ...sheet.checks].filter(({ holds }) => holds === id);
    return held.length > 0 && held.every(({ step }) => before.has(step)) ? [id] : [];
  });
}

/** The steps on site before one, by their printed order. */
export function stepsBefore(sheet: ToleranceSheet, first: string): readonly string[] {
  const at = sheet.steps.findIndex(({ id }) => id === first);
  return sheet.steps.slice(0, Math.max(0, at)).flatMap(({ id, office }) => (office ? [] : [id]));
}

export interface OpeningAsked {
  readonly id: string;
  readonly sheet?: { readonly digest: string; readonly content: ToleranceSheet } | undefined;
  readonly units: "inch" | "metric";
  readonly zone: string;
}

/** The whole opening as typed. Refuses what cannot be read of the site's place. */
export function openingTyped(filled: Filled, { id, sheet, units, zone }: OpeningAsked): Outcome<Opening> {
  const { text, all } = filled;
  const known = text("site");
  const site = known === "" && text("address") !== "" ? newSiteTyped(filled, units === "inch" ? "ft" : "m") : undefined;
  if (site && !site.ok) return site;
  const optional = Object.fromEntries(["ownNumber", "order", "invoice"].flatMap((name) => (text(name) === "" ? [] : [[name, text(name)]])));
  const [crew, kitCards] = [all("crew"), all("kitCard")];
  const begins = text("begins");
  const steps = sheet && begins !== "" ? stepsBefore(sheet.content, begins) : [];
  const readings = readingsTyped(filled, sheet?.content, units, zone) ?? [];
  return ok({
    id,
    title: text("title"),
    ...optional,
    ...(crew.length > 0 && { crew: [...crew] }),
    ...contactsTyped(filled),
    ...(known !== "" ? { site: { known } } : site ? { site: site.value } : {}),
    language: text("language") === "es" ? "es" : "en",
    ...(sheet && { sheetVersion: sheet.digest }),
    ...(kitCards.length > 0 && { kitCards: [...kitCards] }),
    ...designTyped(filled, sheet?.content),
    ...(readings.length > 0 && { readings: [...readings] }),
    ...(all("late").length > 0 && {
      late: { reason: text("lateReason"), ...(steps.length > 0 && { steps: [...steps], coverings: [...all("coveredBefore")] }) },
    }),
  });
}
