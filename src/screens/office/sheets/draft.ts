import type { SheetList, ToleranceSheet } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { Refusal } from "../../../outcome/index.ts";

/** One thing of a list of the sheet, as it lies in its file. */
export type Thing = { readonly [field: string]: Json };

export const idOf = (thing: Thing): string => String(thing.id ?? thing.symptom ?? "");
export const thingsOf = (sheet: ToleranceSheet, list: SheetList): readonly Thing[] => (sheet[list] ?? []) as unknown as readonly Thing[];

const withList = (sheet: ToleranceSheet, list: SheetList, things: readonly Thing[]): ToleranceSheet =>
  ({ ...sheet, [list]: things }) as unknown as ToleranceSheet;

/** A thing with one field changed; `undefined`: the field is gone. */
export function withField(thing: Thing, field: string, value: Json | undefined): Thing {
  const { [field]: _, ...rest } = thing;
  if (value === undefined) return rest;
  // a field that was there keeps its place, so that nothing reads as changed that was not
  return field in thing ? { ...thing, [field]: value } : { ...rest, [field]: value };
}

export const changed = (sheet: ToleranceSheet, list: SheetList, id: string, field: string, value: Json | undefined): ToleranceSheet =>
  withList(
    sheet,
    list,
    thingsOf(sheet, list).map((thing) => (idOf(thing) === id ? withField(thing, field, value) : thing)),
  );

export const removed = (sheet: ToleranceSheet, list: SheetList, id: string): ToleranceSheet =>
  withList(
    sheet,
    list,
    thingsOf(sheet, list).filter((thing) => idOf(thing) !== id),
  );

export const added = (sheet: ToleranceSheet, list: SheetList, thing: Thing): ToleranceSheet =>
  withList(sheet, list, [...thingsOf(sheet, list), thing]);

/** Things that are moved among themselves: those of one step, or the whole list. */
const beside = (one: Thing, other: Thing): boolean => one.step === other.step;

/** The thing one place up or down among those beside it; at the end it stays. */
export function shifted(sheet: ToleranceSheet, list: SheetList, id: string, by: -1 | 1): ToleranceSheet {
  const things = [...thingsOf(sheet, list)];
  const from = things.findIndex((thing) => idOf(thing) === id);
  const thing = things[from];
  if (thing === undefined) return sheet;
  const places = things.flatMap((other, i) => (beside(thing, other) ? [i] : []));
  const to = places[places.indexOf(from) + by];
  const other = to === undefined ? undefined : things[to];
  if (to === undefined || other === undefined) return sheet;
  things[from] = other;
  things[to] = thing;
  return withList(sheet, list, list === "steps" ? numbered(things) : things);
}

/** Printed numbers follow the order; they begin where the first of them did. */
function numbered(steps: readonly Thing[]): readonly Thing[] {
  const first = Math.min(...steps.map(({ number }) => Number(number)));
  return steps.map((step, i) => (step.number === first + i ? step : { ...step, number: first + i }));
}

/** A name that nothing in the sheet has: `wet-check-4`. */
function freeName(sheet: ToleranceSheet, stem: string, between = "-"): string {
  const used = new Set(
    (Object.values(sheet) as readonly unknown[]).flatMap((list) => (Array.isArray(list) ? (list as Thing[]).map(idOf) : [])),
  );
  for (let i = 1; ; i += 1) if (!used.has(`${stem}${between}${i}`)) return `${stem}${between}${i}`;
}

export type NewKind = "picture" | "reading" | "answer" | "check" | Exclude<SheetList, "items" | "checks">;

const words = { en: "" };
const stems: Readonly<Record<Exclude<NewKind, "picture" | "reading" | "answer" | "check">, string>> = {
  steps: "step",
  oneOf: "ways",
  coverings: "covering",
  cautions: "caution",
  beforehand: "before",
  tagSets: "repeated",
  switches: "question",
  figures: "figure",
  instruments: "instrument",
  placings: "rests-on",
  callbacks: "callback",
};

/** A new thing, its words still to be written, and the list that it goes into. `step`: of items and checks. */
export function newThing(sheet: ToleranceSheet, kind: NewKind, step = ""): { readonly list: SheetList; readonly thing: Thing } {
  const common = (stem: string): Thing => ({ id: freeName(sheet, stem) });
  switch (kind) {
    case "picture":
      return { list: "items", thing: { ...common(step), step, kind, title: words, weight: "asked" } };
    case "reading": {
      const unit = { inch: "in", metric: "mm" };
      return { list: "items", thing: { ...common(step), step, kind, title: words, weight: "asked", quantity: "length", unit } };
    }
    case "answer":
      return { list: "items", thing: { ...common(step), step, kind, title: words, weight: "asked", choices: [] } };
    case "check": {
      const check = { step, title: words, function: "single value", items: [], kind: "length", weight: "asked" };
      return { list: "checks", thing: { ...common(step), ...check } };
    }
    case "steps":
      return {
        list: kind,
        thing: { ...common(stems[kind]), number: Math.max(-1, ...sheet.steps.map((one) => one.number)) + 1, title: words, cautions: [] },
      };
    case "cautions":
      return { list: kind, thing: { ...common(stems[kind]), text: words } };
    case "coverings":
      return { list: kind, thing: { ...common(stems[kind]), title: words, done: words, cautions: [] } };
    case "beforehand":
      return { list: kind, thing: { ...common(stems[kind]), title: words, steps: [] } };
    case "tagSets":
      return { list: kind, thing: { ...common(stems[kind]), title: words, least: 0, coverings: [] } };
    case "switches":
      return { list: kind, thing: { ...common(stems[kind]), title: words, standard: false } };
    case "figures":
      return {
        list: kind,
        thing: { id: freeName(sheet, "figure", ""), title: words, kind: "length", unit: "in", from: "design" },
      };
    case "instruments":
      return { list: kind, thing: { ...common(stems[kind]), title: words, resolution: 1588 } };
    case "placings":
      return { list: kind, thing: { ...common(stems[kind]), title: words, halfWidth: 1588 } };
    case "oneOf":
      return { list: kind, thing: { ...common(stems[kind]), step: sheet.steps[0]?.id ?? "", title: words, holds: "", groups: [] } };
    case "callbacks":
      return { list: kind, thing: { symptom: "noise", cautions: [], ask: [], look: [] } };
  }
}

/** Where in the sheet a fault lies: a thing of a list and its field; nothing of it where it is of the sheet itself. */
export interface FaultPlace {
  readonly list?: SheetList;
  readonly id?: string;
  /** First piece of the path inside the thing; empty: of the thing as a whole. */
  readonly field: string;
}

/** The place of a refusal, whether it names the thing by its id or by its place in the list. */
export function faultPlace(sheet: ToleranceSheet, { place }: Pick<Refusal, "place">): FaultPlace {
  const [, list = "", name = "", ...rest] = place.split("/");
  const things = (sheet as unknown as Readonly<Record<string, unknown>>)[list];
  if (!Array.isArray(things)) return { field: list };
  const own = thingsOf(sheet, list as SheetList);
  // an id may hold a slash no more than any name of the sheet, but a symptom may be several words
  const thing = own.find((one) => idOf(one) === name) ?? (/^\d+$/.test(name) ? own[Number(name)] : undefined);
  return { list: list as SheetList, ...(thing === undefined ? {} : { id: idOf(thing) }), field: rest[0] ?? "" };
}
