import { scale, type Uncertain, unfitAt } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";

/** A place of a rim: where it lies in plan, metres in any axes of the basin's own, and its height, metres, up positive. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly height: Uncertain;
}

/** Two places nearer than this are one (own): no basin has corners so close. Metres. */
export const COINCIDENT_WITHIN = 0.01;

/** Spread across the places over spread along them, below which they are in one line (own). */
export const COLLINEAR_BELOW = 0.01;

/** Height of a place under the level line of its set-up: the rod hangs or stands down from the line. */
export const heightFromRod = (rodReading: Uncertain): Uncertain => scale(rodReading, -1);

const square = (n: number): number => n * n;

/** Places that can carry a plane: at least `least`, finite, no two in one spot. */
export function checkPlaces<P extends Place>(places: readonly P[], least: number): Outcome<readonly P[]> {
  if (places.length < least) return refuse("points-too-few", "points", { taken: places.length, least });
  for (const [i, place] of places.entries()) {
    const [x, y, height] = [place.x, place.y, place.height].map((figure) => unfitAt(`points/${i}`, "finite", figure));
    const bad = x ?? y ?? height;
    if (bad) return bad;
    const twin = places.findIndex((other, j) => j < i && square(other.x - place.x) + square(other.y - place.y) < square(COINCIDENT_WITHIN));
    if (twin >= 0) return refuse("points-coincident", `points/${i}`, { first: twin + 1, second: i + 1 });
  }
  return ok(places);
}
