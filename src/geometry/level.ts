import { add, combine, magnitude, mean, type NonEmpty, scale, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { type Plane, risesAcross } from "./plane.ts";

export type RimShape = "rectangular" | "round";

export interface OutOfLevel {
  /** Rise from the low to the high end over the basin's extent, along x and along y; positive where + is high. Metres. */
  readonly x: Uncertain;
  readonly y: Uncertain;
  /** From the lowest to the highest point of the rim, by the plane, metres, never negative. */
  readonly total: Uncertain;
  /** Unit vector in plan towards the low side; absent on a rim that is level to the last digit. */
  readonly low?: { readonly x: number; readonly y: number };
}

/** Corner to corner on a rectangular rim, both ways add; on a round one they stand at right angles to each other. */
function totalOf(x: Uncertain, y: Uncertain, shape: RimShape): Uncertain {
  if (shape === "rectangular") return add(magnitude(x), magnitude(y));
  const length = Math.sqrt(x.value * x.value + y.value * y.value);
  if (length === 0) return magnitude(x);
  return combine([
    { times: x.value / length, of: x },
    { times: y.value / length, of: y },
  ]);
}

/**
 * How far a rim is out of level each way, by the plane fitted to its places, over the basin's extents in metres (a round rim:
 * its diameter both ways). Refuses extents that are not positive.
 */
export function outOfLevel(plane: Plane, extentX: number, extentY: number, shape: RimShape = "rectangular"): Outcome<OutOfLevel> {
  for (const [name, extent] of Object.entries({ extentX, extentY })) {
    if (!Number.isFinite(extent)) return refuse("number-not-finite", name);
    if (extent <= 0) return refuse("number-not-positive", name);
  }
  const { x, y } = risesAcross(plane, extentX, extentY);
  const [b, c] = [plane.b.value, plane.c.value];
  const steepness = Math.sqrt(b * b + c * c);
  const level = { x, y, total: totalOf(x, y, shape) };
  return ok(steepness === 0 ? level : { ...level, low: { x: -b / steepness, y: -c / steepness } });
}

/**
 * Water that the tilt costs, cubic metres: it spills at the rim's lowest point, half the total below the rim's middle, over the
 * whole plan area. Tilted one way only this is plan area × half the tilt; both ways, half of |x| + |y| on a rectangular rim,
 * half of √(x² + y²) on a round one.
 */
export function waterLostToTilt(planArea: number, level: Pick<OutOfLevel, "total">): Outcome<Uncertain> {
  if (!Number.isFinite(planArea)) return refuse("number-not-finite", "planArea");
  if (planArea <= 0) return refuse("number-not-positive", "planArea");
  return ok(scale(level.total, planArea / 2));
}

/** How far the rim's mean height lies below finished grade, metres; positive below. Both heights from one mark or one line. */
export const rimBelowFinishedGrade = (rim: NonEmpty<Uncertain>, finishedGrade: Uncertain): Uncertain => subtract(finishedGrade, mean(rim));

/** How far a point went up (positive) or down since it was first read, metres; both heights over the same height mark. */
export const movedSince = (before: Uncertain, after: Uncertain): Uncertain => subtract(after, before);

/**
 * A lip's end-to-end difference, metres: the mean of the gap under the low end and the gap after turning the level end for end,
 * each signed by which end of the lip was low (the same end positive both times). The level's own error drops out.
 */
export const lipOutOfLevel = (gaps: readonly [Uncertain, Uncertain]): Uncertain => mean(gaps);
