import { add, certain, type NonEmpty, subtract, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { feet } from "../units/index.ts";
import { type Cautioned, cautioned } from "./caution.ts";

/** Slack beyond the basin's depth, metres: enough to lift the pump out and set it down beside the hole (own). */
export const SLACK_BEYOND_DEPTH: number = feet(3);

export interface CordReach extends Cautioned {
  /** Along the cord's way from outlet to pump, metres. */
  readonly way: Uncertain;
  /** The basin's depth plus 3 ft. */
  readonly slack: Uncertain;
  readonly needed: Uncertain;
  /** Cord less what is needed, metres; negative where it does not reach. A figure, never a verdict. */
  readonly left: Uncertain;
}

/**
 * How far a pump's own cord reaches: its length against the way it really takes, leg by leg, with slack of basin depth + 3 ft.
 * Metres throughout. No extension cord enters it. Refuses lengths that are not finite or not above zero; a leg may be zero.
 */
export function cordReach(cord: Uncertain, legs: NonEmpty<Uncertain>, basinDepth: Uncertain): Outcome<CordReach> {
  const bad =
    unfit("power/cord", "positive", { cord, basinDepth }) ??
    unfit("power/cord", "not negative", Object.fromEntries(legs.map((leg, i) => [`legs/${i}`, leg])));
  if (bad) return bad;
  const [first, ...others] = legs;
  const way = others.reduce(add, first);
  const slack = add(basinDepth, certain(SLACK_BEYOND_DEPTH));
  const needed = add(way, slack);
  return ok(cautioned({ way, slack, needed, left: subtract(cord, needed) }));
}
