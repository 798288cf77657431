import { figureValue } from "./figures.ts";
import { cureTime, setTime } from "./glue-limits.ts";
import { derived, type LimitContext, type NamedLimit, type Resolved } from "./limit-context.ts";
import { rainOfADay } from "./rain-of-a-day.ts";
import type { LimitFigure, LimitFunction } from "./sheet.ts";
import { waterLeftInside } from "./water-to-leave.ts";

export { figureAt, type LimitContext, type Resolved } from "./limit-context.ts";

function sumOf(context: LimitContext, keys: readonly string[], of: (values: readonly number[]) => number): Resolved {
  const values = keys.map((key) => figureValue(context.figures, key, "length"));
  const unknown = keys.filter((_, i) => values[i] === undefined);
  return unknown.length > 0 ? { unknown } : { value: of(values as number[]) };
}

/** The closed list of what a limit can be besides a number. */
const named: Readonly<Record<LimitFunction, (context: LimitContext, limit: NamedLimit) => Resolved>> = {
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
  "set time": setTime,
  "cure time": cureTime,
  "standard socket depth": ({ expected }) => derived(expected("socketLeastSchedule40")),
  "expected draw-down": ({ expected }) => derived(expected("drawDown")),
  "expected flow": ({ expected }) => derived(expected("flow")),
  "rain of a day": rainOfADay,
  "water left inside": waterLeftInside,
};

export function resolveLimit(limit: LimitFigure, context: LimitContext): Resolved {
  if (typeof limit === "number") return { value: limit };
  const resolved = named[limit.function](context, limit);
  return "value" in resolved ? { ...resolved, value: resolved.value + (limit.offset ?? 0) } : resolved;
}
