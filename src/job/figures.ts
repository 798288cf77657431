import { readQuantity } from "../reading/index.ts";
import type { QuantityKind } from "../units/index.ts";
import type { Typed } from "./fact.ts";
import { oncePer } from "./once-per.ts";
import type { FigureAsked, ToleranceSheet } from "./sheet.ts";

/** A kit card as the company filled it: facts of one bought part from its own paper. Unknown is allowed and named. */
export interface KitCard {
  readonly id: string;
  readonly part: string;
  readonly facts: Readonly<Record<string, Typed | "unknown" | string>>;
  readonly notes?: string;
  readonly source?: string;
}

/** The design in force at one moment of the work. */
export interface Design {
  readonly figures: Readonly<Record<string, Typed | "unknown">>;
  readonly switches: Readonly<Record<string, boolean>>;
}

export interface FigureSource {
  readonly design: Design;
  readonly kitCards: readonly KitCard[];
}

const isTyped = (figure: unknown): figure is Typed =>
  typeof figure === "object" && figure !== null && "typed" in figure && "unit" in figure
    ? typeof figure.typed === "string" && typeof figure.unit === "string"
    : false;

/** As somebody typed it: a design and a card are read for every check that rests on them. */
const readFigure = oncePer(({ typed, unit }: Typed, kind: QuantityKind) => readQuantity(typed, { kind, unit, signed: true }));

/**
 * A figure of the design or, where the design is silent, of a kit card, as an integer in the fixed unit of `kind`.
 * `undefined` where nobody said it, or where it is named as unknown.
 */
export function figureValue(source: FigureSource, key: string, kind: QuantityKind): number | undefined {
  const places = [source.design.figures, ...source.kitCards.map((card) => card.facts)];
  const typed: unknown = places.find((figures) => Object.hasOwn(figures, key))?.[key];
  if (!isTyped(typed)) return undefined;
  const read = readFigure(typed, kind);
  return read.ok ? read.value.value : undefined;
}

export function figureAsked(sheet: ToleranceSheet, key: string): FigureAsked | undefined {
  return sheet.figures.find((figure) => figure.id === key);
}

export function switchOn(sheet: ToleranceSheet, design: Design, id: string): boolean {
  return (
    (Object.hasOwn(design.switches, id) ? design.switches[id] : undefined) ?? sheet.switches.find((s) => s.id === id)?.standard ?? false
  );
}

/** Whether an item or check is asked under this design. */
export function isAsked(
  sheet: ToleranceSheet,
  design: Design,
  switches: { readonly on?: readonly string[]; readonly off?: readonly string[] } | undefined,
): boolean {
  if (switches === undefined) return true;
  return (switches.on ?? []).every((id) => switchOn(sheet, design, id)) && (switches.off ?? []).every((id) => !switchOn(sheet, design, id));
}
