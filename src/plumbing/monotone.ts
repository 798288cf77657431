/** A point of a curve: along and up. */
export interface Knot {
  readonly x: number;
  readonly y: number;
}

/** A curve through knots that rises and falls only where the knots do. x strictly rising. */
export interface MonotoneCurve {
  readonly knots: readonly Knot[];
  /** Slope at each knot. */
  readonly slopes: readonly number[];
}

const at = <T>(list: readonly T[], i: number): T => list[i] as T;

/** Three-point slope at an end, held to the sign of the end's own secant and to three times its size. */
function endSlope(near: number, far: number, nearStep: number, farStep: number): number {
  const slope = ((2 * nearStep + farStep) * near - nearStep * far) / (nearStep + farStep);
  if (slope * near <= 0) return 0;
  return near * far < 0 && Math.abs(slope) > 3 * Math.abs(near) ? 3 * near : slope;
}

/** First guesses: three-point slopes, zero where the data turn. On a parabola they are exact. */
function firstSlopes(steps: readonly number[], secants: readonly number[]): number[] {
  if (secants.length === 1) return [at(secants, 0), at(secants, 0)];
  const last = secants.length - 1;
  const inner = secants.slice(1).map((after, i) => {
    const before = at(secants, i);
    const [left, right] = [at(steps, i), at(steps, i + 1)];
    return before * after <= 0 ? 0 : (right * before + left * after) / (left + right);
  });
  return [
    endSlope(at(secants, 0), at(secants, 1), at(steps, 0), at(steps, 1)),
    ...inner,
    endSlope(at(secants, last), at(secants, last - 1), at(steps, last), at(steps, last - 1)),
  ];
}

/**
 * Monotone piecewise cubic by Fritsch and Carlson (1980, from memory): slopes m at the knots, secants Δ between them, α = m_i/Δ_i,
 * β = m_{i+1}/Δ_i; where α² + β² > 9 both slopes are drawn in by 3/√(α² + β²). No value lies outside its two knots, so nothing is
 * invented between the points of a kit card. One knot gives a curve of no width.
 */
export function monotoneCurve(knots: readonly Knot[]): MonotoneCurve {
  if (knots.length < 2) return { knots, slopes: knots.map(() => 0) };
  const steps = knots.slice(1).map((knot, i) => knot.x - at(knots, i).x);
  const secants = knots.slice(1).map((knot, i) => (knot.y - at(knots, i).y) / at(steps, i));
  const slopes = firstSlopes(steps, secants);
  for (const [i, secant] of secants.entries()) {
    if (secant === 0) {
      slopes[i] = 0;
      slopes[i + 1] = 0;
      continue;
    }
    const [alpha, beta] = [at(slopes, i) / secant, at(slopes, i + 1) / secant];
    const size = alpha * alpha + beta * beta;
    if (size <= 9) continue;
    const drawnIn = 3 / Math.sqrt(size);
    slopes[i] = drawnIn * alpha * secant;
    slopes[i + 1] = drawnIn * beta * secant;
  }
  return { knots, slopes };
}

/** Value and slope at x, which lies within the knots; at the ends' values beyond them. */
export function curveAt({ knots, slopes }: MonotoneCurve, x: number): { readonly y: number; readonly slope: number } {
  if (knots.length === 1) return { y: at(knots, 0).y, slope: 0 };
  const after = knots.findIndex((knot, i) => i > 0 && x <= knot.x);
  const i = (after === -1 ? knots.length - 1 : after) - 1;
  const [left, right] = [at(knots, i), at(knots, i + 1)];
  const step = right.x - left.x;
  const t = Math.min(1, Math.max(0, (x - left.x) / step));
  const [m0, m1] = [at(slopes, i) * step, at(slopes, i + 1) * step];
  const rise = right.y - left.y;
  const [square, cube] = [3 * rise - 2 * m0 - m1, m0 + m1 - 2 * rise];
  return { y: left.y + t * (m0 + t * (square + t * cube)), slope: (m0 + t * (2 * square + 3 * t * cube)) / step };
}
