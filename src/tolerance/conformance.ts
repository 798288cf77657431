import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { normalDistribution } from "../statistics/index.ts";

const cumulative = (limit: number, y: number, u: number): number => (u === 0 ? (y <= limit ? 1 : 0) : normalDistribution((limit - y) / u));

const below = (limit: number, y: number, u: number): number => (u === 0 ? (y < limit ? 1 : 0) : normalDistribution((limit - y) / u));

/**
 * Chance that the true value lies between the limits when `y` was read with standard uncertainty `u` and errors are normal:
 * Φ((TU − y)/u) − Φ((TL − y)/u) (JCGM 106). For charts and the office only; nothing that holds rests on it.
 */
export function conformanceProbability(y: number, u: number, lower?: number, upper?: number): Outcome<number> {
  if (!Number.isFinite(y)) return refuse("number-not-finite", "value");
  if (!Number.isFinite(u)) return refuse("number-not-finite", "u");
  if (u < 0) return refuse("number-not-positive", "u");
  if (lower !== undefined && upper !== undefined && lower > upper) return refuse("limits-crossed", "limits", { lower, upper });
  if (Number.isNaN(lower) || Number.isNaN(upper)) return refuse("number-not-finite", "limits");
  const underUpper = upper === undefined ? 1 : cumulative(upper, y, u);
  const underLower = lower === undefined ? 0 : below(lower, y, u);
  return ok(underUpper - underLower);
}
