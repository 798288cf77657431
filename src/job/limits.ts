import type { QuantityKind } from "../units/index.ts";
import { type FigureSource, figureValue } from "./figures.ts";
import type { LimitFigure, LimitFunction } from "./sheet.ts";

/** A limit as a number, or what it waits for. */
export type Resolved = { readonly value: number } | { readonly unknown: readonly string[] } | { readonly missing: string };

interface LimitContext {
  readonly figures: FigureSource;
  readonly kind: QuantityKind;
  /** The value that counts of an item, in the fixed unit of its kind. */
  readonly typed: (item: string) => number | undefined;
}

function sumOf(context: LimitContext, keys: readonly string[], of: (values: readonly number[]) => number): Resolved {
  const values = keys.map((key) => figureValue(context.figures, key, "length"));
  const unknown = keys.filter((_, i) => values[i] === undefined);
  return unknown.length > 0 ? { unknown } : { value: of(values as number[]) };
}

type Named = Exclude<LimitFigure, number>;

/** The closed list of what a limit can be besides a number. */
const named: Readonly<Record<LimitFunction, (context: LimitContext, limit: Named) => Resolved>> = {
  "design figure": (context, { figure = "" }) => {
    const value = figureValue(context.figures, figure, context.kind);
    return value === undefined ? { unknown: [figure] } : { value };
  },
  "rim below finished grade": (context) => sumOf(context, ["rimBelowGrade"], ([below = 0]) => below),
  "cord reach": (context) => sumOf(context, ["cordLength", "basinDepth"], ([cord = 0, depth = 0]) => cord - depth),
  "as typed": (context, { item = "" }) => {
    const value = context.typed(item);
    return value === undefined ? { missing: item } : { value };
  },
};

export function resolveLimit(limit: LimitFigure, context: LimitContext): Resolved {
  if (typeof limit === "number") return { value: limit };
  const resolved = named[limit.function](context, limit);
  return "value" in resolved ? { value: resolved.value + (limit.offset ?? 0) } : resolved;
}
