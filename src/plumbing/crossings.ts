import { curveAt, type Knot, type MonotoneCurve } from "./monotone.ts";
import type { PumpCurve, VerticalPiece } from "./pump-curve.ts";
import { type SystemCurve, systemAt } from "./system-curve.ts";

export interface Crossing {
  /** m³/s, above zero. */
  readonly flow: number;
  readonly stretch: MonotoneCurve;
  /** Slope of the pump's curve there, metres per m³/s. */
  readonly pumpSlope: number;
}

/** Looks between two knots: a cubic meets the system's curve there three times at most, and not within a twenty-fourth of the way. */
const LOOKS = 24;
/** Halvings of a bracket: past the last digit of a double. */
const HALVINGS = 60;

function bisect(excess: (flow: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const sign = Math.sign(excess(low));
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (Math.sign(excess(middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Flows at which `excess` changes sign or is zero, between two knots; the left end belongs to the span before. */
function between(excess: (flow: number) => number, left: Knot, right: Knot): number[] {
  const found: number[] = [];
  let [before, excessBefore] = [left.x, excess(left.x)];
  for (let look = 1; look <= LOOKS; look++) {
    const flow = look === LOOKS ? right.x : left.x + ((right.x - left.x) * look) / LOOKS;
    const here = excess(flow);
    if (here === 0) found.push(flow);
    else if (excessBefore * here < 0) found.push(bisect(excess, before, flow));
    [before, excessBefore] = [flow, here];
  }
  return found;
}

/** Every flow above zero at which the pump's curve and the system's meet on a smooth stretch, in order. */
export function crossings(curve: PumpCurve, system: SystemCurve): Crossing[] {
  return curve.stretches.flatMap((stretch) => {
    const excess = (flow: number): number => curveAt(stretch, flow).y - systemAt(system, flow).head;
    const first = stretch.knots[0];
    const atFirst = first !== undefined && first.x > 0 && excess(first.x) === 0 ? [first.x] : [];
    const inside = stretch.knots.slice(1).flatMap((right, i) => between(excess, stretch.knots[i] as Knot, right));
    return [...atFirst, ...inside].map((flow) => ({ flow, stretch, pumpSlope: curveAt(stretch, flow).slope }));
  });
}

/** Vertical pieces within whose heads the system's head at their flow lies, ends left to the stretches. */
export const jumpCrossings = (curve: PumpCurve, system: SystemCurve): readonly VerticalPiece[] =>
  curve.vertical.filter(({ flow, upper, lower }) => {
    const { head } = systemAt(system, flow);
    return flow > 0 && head < upper && head > lower;
  });
