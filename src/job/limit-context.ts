import type { Uncertain } from "../doubt/index.ts";
import type { CementTableName } from "../plumbing/index.ts";
import type { QuantityKind } from "../units/index.ts";
import type { Expectation, ExpectationId } from "./design/index.ts";
import type { FigureSource } from "./figures.ts";
import type { ChoiceMeaning, LimitFigure } from "./sheet.ts";

/** What a limit waits for: figures of design or kit card, items, or both where either would do. */
export interface Waiting {
  readonly unknown?: readonly string[];
  readonly missing?: readonly string[];
}

/** A limit as a number with, where it is derived from the design, its own standard uncertainty; or what it waits for. */
export type Resolved = { readonly value: number; readonly doubt?: number } | Waiting;

export interface LimitContext {
  readonly figures: FigureSource;
  readonly kind: QuantityKind;
  /** The value that counts of an item, in the fixed unit of its kind. */
  readonly typed: (item: string) => number | undefined;
  /** The lowest temperature read for any of these items, °C. */
  readonly coldest: (items: readonly string[]) => Uncertain | undefined;
  /** Those of these items that read a value of this kind. */
  readonly reading: (items: readonly string[], kind: QuantityKind) => readonly string[];
  /** The company's table of set and cure times, where it chose one. */
  readonly cureTable?: CementTableName;
  /** What the answers of these items mean; undefined where none of them was answered. */
  readonly meaning: (items: readonly string[]) => readonly ChoiceMeaning[] | undefined;
  readonly expected: (id: ExpectationId) => Expectation;
}

/** A limit that is no number. */
export type NamedLimit = Exclude<LimitFigure, number>;

/** The figure that a refusal of the design's arithmetic is about: `figures/pumpCurve/2`. */
export const figureAt = (place: string): readonly string[] => (place.startsWith("figures/") ? place.split("/").slice(1, 2) : []);

/** A figure derived from the design, or the figures that it waits for. */
export function derived({ value, doubt = 0, needs = [], refusal }: Expectation): Resolved {
  if (value !== undefined) return { value, doubt: doubt / 2 };
  return { unknown: [...needs, ...(refusal ? figureAt(refusal.place) : [])] };
}
