import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { checkLimits, type DecisionRule, type Limits } from "./limits.ts";

/**
 * Room from aim to limit, in standard uncertainties, with which work done exactly to its aim is called within in 95 cases of
 * 100. The reading scatters by 1.65 u to one side, 1.96 u to either; the guarded rule takes U = 2 u besides.
 */
export const roomFactors = { oneSided: 3.65, twoSided: 3.96, simple: 1.65 } as const;

export interface AimedLimits extends Limits {
  readonly aim: number;
  /** Standard uncertainty of what will be judged, unit of the limits. */
  readonly u: number;
  readonly rule: DecisionRule;
}

export interface Decidability {
  readonly decidable: boolean;
  /** From the aim to its nearer limit. */
  readonly room: number;
  /** The room that this uncertainty needs. */
  readonly needed: number;
  /** The largest standard uncertainty with which this room would do. */
  readonly largestUncertainty: number;
}

/** Whether honest work to the aim, read with this uncertainty, could satisfy the limits. Refuses as `judge` does. */
export function canBeDecided({ aim, lower, upper, u, rule }: AimedLimits): Outcome<Decidability> {
  if (!Number.isFinite(u)) return refuse("number-not-finite", "u");
  if (u < 0) return refuse("number-not-positive", "u");
  const limits = checkLimits({ aim, ...(lower !== undefined && { lower }), ...(upper !== undefined && { upper }) }, "limits");
  if (!limits.ok) return limits;
  const room = Math.min(
    upper === undefined ? Number.POSITIVE_INFINITY : upper - aim,
    lower === undefined ? Number.POSITIVE_INFINITY : aim - lower,
  );
  const twoSided = lower !== undefined && upper !== undefined;
  const factor = rule === "simple" ? roomFactors.simple : twoSided ? roomFactors.twoSided : roomFactors.oneSided;
  const needed = factor * u;
  return ok({ decidable: room >= needed, room, needed, largestUncertainty: room / factor });
}
