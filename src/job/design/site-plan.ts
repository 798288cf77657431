import type { Uncertain } from "../../doubt/index.ts";
import {
  ELLIPSE_95,
  errorEllipse,
  type MeasuredMarks,
  marksFromDistances,
  type PlanPoint,
  placeByTies,
  type SideSaid,
  type Tie,
  type TieConcern,
  type TiedPlace,
} from "../../geometry/index.ts";
import { type Outcome, ok, type Refusal } from "../../outcome/index.ts";
import { toInteger } from "../../tolerance/index.ts";
import { fixedPerSi } from "../../units/index.ts";

/** A buried point with its ties as they were read. */
export interface TiedPoint {
  readonly name: string;
  readonly ties: readonly Tie[];
  readonly side?: SideSaid;
}

/** A place in plan, micrometres: origin at the first mark, x towards the second, y to the left of it. */
export interface PlaceOnPlan {
  readonly x: number;
  readonly y: number;
  /** The ellipse that holds it in 95 cases of 100: half axes in micrometres, the larger one's direction in millionths. */
  readonly ellipse: { readonly major: number; readonly minor: number; readonly along: { readonly x: number; readonly y: number } };
}

export interface PlacedPoint extends PlaceOnPlan {
  readonly concerns: readonly TieConcern[];
  /** The pair of marks that crosses best at it, and its angle in whole degrees. */
  readonly crossing: { readonly first: string; readonly second: string; readonly degrees: number };
  /** Measured less computed, micrometres, by mark. */
  readonly residuals: readonly { readonly mark: string; readonly off: number }[];
}

export type PointOnPlan = { readonly name: string } & (
  | ({ readonly state: "placed" } & PlacedPoint)
  | {
      readonly state: "mirrored";
      readonly ask: { readonly from: string; readonly to: string };
      readonly left: PlacedPoint;
      readonly right: PlacedPoint;
    }
  | { readonly state: "refused"; readonly refusal: Refusal }
);

export interface SitePlan {
  readonly marks: readonly (PlaceOnPlan & { readonly name: string })[];
  readonly concerns: readonly { readonly mark: string; readonly concerns: readonly TieConcern[] }[];
  readonly points: readonly PointOnPlan[];
}

const perMetre = fixedPerSi("length");
const micrometres = (of: number): number => toInteger(of * perMetre);
const rounded = ({ value }: Uncertain): number => micrometres(value);

function onPlan(point: PlanPoint): PlaceOnPlan {
  const { semiMajor, semiMinor, direction } = errorEllipse(point);
  return {
    x: rounded(point.x),
    y: rounded(point.y),
    ellipse: {
      major: micrometres(ELLIPSE_95 * semiMajor),
      minor: micrometres(ELLIPSE_95 * semiMinor),
      along: { x: toInteger(direction.x * 1e6), y: toInteger(direction.y * 1e6) },
    },
  };
}

const placed = ({ point, concerns, residuals, crossing: { first, second, degrees } }: TiedPlace): PlacedPoint => ({
  ...onPlan(point),
  concerns,
  crossing: { first, second, degrees },
  residuals: residuals.map(({ mark, residual }) => ({ mark, off: rounded(residual) })),
});

/**
 * The plan of a site from the distances between its marks and the ties of its buried points. A point that two places fit stays
 * two until somebody says the side; one whose ties cannot be used says why, and the others are placed. Refuses marks that cannot be placed.
 */
export function sitePlan(marks: MeasuredMarks, points: readonly TiedPoint[]): Outcome<SitePlan> {
  const network = marksFromDistances(marks);
  if (!network.ok) return network;
  const known = network.value.marks;
  return ok({
    marks: known.map((mark) => ({ name: mark.name, ...onPlan(mark) })),
    concerns: network.value.concerns,
    points: points.map(({ name, ties, side }): PointOnPlan => {
      const place = placeByTies(known, ties, side);
      if (!place.ok) return { name, state: "refused", refusal: place.refusal };
      if (place.value.kind === "placed") return { name, state: "placed", ...placed(place.value) };
      const { ask, left, right } = place.value;
      return { name, state: "mirrored", ask, left: placed(left), right: placed(right) };
    }),
  });
}
