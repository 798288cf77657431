import { faultIn, product, quotient, refused, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { type FloatingBasin, type WaterToLeave, waterToLeave } from "./float.ts";

/** When a basin floats. Heights are metres above the basin's underside. The choice of depth on each occasion is our own. */
export const floatOccasions = ["water seen in the hole", "rain before backfill", "washing in", "winter emptying"] as const;
export type FloatOccasion = (typeof floatOccasions)[number];

export interface OutsideFacts {
  /** Water standing in the hole now. */
  readonly waterSeen?: Uncertain;
  /** Rain to be expected while the hole is open (depth, m), the area that drains into the hole and the hole's own, m². */
  readonly rain?: { readonly depth: Uncertain; readonly catchArea: Uncertain; readonly holeArea: Uncertain };
  /** Top of the layer that is washed in: the water stands that high until it has drained. */
  readonly layerTop?: Uncertain;
  /** Highest ground water of the year. Not known: up to the rim, the worst that can lift it. */
  readonly groundWater?: Uncertain;
}

/** Rain in an open hole gathers round the basin: depth × area drained into it ÷ area left beside the basin, metres. */
export function rainInTheHole(rain: NonNullable<OutsideFacts["rain"]>, basinArea: Uncertain): Outcome<Uncertain> {
  const gap = subtract(rain.holeArea, basinArea);
  const fault = faultIn("hole", {
    rain: [rain.depth, "not negative"],
    catchArea: [rain.catchArea, "positive"],
    holeArea: [rain.holeArea, "positive"],
    basinArea: [basinArea, "positive"],
    areaBesideBasin: [gap, "positive"],
  });
  return fault ? refused(fault) : ok(quotient(product(rain.depth, rain.catchArea), gap));
}

export type OccasionAnswer =
  | ({ readonly occasion: FloatOccasion; readonly outside: Uncertain } & WaterToLeave)
  | { readonly occasion: FloatOccasion; readonly answer: "not known"; readonly missing: keyof OutsideFacts | "rimHeight" };

type Outside = { readonly depth: Outcome<Uncertain> } | { readonly missing: keyof OutsideFacts | "rimHeight" };

const stated = (depth: Uncertain | undefined, name: keyof OutsideFacts | "rimHeight"): Outside =>
  depth === undefined ? { missing: name } : { depth: ok(depth) };

function outsideOn(occasion: FloatOccasion, basin: FloatingBasin, facts: OutsideFacts): Outside {
  switch (occasion) {
    case "water seen in the hole":
      return stated(facts.waterSeen, "waterSeen");
    case "rain before backfill":
      return facts.rain === undefined ? { missing: "rain" } : { depth: rainInTheHole(facts.rain, basin.area) };
    case "washing in":
      return stated(facts.layerTop, "layerTop");
    case "winter emptying":
      return stated(facts.groundWater ?? basin.rimHeight, "rimHeight");
  }
}

/** How much water to leave inside on the occasion, or which figure is missing to say so. */
export function floatOn(occasion: FloatOccasion, basin: FloatingBasin, facts: OutsideFacts): Outcome<OccasionAnswer> {
  const outside = outsideOn(occasion, basin, facts);
  if ("missing" in outside) return ok({ occasion, answer: "not known", missing: outside.missing });
  if (!outside.depth.ok) return outside.depth;
  const leave = waterToLeave(basin, outside.depth.value);
  return leave.ok ? ok({ occasion, outside: outside.depth.value, ...leave.value }) : leave;
}
