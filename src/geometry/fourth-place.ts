import { combine, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { COLLINEAR_BELOW, checkPlaces, type Place } from "./places.ts";

type Four<T> = readonly [T, T, T, T];

const square = (n: number): number => n * n;

/** Twice the signed area of a triangle in plan, and whether it is a line. */
function triangle(p: Place, q: Place, r: Place): { readonly area: number; readonly flat: boolean } {
  const area = (q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y);
  const longest = Math.max(
    square(q.x - p.x) + square(q.y - p.y),
    square(r.x - q.x) + square(r.y - q.y),
    square(p.x - r.x) + square(p.y - r.y),
  );
  return { area, flat: Math.abs(area) < COLLINEAR_BELOW * longest };
}

/**
 * How far a fourth place of a rim lies off the plane of the other three, metres, signed: the gap under the corner that rocks.
 * Four places in order around. At the corners of a rectangle or the quarter points of a circle it is z1 − z2 + z3 − z4,
 * whichever the fourth is; elsewhere the gap depends on which, and the largest of the four is given. Positive when the first
 * place stands high; tilt does not enter. Refuses other than four places, two in one spot, three in one line.
 */
export function fourthPlace(places: readonly Place[]): Outcome<Uncertain> {
  const checked = checkPlaces(places, 4);
  if (!checked.ok) return checked;
  if (places.length > 4) return refuse("points-too-many", "points", { taken: places.length, most: 4 });
  const [p, q, r, s] = places as Four<Place>;
  const others = [triangle(q, r, s), triangle(p, r, s), triangle(p, q, s), triangle(p, q, r)] as const;
  if (others.some(({ flat }) => flat)) return refuse("points-collinear", "points");
  const weights = others.map(({ area }, i) => (i % 2 === 0 ? area : -area));
  const least = Math.min(...weights.map(Math.abs));
  const unit = Math.sign(weights[0] ?? 1) * least;
  return ok(combine([p, q, r, s].map(({ height }, i) => ({ times: (weights[i] ?? 0) / unit, of: height }))));
}
