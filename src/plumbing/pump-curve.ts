import { certain, rectangular, type Uncertain, unfit, withSource } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { curveAt, type MonotoneCurve, monotoneCurve } from "./monotone.ts";

/** One line of a kit card: at this head the pump gives this flow. m³/s and metres. */
export interface PumpPoint {
  readonly flow: number;
  readonly head: number;
}

/** A piece where the head falls at one flow: pumps with a limiter, and cards that round. */
export interface VerticalPiece {
  readonly flow: number;
  readonly upper: number;
  readonly lower: number;
}

/** How far a pump may lie from its card, as shares (half-widths of rectangles). */
export interface CurveTolerance {
  readonly head: number;
  readonly flow: number;
}

/**
 * ISO 9906 class 2: head ±5 %, flow ±8 % (SEEN, quoted in a pump maker's lexicon). That a small pump's card keeps to it is an
 * assumption of our own: such cards name no class.
 */
export const CARD_TOLERANCE: CurveTolerance = { head: 0.05, flow: 0.08 };

export interface PumpCurve {
  /** In order of flow; at one flow the higher head first. */
  readonly points: readonly PumpPoint[];
  /** Smooth stretches between vertical pieces, in order of flow; x is flow, y is head. */
  readonly stretches: readonly MonotoneCurve[];
  readonly vertical: readonly VerticalPiece[];
  /** Head at no flow; absent where the card does not give it. */
  readonly shutOff?: number;
  /** The last point that the card gives: run-out where its head is 0. */
  readonly last: PumpPoint;
  readonly tolerance: CurveTolerance;
}

const byFlow = (a: PumpPoint, b: PumpPoint): number => a.flow - b.flow || b.head - a.head;

function pointsFault(points: readonly PumpPoint[]) {
  if (points.length < 2) return refuse("pump-curve-too-few", "pumpCurve", { taken: points.length, least: 2 });
  for (const [i, { flow, head }] of points.entries()) {
    const bad = unfit(`pumpCurve/${i}`, "not negative", { flow, head });
    if (bad) return bad;
  }
  const sorted = [...points].sort(byFlow);
  const twin = sorted.findIndex(({ flow, head }, i) => sorted[i - 1]?.flow === flow && sorted[i - 1]?.head === head);
  if (twin > 0) return refuse("pump-curve-point-twice", `pumpCurve/${points.indexOf(sorted[twin] as PumpPoint)}`);
  const [first, last] = [sorted[0] as PumpPoint, sorted[sorted.length - 1] as PumpPoint];
  return last.head >= first.head ? refuse("pump-curve-rises", "pumpCurve") : undefined;
}

/** Points gathered by flow, each group with its highest and its lowest head. */
function byEqualFlow(sorted: readonly PumpPoint[]): VerticalPiece[] {
  const groups = new Map<number, number[]>();
  for (const { flow, head } of sorted) groups.set(flow, [...(groups.get(flow) ?? []), head]);
  return [...groups].map(([flow, heads]) => ({ flow, upper: Math.max(...heads), lower: Math.min(...heads) }));
}

/** A stretch ends at the upper end of a vertical piece, and the next begins at its lower end. */
function stretchesOf(groups: readonly VerticalPiece[]): MonotoneCurve[] {
  const stretches: { x: number; y: number }[][] = [[]];
  for (const { flow, upper, lower } of groups) {
    stretches.at(-1)?.push({ x: flow, y: upper });
    if (upper !== lower) stretches.push([{ x: flow, y: lower }]);
  }
  return stretches.map(monotoneCurve);
}

/**
 * A pump's curve, head over flow, from the points of its kit card, in any order: a monotone cubic between them (`monotoneCurve`),
 * nothing beyond the first and the last. A hump near shut-off and vertical pieces are kept as the card gives them.
 * Refuses fewer than two points, one given twice, numbers that are not finite or negative, and a card whose head is not lower at
 * its greatest flow than at its least (flow and head exchanged).
 */
export function pumpCurve(points: readonly PumpPoint[], tolerance: CurveTolerance = CARD_TOLERANCE): Outcome<PumpCurve> {
  const fault = pointsFault(points) ?? unfit("pumpCurve/tolerance", "not negative", { head: tolerance.head, flow: tolerance.flow });
  if (fault) return fault;
  const sorted = [...points].sort(byFlow);
  const groups = byEqualFlow(sorted);
  const first = sorted[0] as PumpPoint;
  const curve = {
    points: sorted,
    stretches: stretchesOf(groups),
    vertical: groups.filter(({ upper, lower }) => upper !== lower),
    last: sorted[sorted.length - 1] as PumpPoint,
    tolerance,
  };
  return ok(first.flow === 0 ? { ...curve, shutOff: first.head } : curve);
}

/** The head at a flow on one stretch with the doubt of the card: a share of the head, and a share of the flow by the curve's slope. */
export function headOnStretch(stretch: MonotoneCurve, flow: number, { head, flow: along }: CurveTolerance): Uncertain {
  const { y, slope } = curveAt(stretch, flow);
  return withSource(
    withSource(certain(y), "pump-curve/head", rectangular(head * y)),
    "pump-curve/flow",
    rectangular(along * flow) * -slope,
  );
}

const within = ({ knots }: MonotoneCurve, flow: number): boolean =>
  flow >= (knots[0]?.x ?? Number.NaN) && flow <= (knots[knots.length - 1]?.x ?? Number.NaN);

/**
 * Head that the pump gives at a flow, metres. On a vertical piece its middle, with the piece as doubt. Refuses a flow beyond the
 * card's first or last point: nothing is known there.
 */
export function pumpHead(curve: PumpCurve, flow: number): Outcome<Uncertain> {
  const bad = unfit("pumpCurve", "not negative", { flow });
  if (bad) return bad;
  const piece = curve.vertical.find((one) => one.flow === flow);
  if (piece) {
    const middle = (piece.upper + piece.lower) / 2;
    const spread = withSource(certain(middle), "pump-curve/vertical", rectangular((piece.upper - piece.lower) / 2));
    return ok(withSource(spread, "pump-curve/head", rectangular(curve.tolerance.head * middle)));
  }
  const stretch = curve.stretches.find((one) => within(one, flow));
  return stretch === undefined ? refuse("pump-beyond-curve", "pumpCurve") : ok(headOnStretch(stretch, flow, curve.tolerance));
}
