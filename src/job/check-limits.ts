import type { Uncertain } from "../doubt/index.ts";
import { instanceFor } from "./evaluation.ts";
import { expectedOf, sourceFor } from "./expected.ts";
import type { About } from "./fact.ts";
import { type LimitContext, resolveLimit } from "./limits.ts";
import { meaningOf } from "./meaning.ts";
import { readingsOf, typedReading } from "./measured.ts";
import { aboutOf, type Instance, seriesOf } from "./series.ts";
import { type Check, itemNamed, type ToleranceSheet } from "./sheet.ts";
import type { JobState } from "./state.ts";

export type Bounds = { readonly [B in "aim" | "lower" | "upper"]?: number };

/** The limits of a check as numbers, and what those that are none wait for. */
export interface LimitsFound {
  readonly bounds: Bounds;
  /** Standard uncertainty of limits that are derived from the design, the largest of them, fixed unit. */
  readonly doubt?: number;
  /** Figures of design or kit card. */
  readonly unknown: readonly string[];
  /** Readings. */
  readonly missing: readonly About[];
}

/** The last value that was typed for an instance, in the fixed unit of its kind. */
function typedValue(state: JobState, instance: Instance): number | undefined {
  const fact = seriesOf(state, instance).counting.at(-1);
  if (typeof fact?.what.typed !== "string" || typeof fact.what.unit !== "string") return undefined;
  const read = typedReading(instance.item, fact);
  return read.ok ? read.value.value : undefined;
}

export function limitsOf(
  state: JobState,
  sheet: ToleranceSheet,
  check: Check,
  tag: string | undefined,
  holds: string | undefined,
): LimitsFound {
  const bounds: { aim?: number; lower?: number; upper?: number } = {};
  const unknown = new Set<string>();
  const missing = new Map<string, About>();
  let doubt: number | undefined;
  const instanceOf = (id: string): Instance | undefined => {
    const item = itemNamed(sheet, id);
    return item && instanceFor(item, tag);
  };
  const instancesOf = (ids: readonly string[]): readonly Instance[] => ids.flatMap((id) => instanceOf(id) ?? []);
  const context: LimitContext = {
    figures: sourceFor(state, holds),
    kind: check.kind,
    typed: (id) => {
      const instance = instanceOf(id);
      return instance && typedValue(state, instance);
    },
    coldest: (ids) =>
      instancesOf(ids)
        .filter(({ item }) => item.quantity === "temperature")
        .flatMap((instance) => readingsOf(state, instance).map(({ value }) => value))
        .reduce<Uncertain | undefined>(
          (coldest, value) => (coldest === undefined || value.value < coldest.value ? value : coldest),
          undefined,
        ),
    reading: (ids, kind) => ids.filter((id) => itemNamed(sheet, id)?.quantity === kind),
    ...(sheet.cureTable && { cureTable: sheet.cureTable }),
    meaning: (ids) => meaningOf(state, instancesOf(ids)),
    expected: (id) => expectedOf(state, holds, id),
  };
  for (const bound of ["aim", "lower", "upper"] as const) {
    const limit = check[bound];
    if (limit === undefined) continue;
    const resolved = resolveLimit(limit, context);
    if ("value" in resolved) {
      bounds[bound] = resolved.value;
      if (bound !== "aim" && resolved.doubt !== undefined) doubt = Math.max(doubt ?? 0, resolved.doubt);
      continue;
    }
    for (const figure of resolved.unknown ?? []) unknown.add(figure);
    for (const id of resolved.missing ?? []) {
      const instance = instanceOf(id);
      missing.set(id, instance ? aboutOf(instance) : { item: id });
    }
  }
  return { bounds, ...(doubt === undefined ? {} : { doubt }), unknown: [...unknown], missing: [...missing.values()] };
}
