export { conformanceProbability } from "./conformance.ts";
export { type AimedLimits, canBeDecided, type Decidability, roomFactors } from "./decidable.ts";
export { type Judgement, judge, type MeasuredAgainstLimits, type MeasuredVerdict } from "./judge.ts";
export { leaveCore, MICROMETRES_PER_METRE, MILLILITRES_PER_CUBIC_METRE, type StoredMeasurement, toInteger } from "./leave-core.ts";
export { checkLimits, type DecisionRule, type Limits } from "./limits.ts";
