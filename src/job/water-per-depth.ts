import { type Uncertain, withSource } from "../doubt/index.ts";
import { fixedPerSi, inches } from "../units/index.ts";
import { expectedOf } from "./expected.ts";
import { derived } from "./limit-context.ts";
import type { JobState } from "./state.ts";

/** Water per depth of the basin, m³ per m (its area of water, m²), as the design has it; or the figures that it waits for. */
export function waterPerDepth(state: JobState): { readonly value: Uncertain } | { readonly unknown: readonly string[] } {
  const water = derived(expectedOf(state, undefined, "waterPerInch"));
  if (!("value" in water)) return { unknown: water.unknown ?? [] };
  const perInch = fixedPerSi("volume") * inches(1);
  return { value: withSource({ value: water.value / perInch, parts: new Map() }, "design:water-per-depth", (water.doubt ?? 0) / perInch) };
}
