import type { FigureAsked, KitCard, ToleranceSheet } from "../../../job/index.ts";
import { pumpPoints } from "../../../job/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { tradeUnits, type UnitSymbol } from "../../../units/index.ts";

/** One fact as it is typed. */
export interface FactTyped {
  readonly text: string;
  readonly unit: string;
  readonly unknown: boolean;
}

export interface CardTyped {
  readonly id: string;
  readonly part: string;
  readonly notes: string;
  readonly source: string;
  readonly facts: Readonly<Record<string, FactTyped>>;
}

/** The figures that kit cards give, over all the company's sheets, each once. */
export function cardFigures(sheets: readonly ToleranceSheet[]): readonly FigureAsked[] {
  const all = sheets.flatMap((sheet) => sheet.figures.filter(({ from }) => from === "kit card"));
  return [...new Map(all.reverse().map((figure) => [figure.id, figure])).values()].reverse();
}

/** The units that a figure can be typed in, its own first. */
export function unitsOf({ kind, unit = "" }: Pick<FigureAsked, "kind" | "unit">): readonly string[] {
  if (kind === "text") return [];
  const same = (Object.keys(tradeUnits) as UnitSymbol[]).filter((symbol) => tradeUnits[symbol].kind === kind);
  return [...new Set([unit, ...(kind === "length" ? ["ft-in"] : []), ...same])];
}

const blank = (figure: FigureAsked): FactTyped => ({ text: "", unit: figure.unit ?? "", unknown: false });

/** A card as it stands under the hand; facts that no sheet asks for stay as they are. */
export function cardShown(card: KitCard | undefined, figures: readonly FigureAsked[]): CardTyped {
  const known = Object.entries(card?.facts ?? {}).map(([key, fact]): readonly [string, FactTyped] => {
    if (typeof fact === "object") return [key, { text: fact.typed, unit: fact.unit, unknown: false }];
    return [
      key,
      fact === "unknown"
        ? { text: "", unit: figures.find(({ id }) => id === key)?.unit ?? "", unknown: true }
        : { text: fact, unit: "", unknown: false },
    ];
  });
  const facts = Object.fromEntries([...figures.map((figure) => [figure.id, blank(figure)] as const), ...known]);
  return { id: card?.id ?? "", part: card?.part ?? "", notes: card?.notes ?? "", source: card?.source ?? "", facts };
}

/** Why a fact cannot be taken as it is typed. */
function faultOf(key: string, { text, unit }: FactTyped, figure: FigureAsked | undefined): Refusal | undefined {
  const place = `facts/${key}`;
  if (key === "pumpCurve") {
    const points = pumpPoints(text);
    return points.ok ? undefined : { ...points.refusal, place };
  }
  if (figure === undefined || figure.kind === "text") return undefined;
  const read = readQuantity(text, { kind: figure.kind, unit, signed: true, place });
  return read.ok ? undefined : read.refusal;
}

/** The card that was typed, and what of it cannot be read, by the fact. */
export function cardTyped(
  typed: CardTyped,
  figures: readonly FigureAsked[],
): { readonly card: KitCard; readonly faults: Readonly<Record<string, Refusal>> } {
  const said = Object.entries(typed.facts).filter(([, { text, unknown }]) => unknown || text.trim() !== "");
  const faults = said.flatMap(([key, fact]) => {
    const fault = fact.unknown
      ? undefined
      : faultOf(
          key,
          fact,
          figures.find(({ id }) => id === key),
        );
    return fault === undefined ? [] : [[key, fault] as const];
  });
  const facts = said.map(
    ([key, { text, unit, unknown }]) => [key, unknown ? "unknown" : unit === "" ? text.trim() : { typed: text.trim(), unit }] as const,
  );
  const { id, part, notes, source } = typed;
  return {
    card: {
      id: id.trim(),
      part: part.trim(),
      facts: Object.fromEntries(facts),
      ...(notes.trim() === "" ? {} : { notes: notes.trim() }),
      ...(source.trim() === "" ? {} : { source: source.trim() }),
    },
    faults: Object.fromEntries(faults),
  };
}
