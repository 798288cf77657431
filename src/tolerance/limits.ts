import { type Outcome, ok, refuse } from "../outcome/index.ts";

export interface Limits {
  readonly aim?: number | undefined;
  readonly lower?: number | undefined;
  readonly upper?: number | undefined;
}

/** `guarded`: the whole band value ± U must lie inside. `simple`: the value alone counts. The company chooses per limit. */
export type DecisionRule = "guarded" | "simple";

/** Limits that can be judged by: at least one, all finite, lower <= aim <= upper. Otherwise a refusal that names them. */
export function checkLimits<L extends Limits>(limits: L, place: string): Outcome<L> {
  const { aim, lower, upper } = limits;
  const isUnfit = (limit: number | undefined): boolean => limit !== undefined && !Number.isFinite(limit);
  if (isUnfit(aim)) return refuse("number-not-finite", `${place}/aim`);
  if (isUnfit(lower)) return refuse("number-not-finite", `${place}/lower`);
  if (isUnfit(upper)) return refuse("number-not-finite", `${place}/upper`);
  if (lower === undefined && upper === undefined) return refuse("limits-missing", place);
  if (lower !== undefined && upper !== undefined && lower > upper) return refuse("limits-crossed", place, { lower, upper });
  if (aim !== undefined && lower !== undefined && aim < lower) return refuse("limits-crossed", `${place}/aim`, { lower, upper: aim });
  if (aim !== undefined && upper !== undefined && aim > upper) return refuse("limits-crossed", `${place}/aim`, { lower: aim, upper });
  return ok(limits);
}
