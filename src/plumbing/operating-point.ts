import { certain, combine, firstOrder, subtract, type Term, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { type Crossing, crossings, jumpCrossings } from "./crossings.ts";
import { frictionLoss } from "./friction.ts";
import { headOnStretch, type PumpCurve, type VerticalPiece } from "./pump-curve.ts";
import { knownLossTerms, type SystemCurve, systemAt, unfitSystem } from "./system-curve.ts";

export interface OperatingPoint {
  /** m³/s. */
  readonly flow: Uncertain;
  /** Metres, static head and losses together. */
  readonly head: Uncertain;
  /** The pump returns to a stable point after a disturbance; from an unstable one it runs off to another. */
  readonly stable: boolean;
}

/** Where a pump works on a system. Everything that is no single point has a name. */
export type OperatingOutcome =
  | { readonly kind: "one point"; readonly point: OperatingPoint }
  /** In order of flow. `reachedFromRest`: the pump lifts water over the lip when it starts with no flow. */
  | { readonly kind: "several crossings"; readonly points: readonly OperatingPoint[]; readonly reachedFromRest: boolean }
  /** The flow is the piece's own, whatever the system asks within it; the head is the system's there. */
  | { readonly kind: "on a vertical piece"; readonly piece: VerticalPiece; readonly head: Uncertain }
  /** No water comes over the lip. `lacks`: head missing at no flow, metres, with its doubt. */
  | { readonly kind: "curve below static head"; readonly lacks: Uncertain }
  /** The system takes less head than the card's last point gives: at least that flow, and the card says no more. */
  | { readonly kind: "beyond the last point"; readonly atLeast: number; readonly headThere: Uncertain }
  /** The card does not begin at no flow, and the point lies before its first: at most that flow, perhaps none. */
  | { readonly kind: "before the first point"; readonly atMost: number; readonly headThere: Uncertain };

/** What doubts the balance pump head − system head at a flow, metres. */
function systemTerms(system: SystemCurve, flow: number): Outcome<readonly Term[]> {
  const terms: Term[] = [{ times: 1, of: system.staticHead }, ...knownLossTerms(system, flow)];
  for (const section of system.sections) {
    const loss = frictionLoss(certain(flow), section);
    if (!loss.ok) return loss;
    terms.push({ times: 1, of: loss.value });
  }
  return ok(terms);
}

/**
 * A crossing with its doubt. At it pump head P(q) = system head S(q); what moves either by dh moves the flow by
 * dq = (dP − dS) / (S' − P'), and the head by dS + S' dq.
 */
function pointAt(curve: PumpCurve, system: SystemCurve, crossing: Crossing): Outcome<OperatingPoint> {
  const terms = systemTerms(system, crossing.flow);
  if (!terms.ok) return terms;
  const { head, slope } = systemAt(system, crossing.flow);
  const steeper = slope - crossing.pumpSlope;
  const pump = headOnStretch(crossing.stretch, crossing.flow, curve.tolerance);
  const flow = firstOrder(crossing.flow, [
    { times: 1 / steeper, of: pump },
    ...terms.value.map(({ times, of }) => ({ times: -times / steeper, of })),
  ]);
  return ok({ flow, head: firstOrder(head, [...terms.value, { times: slope, of: flow }]), stable: steeper > 0 });
}

function noCrossing(curve: PumpCurve, system: SystemCurve): Outcome<OperatingOutcome> {
  const [first, last] = [curve.stretches[0], curve.stretches[curve.stretches.length - 1]];
  const beginning = curve.points[0];
  if (first === undefined || last === undefined || beginning === undefined) throw new Error("a pump curve without points");
  if (curve.last.head >= systemAt(system, curve.last.flow).head) {
    const headThere = headOnStretch(last, curve.last.flow, curve.tolerance);
    return ok({ kind: "beyond the last point", atLeast: curve.last.flow, headThere });
  }
  const headThere = headOnStretch(first, beginning.flow, curve.tolerance);
  if (curve.shutOff === undefined) return ok({ kind: "before the first point", atMost: beginning.flow, headThere });
  return ok({ kind: "curve below static head", lacks: subtract(system.staticHead, headThere) });
}

/**
 * Where the pump works: the flow at which the head of its curve is the static head plus all losses, with the doubt that static
 * head, lengths, C, bores and the card's own tolerance bring; they are named in the result's parts. Refuses figures of the
 * system that are not finite, negative, or zero where a size is meant.
 */
export function operatingPoint(curve: PumpCurve, system: SystemCurve): Outcome<OperatingOutcome> {
  const bad = unfitSystem(system);
  if (bad) return bad;
  const found = crossings(curve, system);
  const jumps = jumpCrossings(curve, system);
  const [jump] = jumps;
  if (found.length === 0 && jump === undefined) return noCrossing(curve, system);
  if (found.length === 0 && jump !== undefined && jumps.length === 1) {
    const terms = systemTerms(system, jump.flow);
    return terms.ok ? ok({ kind: "on a vertical piece", piece: jump, head: combine(terms.value) }) : terms;
  }
  const points: OperatingPoint[] = [];
  for (const crossing of found) {
    const point = pointAt(curve, system, crossing);
    if (!point.ok) return point;
    points.push(point.value);
  }
  for (const piece of jumps) {
    const terms = systemTerms(system, piece.flow);
    if (!terms.ok) return terms;
    points.push({ flow: certain(piece.flow), head: combine(terms.value), stable: true });
  }
  points.sort((a, b) => a.flow.value - b.flow.value);
  const [only] = points;
  if (points.length === 1 && only) return ok({ kind: "one point", point: only });
  const reachedFromRest = curve.shutOff !== undefined && curve.shutOff > system.staticHead.value;
  return ok({ kind: "several crossings", points, reachedFromRest });
}
