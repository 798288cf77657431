import { add, certain, expanded, faultIn, product, quotient, refused, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { freeShare } from "./basin.ts";
import { ofFactor, waterFactors } from "./factors.ts";

/**
 * Depth of water outside that lifts a basin (Archimedes).
 *
 *   h_r = m / (ρ A)        h_l = h_r + (1 - s) h_i        h_i = (h_o - h_r) / (1 - s)
 *
 *   m    basin and what stands on or in it, kg (`mass`)
 *   ρ    water, kg/m³ (998 ± 3)
 *   A    plan area outside, m² (`area`)
 *   s    share of the inside taken up by blocks or stone (`displacedShare`; their weight is part of m)
 *   h_r  depth outside on which the empty basin rises, m (`risesOn`)
 *   h_l  the same with water h_i deep inside, m (`liftDepth`)
 *   h_o  water outside, above the basin's underside, m (`outside`)
 *
 * Range: upright walls, water free to get under the floor, nothing that grips the sides. Wet sand that moves is heavier than
 * water and lifts sooner. Source: Archimedes' principle. Expected accuracy: that of the weight, about 5 %.
 */
export interface FloatingBasin {
  readonly mass: Uncertain;
  readonly area: Uncertain;
  readonly displacedShare?: Uncertain;
  /** Underside to rim, m: above it water runs in before the basin lifts. */
  readonly rimHeight?: Uncertain;
}

interface Worked {
  readonly risesOn: Uncertain;
  readonly free: Uncertain;
}

function worked({ mass, area, displacedShare = certain(0), rimHeight }: FloatingBasin): Outcome<Worked> {
  const free = freeShare(displacedShare);
  const fault = faultIn("basin", {
    mass: [mass, "positive"],
    area: [area, "positive"],
    displacedShare: [displacedShare, "not negative"],
    freeShare: [free, "positive"],
    rimHeight: [rimHeight, "positive"],
  });
  if (fault) return refused(fault);
  return ok({ risesOn: quotient(mass, product(ofFactor(waterFactors.waterDensity), area)), free });
}

export interface Lift {
  readonly risesOn: Uncertain;
  readonly liftDepth: Uncertain;
  /** `fills first`: water runs in over the rim before it lifts the basin. Without a rim height always `lifts`. */
  readonly answer: "lifts" | "fills first";
}

/** Depth of water outside that lifts the basin, with water `inside` metres deep in it. */
export function liftDepth(basin: FloatingBasin, inside: Uncertain = certain(0)): Outcome<Lift> {
  const fault = faultIn("basin", { inside: [inside, "not negative"] });
  if (fault) return refused(fault);
  const base = worked(basin);
  if (!base.ok) return base;
  const { risesOn, free } = base.value;
  const depth = add(risesOn, product(free, inside));
  const answer = basin.rimHeight !== undefined && depth.value >= basin.rimHeight.value ? "fills first" : "lifts";
  return ok({ risesOn, liftDepth: depth, answer });
}

/** How much deeper the water outside may get before the basin lifts, m; negative: it lifts. */
export function roomBeforeLift(basin: FloatingBasin, outside: Uncertain, inside: Uncertain = certain(0)): Outcome<Uncertain> {
  const fault = faultIn("basin", { outside: [outside, "not negative"] });
  if (fault) return refused(fault);
  const lift = liftDepth(basin, inside);
  return lift.ok ? ok(subtract(lift.value.liftDepth, outside)) : lift;
}

export interface WaterToLeave {
  readonly risesOn: Uncertain;
  /** Depth inside at which the basin just rests, m; zero or below: it rests empty. */
  readonly inside: Uncertain;
  /** The depth to leave so that it rests whatever the doubt does, m: `inside` + U, never below zero. */
  readonly leaveAtLeast: number;
  /** That depth in water, m³ (plan area less what is displaced). */
  readonly volume: number;
  readonly answer: "none needed" | "leave water" | "full is not enough";
}

/** How much water to leave inside where it may stand `outside` metres deep against the basin. */
export function waterToLeave(basin: FloatingBasin, outside: Uncertain): Outcome<WaterToLeave> {
  const fault = faultIn("basin", { outside: [outside, "not negative"] });
  if (fault) return refused(fault);
  const base = worked(basin);
  if (!base.ok) return base;
  const { risesOn, free } = base.value;
  const inside = quotient(subtract(outside, risesOn), free);
  const leaveAtLeast = Math.max(0, inside.value + expanded(inside));
  const rim = basin.rimHeight?.value ?? Number.POSITIVE_INFINITY;
  const answer = leaveAtLeast === 0 ? "none needed" : leaveAtLeast > rim ? "full is not enough" : "leave water";
  const volume = leaveAtLeast * basin.area.value * free.value;
  return ok({ risesOn, inside, leaveAtLeast, volume, answer });
}
