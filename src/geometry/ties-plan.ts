import { firstOrder, total, type Uncertain, unfitAt } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { ELLIPSE_95_SQUARED } from "./ties-chi-square.ts";

/** A point in plan, metres in the axes of the marks: origin at the first mark, x towards the second, y to the left of it. */
export interface PlanPoint {
  readonly x: Uncertain;
  readonly y: Uncertain;
}

/** Plain coordinates or a direction. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}

export interface Mark extends PlanPoint {
  readonly name: string;
}

/** One level distance from a mark to the point, metres. A tape held on a slope: `levelDistance` first. */
export interface Tie {
  readonly mark: string;
  readonly distance: Uncertain;
}

/** Left or right for someone who stands at one mark and looks to another. */
export type Side = "left" | "right";
export interface SideSaid {
  readonly from: string;
  readonly to: string;
  readonly side: Side;
}

export const planVector = ({ x, y }: PlanPoint): Vector => ({ x: x.value, y: y.value });
export const apart = (a: Vector, b: Vector): number => Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));

/** Which side of the line `from` → `to` a place lies; on the line counts as left. */
export const sideOf = (from: Vector, to: Vector, at: Vector): Side =>
  (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x) >= 0 ? "left" : "right";

/** Distance of two points in plan with its doubt, metres; to first order, hence refused for points in one spot. */
export function planDistance(a: PlanPoint, b: PlanPoint): Outcome<Uncertain> {
  const [bad] = [a.x, a.y, b.x, b.y].flatMap((figure) => unfitAt("points", "finite", figure) ?? []);
  if (bad) return bad;
  const length = apart(planVector(a), planVector(b));
  // finite places may lie too far apart for a square
  if (!Number.isFinite(length)) return refuse("number-not-finite", "points");
  if (length === 0) return refuse("points-coincident", "points", { first: 1, second: 2 });
  const [ux, uy] = [(b.x.value - a.x.value) / length, (b.y.value - a.y.value) / length];
  return ok(
    firstOrder(length, [
      { times: ux, of: b.x },
      { times: uy, of: b.y },
      { times: -ux, of: a.x },
      { times: -uy, of: a.y },
    ]),
  );
}

/**
 * Level distance under a tape that was held on a slope: √(slope² − rise²), metres, to first order. `rise` is the difference in
 * height of the tape's two ends, either sign. Refuses a rise that is as long as the tape.
 */
export function levelDistance(slope: Uncertain, rise: Uncertain): Outcome<Uncertain> {
  const bad = unfitAt("slope", "positive", slope) ?? unfitAt("slope", "finite", rise);
  if (bad) return bad;
  const square = (slope.value - rise.value) * (slope.value + rise.value);
  if (square <= 0) return refuse("ties-rise-too-great", "rise");
  const value = Math.sqrt(square);
  return ok(
    firstOrder(value, [
      { times: slope.value / value, of: slope },
      { times: -rise.value / value, of: rise },
    ]),
  );
}

/** The standard error ellipse of a point: where it lies in 39.35 cases of 100. Times `ELLIPSE_95`: in 95 of 100. */
export interface ErrorEllipse {
  /** Standard uncertainty along the worst and the best direction, metres. */
  readonly semiMajor: number;
  readonly semiMinor: number;
  /** Unit vector along the worst direction, upper half plane. */
  readonly direction: Vector;
}

/** √5.99146: from the standard ellipse to the one that holds the point in 95 cases of 100 (two dimensions). */
export const ELLIPSE_95 = Math.sqrt(ELLIPSE_95_SQUARED);

/** Covariance of two values over the sources that they share, product of their units. */
function covariance(a: Uncertain, b: Uncertain): number {
  const products: number[] = [];
  for (const [source, part] of a.parts) {
    const other = b.parts.get(source);
    if (other !== undefined) products.push(part * other);
  }
  return total(products);
}

/** Only + − × ÷ and square roots: the axis comes as a vector, not as an angle. Never refuses; a certain point has no axes. */
export function errorEllipse({ x, y }: PlanPoint): ErrorEllipse {
  const [xx, xy, yy] = [covariance(x, x), covariance(x, y), covariance(y, y)];
  const spread = Math.sqrt(((xx - yy) / 2) * ((xx - yy) / 2) + xy * xy);
  const largest = (xx + yy) / 2 + spread;
  if (largest === 0) return { semiMajor: 0, semiMinor: 0, direction: { x: 1, y: 0 } };
  const along = xx >= yy ? { x: (xx - yy) / 2 + spread, y: xy } : { x: xy, y: (yy - xx) / 2 + spread };
  const length = Math.sqrt(along.x * along.x + along.y * along.y);
  const round = length <= largest * 1e-12;
  const up = along.y < 0 || (along.y === 0 && along.x < 0) ? -1 : 1;
  return {
    semiMajor: Math.sqrt(largest),
    semiMinor: Math.sqrt(Math.max(0, (xx * yy - xy * xy) / largest)),
    direction: round ? { x: 1, y: 0 } : { x: (up * along.x) / length, y: (up * along.y) / length },
  };
}
