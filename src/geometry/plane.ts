import { combine, scale, subtract, total, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { COLLINEAR_BELOW, checkPlaces, type Place } from "./places.ts";

/** z = a + b x + c y, each with its doubt: all three are linear in the heights, so shared sources cancel where they must. */
export interface Plane {
  /** Height at the origin of the axes, metres. */
  readonly a: Uncertain;
  /** Rise per metre along x and along y. */
  readonly b: Uncertain;
  readonly c: Uncertain;
}

export interface PlaneFit {
  readonly plane: Plane;
  /** Height less plane at each place, in the order given, metres. */
  readonly residuals: readonly Uncertain[];
  /** Spread across the places over spread along them, 0 (in one line) to 1 (a square). Small means a weak tilt that way. */
  readonly conditioning: number;
}

interface Scatter {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Square root of the ratio of the two principal spreads. */
function conditioningOf({ xx, xy, yy }: Scatter): number {
  const determinant = xx * yy - xy * xy;
  const largest = (xx + yy + Math.sqrt((xx - yy) * (xx - yy) + 4 * xy * xy)) / 2;
  return determinant <= 0 ? 0 : Math.sqrt(determinant) / largest;
}

/** Height of the plane at x, y, metres. */
export const planeAt = ({ a, b, c }: Plane, x: number, y: number): Uncertain =>
  combine([
    { times: 1, of: a },
    { times: x, of: b },
    { times: y, of: c },
  ]);

interface Fitted extends Omit<PlaneFit, "residuals"> {
  /** The places about their middle. */
  readonly offsets: readonly { readonly dx: number; readonly dy: number; readonly height: Uncertain }[];
  readonly middle: Uncertain;
}

function fitted(places: readonly Place[]): Outcome<Fitted> {
  const checked = checkPlaces(places, 3);
  if (!checked.ok) return checked;
  const n = places.length;
  const x0 = total(places.map(({ x }) => x)) / n;
  const y0 = total(places.map(({ y }) => y)) / n;
  const offsets = places.map(({ x, y, height }) => ({ dx: x - x0, dy: y - y0, height }));
  const scatter = {
    xx: total(offsets.map(({ dx }) => dx * dx)),
    xy: total(offsets.map(({ dx, dy }) => dx * dy)),
    yy: total(offsets.map(({ dy }) => dy * dy)),
  };
  const conditioning = conditioningOf(scatter);
  if (conditioning < COLLINEAR_BELOW) return refuse("points-collinear", "points");
  const { xx, xy, yy } = scatter;
  const determinant = xx * yy - xy * xy;
  const b = combine(offsets.map(({ dx, dy, height }) => ({ times: (yy * dx - xy * dy) / determinant, of: height })));
  const c = combine(offsets.map(({ dx, dy, height }) => ({ times: (xx * dy - xy * dx) / determinant, of: height })));
  const middle = combine(places.map(({ height }) => ({ times: 1 / n, of: height })));
  const plane = {
    a: subtract(
      middle,
      combine([
        { times: x0, of: b },
        { times: y0, of: c },
      ]),
    ),
    b,
    c,
  };
  return ok({ plane, offsets, middle, conditioning });
}

/**
 * Plane through the places by least squares, all places alike. Refuses fewer than three, two in one spot, all in one line.
 * The order of the places changes nothing but the order of the residuals.
 */
export function fitPlane(places: readonly Place[]): Outcome<PlaneFit> {
  const fit = fitted(places);
  if (!fit.ok) return fit;
  const { plane, offsets, middle, conditioning } = fit.value;
  const residuals = offsets.map(({ dx, dy, height }) =>
    combine([
      { times: 1, of: height },
      { times: -1, of: middle },
      { times: -dx, of: plane.b },
      { times: -dy, of: plane.c },
    ]),
  );
  return ok({ plane, residuals, conditioning });
}

/** The plane alone, where nobody asks how far the places lie off it. Refuses as `fitPlane` does. */
export function planeThrough(places: readonly Place[]): Outcome<Plane> {
  const fit = fitted(places);
  return fit.ok ? ok(fit.value.plane) : fit;
}

/** Rise from one end to the other over `extent` metres along x and along y. */
export const risesAcross = ({ b, c }: Plane, extentX: number, extentY: number): { readonly x: Uncertain; readonly y: Uncertain } => ({
  x: scale(b, extentX),
  y: scale(c, extentY),
});
