import { rectangular, type Uncertain } from "../doubt/index.ts";
import { fixedPerSi, type QuantityKind } from "../units/index.ts";
import { cureTimes, designFigures, type Expectation, type ExpectationId } from "./design/index.ts";
import { type FigureSource, figureValue } from "./figures.ts";
import type { ChoiceMeaning, LimitFigure, LimitFunction } from "./sheet.ts";

/** What a limit waits for: figures of design or kit card, items, or both where either would do. */
interface Waiting {
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
  /** Those of these items that read a temperature. */
  readonly thermometers: (items: readonly string[]) => readonly string[];
  /** What the answers of these items mean; undefined where none of them was answered. */
  readonly meaning: (items: readonly string[]) => readonly ChoiceMeaning[] | undefined;
  readonly expected: (id: ExpectationId) => Expectation;
}

type Named = Exclude<LimitFigure, number>;

function sumOf(context: LimitContext, keys: readonly string[], of: (values: readonly number[]) => number): Resolved {
  const values = keys.map((key) => figureValue(context.figures, key, "length"));
  const unknown = keys.filter((_, i) => values[i] === undefined);
  return unknown.length > 0 ? { unknown } : { value: of(values as number[]) };
}

/** The figure that a refusal of the design's arithmetic is about: `figures/pumpCurve/2`. */
export const figureAt = (place: string): readonly string[] => (place.startsWith("figures/") ? place.split("/").slice(1, 2) : []);

/** A figure derived from the design, or the figures that it waits for. */
export function derived({ value, doubt = 0, needs = [], refusal }: Expectation): Resolved {
  if (value !== undefined) return { value, doubt: doubt / 2 };
  return { unknown: [...needs, ...(refusal ? figureAt(refusal.place) : [])] };
}

const jointKinds = ["rigid PVC", "flexible PVC", "ABS to PVC transition"] as const;

/**
 * Milliseconds from the last joint until water: the can's own time, else the company's table. What no table covers (flexible pipe, a
 * size or a temperature outside it) waits for the can; a figure that the office owes is named beside it.
 */
function cureTime(context: LimitContext, { item = "", items = [] }: Named): Resolved {
  const can = context.typed(item);
  if (can !== undefined) return { value: can };
  const means = context.meaning(items) ?? [];
  const kind = jointKinds.find((one) => means.includes(one));
  if (kind !== undefined && kind !== "rigid PVC") return { missing: [item] };
  const coldest = context.coldest(items);
  const times = cureTimes(context.figures, {
    ...(kind && { kind }),
    ...(coldest && { coldest }),
    ...(means.includes("dry air") && { humidity: "dry" }),
  });
  if (times.ok) return { value: times.value.cure };
  const { place } = times.refusal;
  const thermometers = place === "cure/coldest" && coldest === undefined ? context.thermometers(items) : [];
  const unknown = figureAt(place);
  return { missing: thermometers.length > 0 ? thermometers : [item], ...(unknown.length > 0 ? { unknown } : {}) };
}

/** How far down from the rim the water may stand inside, so that what is left holds the basin down: micrometres. */
function waterLeftInside(context: LimitContext, { items = [] }: Named): Resolved {
  const means = context.meaning(items);
  if (means === undefined) return { missing: items };
  const leave = derived(context.expected(means.includes("water outside") ? "leaveForWaterSeen" : "leaveForRain"));
  const depth = figureValue(context.figures, "basinDepth", "length");
  const unknown = [...("value" in leave ? [] : (leave.unknown ?? [])), ...(depth === undefined ? ["basinDepth"] : [])];
  if (!("value" in leave) || depth === undefined) return { unknown };
  // the depth to leave has its doubt in it already
  return { value: depth - leave.value, doubt: rectangular(designFigures.basinDepth.doubt?.halfWidth ?? 0) * fixedPerSi("length") };
}

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
    return value === undefined ? { missing: [item] } : { value };
  },
  "cure time": cureTime,
  "expected draw-down": ({ expected }) => derived(expected("drawDown")),
  "expected flow": ({ expected }) => derived(expected("flow")),
  "water left inside": waterLeftInside,
};

export function resolveLimit(limit: LimitFigure, context: LimitContext): Resolved {
  if (typeof limit === "number") return { value: limit };
  const resolved = named[limit.function](context, limit);
  return "value" in resolved ? { ...resolved, value: resolved.value + (limit.offset ?? 0) } : resolved;
}
