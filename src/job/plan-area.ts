import { fixedPerSi } from "../units/index.ts";
import { figureValue } from "./figures.ts";
import { designFor } from "./instances.ts";
import type { JobState } from "./state.ts";

/** Plan area of the basin, square metres: rectangular or round, from its figures under the design that holds; undefined where they are unknown. */
export function planArea(state: JobState, holds: string | undefined): number | undefined {
  const figures = { design: designFor(state, holds), kitCards: state.kitCards };
  const [length, width, diameter] = ["basinLength", "basinWidth", "basinDiameter"].map((key) => {
    const value = figureValue(figures, key, "length");
    return value === undefined ? undefined : value / fixedPerSi("length");
  });
  if (length !== undefined && width !== undefined) return length * width;
  return diameter === undefined ? undefined : (Math.PI / 4) * diameter * diameter;
}
