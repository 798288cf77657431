import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { checkLimits, type DecisionRule, type Limits } from "./limits.ts";

export type MeasuredVerdict = "within" | "outside" | "too close to call";

/** Integers in the fixed unit of the quantity (lengths: micrometres), as they left the core. */
export interface MeasuredAgainstLimits extends Limits {
  readonly value: number;
  /** U = 2 u, never negative. */
  readonly expanded: number;
  readonly rule: DecisionRule;
}

export interface Judgement {
  readonly verdict: MeasuredVerdict;
  /** Where the value itself lies. On the limit is inside. */
  readonly side: "inside" | "outside";
  readonly nearest: "lower" | "upper";
  /** From the value to its nearest limit, never negative. */
  readonly by: number;
  /** Only when too close to call: the largest U with which this same value would have been called. */
  readonly needed?: number;
}

/** Signed room to the nearest limit: negative when the value is past it. */
function nearestLimit(value: number, { lower, upper }: Limits): { room: number; nearest: "lower" | "upper" } {
  const above = upper === undefined ? Number.POSITIVE_INFINITY : upper - value;
  const below = lower === undefined ? Number.POSITIVE_INFINITY : value - lower;
  return above <= below ? { room: above, nearest: "upper" } : { room: below, nearest: "lower" };
}

function verdictOf(room: number, U: number): MeasuredVerdict {
  if (room >= U) return "within";
  return -room > U ? "outside" : "too close to call";
}

/** Integers are what a verdict is taken from; anything else that is finite comes from a caller who forgot `leaveCore`. */
function assertWhole(name: string, figure: number | undefined): void {
  if (figure !== undefined && !Number.isSafeInteger(figure)) throw new TypeError(`${name} must be a whole number of fixed units`);
}

/**
 * The verdict on one measured value. Guarded: value ± U wholly inside the limits is `within`, wholly outside is `outside`,
 * else `too close to call`; a band that just touches its limit from inside is within. Simple: inside or on the limit is
 * `within`, else `outside`. Refuses figures that are not finite, a negative U, crossed limits, an aim outside them, no limit.
 */
export function judge({ value, expanded, rule, aim, lower, upper }: MeasuredAgainstLimits): Outcome<Judgement> {
  if (!Number.isFinite(value)) return refuse("number-not-finite", "value");
  if (!Number.isFinite(expanded)) return refuse("number-not-finite", "expanded");
  if (expanded < 0) return refuse("number-not-positive", "expanded");
  const limits = checkLimits({ aim, lower, upper }, "limits");
  if (!limits.ok) return limits;
  assertWhole("value", value);
  assertWhole("expanded", expanded);
  assertWhole("aim", aim);
  assertWhole("lower", lower);
  assertWhole("upper", upper);
  const { room, nearest } = nearestLimit(value, limits.value);
  const verdict = verdictOf(room, rule === "simple" ? 0 : expanded);
  const side = room >= 0 ? "inside" : "outside";
  const by = Math.abs(room);
  // Outside is called only when the band is clear of the limit, hence one unit less.
  const needed = side === "inside" ? by : by - 1;
  return ok(verdict === "too close to call" ? { verdict, side, nearest, by, needed } : { verdict, side, nearest, by });
}
