import { certain, rectangular, type Uncertain, withSource } from "../../doubt/index.ts";
import { readQuantity } from "../../reading/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import type { FigureSource } from "../figures.ts";
import { type Known, known, refusedFor, waiting } from "./known.ts";
import { type DesignFigure, designFigures, type FigureKey, type Instead, type NumberKey, type TextKey } from "./vocabulary.ts";

/** The figures of one design, each asked for by its key. */
export interface Stated {
  /** SI, with the doubt that a figure on paper has. */
  readonly number: (key: NumberKey) => Known<Uncertain>;
  readonly text: (key: TextKey) => Known<string>;
  /** The same design with other figures in the place of its own. */
  readonly instead: (figures: Instead) => Stated;
  /** The same design with a figure not stated. */
  readonly without: (key: NumberKey) => Stated;
}

interface Typed {
  readonly typed: string;
  readonly unit: string;
}

const isTyped = (figure: unknown): figure is Typed =>
  typeof figure === "object" && figure !== null && "typed" in figure && typeof figure.typed === "string";

/** What design or kit cards say of a figure; the design goes first, even where it says that it is unknown. */
function statedAt({ design, kitCards }: FigureSource, key: FigureKey): unknown {
  const places: readonly Readonly<Record<string, unknown>>[] = [design.figures, ...kitCards.map(({ facts }) => facts)];
  return places.find((figures) => Object.hasOwn(figures, key))?.[key];
}

/** Half-width of a figure on paper, SI: half the step it was typed in, or what its kind is worth, whichever is more. */
function halfWidthOf({ doubt }: DesignFigure, value: number, step: number): number {
  return Math.max(step / 2, doubt?.halfWidth ?? 0, (doubt?.share ?? 0) * Math.abs(value));
}

/** Wishes and names have no doubt: a wanted flow, a pipe's size, a count. */
const isExact = ({ kind, doubt }: DesignFigure): boolean => doubt === undefined || kind === "count";

function numberAt(source: FigureSource, key: NumberKey): Known<Uncertain> {
  const stated = statedAt(source, key);
  const asked: DesignFigure = designFigures[key];
  if (asked.kind === "text" || stated === undefined || stated === "unknown") return waiting(key);
  const unit = isTyped(stated) && typeof stated.unit === "string" ? stated.unit : (asked.unit?.inch ?? "");
  const typed = isTyped(stated) ? stated.typed : String(stated);
  const read = readQuantity(typed, { kind: asked.kind, unit, signed: true, place: `figures/${key}` });
  if (!read.ok) return refusedFor(read.refusal);
  const perSi = fixedPerSi(asked.kind);
  const value = read.value.value / perSi;
  if (isExact(asked)) return known(certain(value));
  const halfWidth = halfWidthOf(asked, value, read.value.resolution / perSi);
  return known(withSource(certain(value), `figure:${key}`, rectangular(halfWidth)));
}

function textAt(source: FigureSource, key: TextKey): Known<string> {
  const stated = statedAt(source, key);
  const text = isTyped(stated) ? stated.typed : stated;
  return typeof text === "string" && text !== "unknown" && text.trim() !== "" ? known(text) : waiting(key);
}

/** The figures of a design and its kit cards; `instead` goes before all of them. */
export function statedBy(source: FigureSource, instead: Instead = {}, left: readonly NumberKey[] = []): Stated {
  return {
    number: (key) => {
      const other = instead[key];
      return other !== undefined ? known(other) : left.includes(key) ? waiting(key) : numberAt(source, key);
    },
    text: (key) => textAt(source, key),
    instead: (figures) => statedBy(source, { ...instead, ...figures }, left),
    without: (key) => statedBy(source, Object.fromEntries(Object.entries(instead).filter(([name]) => name !== key)), [...left, key]),
  };
}
