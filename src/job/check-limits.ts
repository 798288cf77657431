import { readQuantity } from "../reading/index.ts";
import { instanceFor } from "./evaluation.ts";
import type { About } from "./fact.ts";
import { designFor } from "./instances.ts";
import { resolveLimit } from "./limits.ts";
import { askedOf } from "./measured.ts";
import { aboutOf, type Instance, seriesOf } from "./series.ts";
import { type Check, itemNamed, type ToleranceSheet } from "./sheet.ts";
import type { JobState } from "./state.ts";

export type Bounds = { readonly [B in "aim" | "lower" | "upper"]?: number };

/** The limits of a check as numbers, and what those that are none wait for. */
export interface LimitsFound {
  readonly bounds: Bounds;
  /** Figures of design or kit card. */
  readonly unknown: readonly string[];
  /** Readings. */
  readonly missing: readonly About[];
}

/** The last value that was typed for an instance, in the fixed unit of its kind. */
function typedValue(state: JobState, instance: Instance): number | undefined {
  const what = seriesOf(state, instance).counting.at(-1)?.what;
  if (typeof what?.typed !== "string" || typeof what.unit !== "string") return undefined;
  const read = readQuantity(what.typed, askedOf(instance.item, what.unit));
  return read.ok ? read.value.value : undefined;
}

export function limitsOf(
  state: JobState,
  sheet: ToleranceSheet,
  check: Check,
  tag: string | undefined,
  holds: string | undefined,
): LimitsFound {
  const figures = { design: designFor(state, holds), kitCards: state.kitCards };
  const bounds: { aim?: number; lower?: number; upper?: number } = {};
  const unknown = new Set<string>();
  const missing = new Map<string, About>();
  const instanceOf = (id: string): Instance | undefined => {
    const item = itemNamed(sheet, id);
    return item && instanceFor(item, tag);
  };
  const typed = (id: string): number | undefined => {
    const instance = instanceOf(id);
    return instance && typedValue(state, instance);
  };
  for (const bound of ["aim", "lower", "upper"] as const) {
    const limit = check[bound];
    if (limit === undefined) continue;
    const resolved = resolveLimit(limit, { figures, kind: check.kind, typed });
    if ("value" in resolved) bounds[bound] = resolved.value;
    else if ("unknown" in resolved) for (const figure of resolved.unknown) unknown.add(figure);
    else {
      const instance = instanceOf(resolved.missing);
      missing.set(resolved.missing, instance ? aboutOf(instance) : { item: resolved.missing });
    }
  }
  return { bounds, unknown: [...unknown], missing: [...missing.values()] };
}
