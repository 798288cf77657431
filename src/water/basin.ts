import { certain, combine, faultIn, product, quotient, refused, scale, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import type { Metres } from "../units/index.ts";

/**
 * Water that a basin holds.
 *
 *   V = A h (1 - s)     a = A (1 - s)     V_i = a h_i     V_t = a t / 2     V_u = V - V_i - V_t
 *
 *   V    water when full to the level rim, m³ (`gross`); rated: the maker's figure, then a = V / h
 *   A    plan area inside, m² (`area`)
 *   h    floor to rim, m (`depth`)
 *   s    share of the inside that blocks, stone or pump vault take up, 0 to below 1 (`displacedShare`)
 *   a    water per depth, m³ per m (`perDepth`)
 *   h_i  floor to the lowest water at which the intake draws none but water, m (`intakeHeight`; V_i `belowIntake`)
 *   t    rim out of level, lowest to highest point, m (`outOfLevel`; V_t `lostToTilt`)
 *   V_u  water that can be pumped, m³ (`usable`)
 *
 * Range: upright walls. Source: volume of a prism; own. Expected accuracy: that of the sizes; a rating for an inside with
 * curved corners and ribs is worth more than outer sizes.
 */
export type BasinSize =
  | { readonly kind: "rating"; readonly volume: Uncertain; readonly depth: Uncertain }
  | { readonly kind: "dimensions"; readonly area: Uncertain; readonly depth: Uncertain; readonly displacedShare: Uncertain };

export interface BasinWater {
  readonly gross: Uncertain;
  readonly perDepth: Uncertain;
}

/** 1 - share; for a share that blocks or stone take up. */
export const freeShare = (displaced: Uncertain): Uncertain =>
  combine([
    { times: 1, of: certain(1) },
    { times: -1, of: displaced },
  ]);

/** Gross volume (m³) and water per depth (m³ per m). Refuses sizes that are not above zero, and a displaced share outside 0 to below 1. */
export function basinWater(size: BasinSize): Outcome<BasinWater> {
  if (size.kind === "rating") {
    const fault = faultIn("basin", { volume: [size.volume, "positive"], depth: [size.depth, "positive"] });
    return fault ? refused(fault) : ok({ gross: size.volume, perDepth: quotient(size.volume, size.depth) });
  }
  const { area, depth, displacedShare } = size;
  const free = freeShare(displacedShare);
  const fault = faultIn("basin", {
    area: [area, "positive"],
    depth: [depth, "positive"],
    displacedShare: [displacedShare, "not negative"],
    freeShare: [free, "positive"],
  });
  if (fault) return refused(fault);
  const perDepth = product(area, free);
  return ok({ gross: product(perDepth, depth), perDepth });
}

export interface BasinLosses {
  readonly intakeHeight?: Uncertain;
  readonly outOfLevel?: Uncertain;
}

export interface UsableWater extends BasinWater {
  readonly belowIntake: Uncertain;
  readonly lostToTilt: Uncertain;
  /** Negative where the intake stands above what the low side of the rim holds: see `answer`. */
  readonly usable: Uncertain;
  readonly answer: "water above the intake" | "no water above the intake";
}

/** What of the water can be pumped, m³ each. What is not given counts as zero. Refuses a height or a tilt below zero. */
export function usableWater(water: BasinWater, { intakeHeight = certain(0), outOfLevel = certain(0) }: BasinLosses): Outcome<UsableWater> {
  const fault = faultIn("basin", {
    gross: [water.gross, "positive"],
    perDepth: [water.perDepth, "positive"],
    intakeHeight: [intakeHeight, "not negative"],
    outOfLevel: [outOfLevel, "not negative"],
  });
  if (fault) return refused(fault);
  const belowIntake = product(water.perDepth, intakeHeight);
  const lostToTilt = product(water.perDepth, scale(outOfLevel, 0.5));
  const usable = combine([
    { times: 1, of: water.gross },
    { times: -1, of: belowIntake },
    { times: -1, of: lostToTilt },
  ]);
  const answer = usable.value > 0 ? "water above the intake" : "no water above the intake";
  return ok({ ...water, belowIntake, lostToTilt, usable, answer });
}

/** Water over `depth` metres of it, m³: with `inches(1)` the gallons per inch of a basin. */
export function waterOverDepth(perDepth: Uncertain, depth: Metres): Outcome<Uncertain> {
  const fault = faultIn("basin", { perDepth: [perDepth, "positive"], depth: [depth, "not negative"] });
  return fault ? refused(fault) : ok(scale(perDepth, depth));
}
