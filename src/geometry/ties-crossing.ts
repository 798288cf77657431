import { type Mark, type PlanPoint, planVector, type Vector } from "./ties-plan.ts";

/** How the lines from two marks cross at a point. */
export interface Crossing {
  readonly first: string;
  readonly second: string;
  /** 0 to 180, to the nearest whole degree, for print. */
  readonly degrees: number;
  /** Sine of the angle, 0 to 1: the doubt across grows with its inverse. */
  readonly sine: number;
  /** Below 30 or above 150 degrees (own): a third mark off to the side, or another pair, is worth the walk. */
  readonly poor: boolean;
}

/** cos² 30° = 3/4 (own bound). Compared as squares, so that no cosine enters. */
const POOR_COSINE_SQUARED = 3 / 4;

/** Terms of the series, enough for an argument below 0.2. */
const TERMS = 10;

/** Arc tangent of x ≥ 0, radians, by halving the angle three times: + − × ÷ and square roots only, alike in every engine. */
function arcTangent(x: number): number {
  const halved = [1, 2, 3].reduce((t) => t / (1 + Math.sqrt(1 + t * t)), x);
  let [sum, power] = [0, halved];
  for (let k = 0; k < TERMS; k++) {
    sum += (k % 2 === 0 ? power : -power) / (2 * k + 1);
    power *= halved * halved;
  }
  return 8 * sum;
}

/** Angle between two directions, degrees, 0 to 180. */
export function degreesBetween(u: Vector, v: Vector): number {
  const [dot, cross] = [u.x * v.x + u.y * v.y, Math.abs(u.x * v.y - u.y * v.x)];
  const length = Math.sqrt(dot * dot + cross * cross);
  if (length + dot <= length * 1e-15) return 180;
  return (2 * arcTangent(cross / (length + dot)) * 180) / Math.PI;
}

/** How two marks see a place. A place on one of the marks has no crossing: sine 0. */
export function crossingAt(first: Mark, second: Mark, at: Vector): Crossing {
  const [u, v] = [first, second].map((mark) => ({ x: at.x - mark.x.value, y: at.y - mark.y.value })) as [Vector, Vector];
  const squares = (u.x * u.x + u.y * u.y) * (v.x * v.x + v.y * v.y);
  const names = { first: first.name, second: second.name };
  if (squares === 0) return { ...names, degrees: 0, sine: 0, poor: true };
  const dot = u.x * v.x + u.y * v.y;
  const cross = Math.abs(u.x * v.y - u.y * v.x);
  return {
    ...names,
    degrees: Math.round(degreesBetween(u, v)),
    sine: cross / Math.sqrt(squares),
    poor: dot * dot > POOR_COSINE_SQUARED * squares,
  };
}

export const pairsOf = <T>(list: readonly T[]): readonly (readonly [T, T])[] =>
  list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b] as const));

/** All pairs of marks as they see a point, the best crossing first: which two to measure from, before the crew leaves. */
export function crossings(marks: readonly Mark[], at: PlanPoint | Vector): readonly Crossing[] {
  const place = typeof at.x === "number" ? (at as Vector) : planVector(at as PlanPoint);
  return pairsOf(marks)
    .map(([first, second]) => crossingAt(first, second, place))
    .sort((a, b) => b.sine - a.sine);
}
