import { certain, expanded, firstOrder, subtract, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { feet } from "../units/index.ts";

/**
 * 5 ft/s, metres per second: the guidance that friction tables for plastic pipe print (class 160 table's footnote; an engineering
 * site: generally to be avoided above it, although 7 to 10 occurs). A guidance, never a limit that holds.
 */
export const VELOCITY_GUIDANCE: number = feet(5);

export interface PipeVelocity {
  /** Metres per second. */
  readonly velocity: Uncertain;
  readonly guidance: number;
  readonly against: "below" | "above" | "too close to call";
  /** Flow at which this bore reaches the guidance, m³/s. */
  readonly flowAtGuidance: Uncertain;
}

/**
 * Mean velocity in a full pipe, v = Q / (π d²/4); in trade units v = 0.4085 q / d² (ft/s, gpm, in). `flow` m³/s, `bore` metres.
 * Source: the definition; the factor 0.4085 SEEN in a fire-protection table, 231/1728/60 / (π/4/144) = 0.408498.
 */
export function pipeVelocity(flow: Uncertain, bore: Uncertain): Outcome<PipeVelocity> {
  const bad = unfit("velocity", "not negative", { flow }) ?? unfit("velocity", "positive", { bore });
  if (bad) return bad;
  const area = (Math.PI * bore.value * bore.value) / 4;
  const value = flow.value / area;
  const velocity = firstOrder(value, [
    { times: 1 / area, of: flow },
    { times: (-2 * value) / bore.value, of: bore },
  ]);
  const room = subtract(certain(VELOCITY_GUIDANCE), velocity);
  const against = Math.abs(room.value) <= expanded(room) ? "too close to call" : room.value > 0 ? "below" : "above";
  const flowAtGuidance = firstOrder(VELOCITY_GUIDANCE * area, [{ times: (2 * VELOCITY_GUIDANCE * area) / bore.value, of: bore }]);
  return ok({ velocity, guidance: VELOCITY_GUIDANCE, against, flowAtGuidance });
}
