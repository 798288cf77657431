import { unfit } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import type { JointTimes } from "./joint-times.ts";

/** Instants from which a glue session is met, milliseconds since 1970 UTC, as stored. Now is no input: the phone counts down. */
export interface CureClock {
  readonly setFrom: number;
  readonly cureFrom: number;
}

/** What each of the two releases. */
export const released = { set: ["handling", "backfill around the joint"], cure: ["water"] } as const;

function instant(place: string, milliseconds: number) {
  const bad = unfit(place, "not negative", { instant: milliseconds });
  if (bad) return bad;
  return Number.isSafeInteger(milliseconds) ? undefined : refuse("number-not-finite", `${place}/instant`);
}

/** The clock of one glue session from its last joint. Refuses an instant that is no stored one, and times below zero. */
export function cureClock(lastJointAt: number, times: Pick<JointTimes, "set" | "cure">): Outcome<CureClock> {
  const bad = instant("cure/lastJoint", lastJointAt) ?? unfit("cure", "not negative", { set: times.set, cure: times.cure });
  if (bad) return bad;
  return ok({ setFrom: lastJointAt + Math.ceil(times.set), cureFrom: lastJointAt + Math.ceil(times.cure) });
}

/** What else waits by its own label. */
export type LabelledProduct = "sealant" | "patch primer" | "foam";

export interface LabelClock {
  readonly product: LabelledProduct;
  readonly metFrom: number;
}

/** The same clock for what has no table: applied at, plus the time its label gives, both milliseconds. */
export function labelClock(product: LabelledProduct, appliedAt: number, label: number): Outcome<LabelClock> {
  const bad = instant(`cure/${product}`, appliedAt) ?? unfit(`cure/${product}`, "positive", { label });
  return bad ?? ok({ product, metFrom: appliedAt + Math.ceil(label) });
}
