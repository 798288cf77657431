/** Lanczos' approximation with g = 7 and nine terms (from memory; relative error below 1e-13 over what is used here). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
const HALF_LOG_2_PI = 0.5 * Math.log(2 * Math.PI);

/** ln Γ(x), x > 0. */
export function logGamma(x: number): number {
  if (!(x > 0)) return Number.NaN;
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const shifted = x - 1;
  const t = shifted + 7.5;
  const sum = LANCZOS.reduce((total, term, k) => (k === 0 ? term : total + term / (shifted + k)), 0);
  return HALF_LOG_2_PI + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** ln C(n, k) for whole 0 <= k <= n. */
export const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

const TERMS = 10_000;
const TINY = 1e-300;
const CLOSE = 1e-16;

function lowerSeries(shape: number, x: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let k = 1; k < TERMS && Math.abs(term) > Math.abs(sum) * CLOSE; k++) {
    term *= x / (shape + k);
    sum += term;
  }
  return sum * Math.exp(-x + shape * Math.log(x) - logGamma(shape));
}

function upperFraction(shape: number, x: number): number {
  let b = x + 1 - shape;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let k = 1; k < TERMS; k++) {
    const a = -k * (k - shape);
    b += 2;
    d = 1 / (a * d + b || TINY);
    c = b + a / c || TINY;
    h *= d * c;
    if (Math.abs(d * c - 1) < CLOSE * 10) break;
  }
  return Math.exp(-x + shape * Math.log(x) - logGamma(shape)) * h;
}

/** Q(a, x): share of the gamma distribution of this shape (scale 1) above x; a > 0, x >= 0. */
export function gammaUpper(shape: number, x: number): number {
  if (!(shape > 0) || !(x >= 0)) return Number.NaN;
  if (x === 0) return 1;
  if (x === Number.POSITIVE_INFINITY) return 0;
  return x < shape + 1 ? 1 - lowerSeries(shape, x) : upperFraction(shape, x);
}

function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || TINY);
  let h = d;
  for (let m = 1; m < TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || TINY);
    c = 1 + even / c || TINY;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || TINY);
    c = 1 + odd / c || TINY;
    h *= d * c;
    if (Math.abs(d * c - 1) < CLOSE * 10) break;
  }
  return h;
}

/** I(x; a, b): share of the beta distribution at or below x; a, b > 0, 0 <= x <= 1. */
export function betaShare(x: number, a: number, b: number): number {
  if (!(a > 0) || !(b > 0) || !(x >= 0 && x <= 1)) return Number.NaN;
  if (x === 0 || x === 1) return x;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(a, b, x)) / a : 1 - (front * betaFraction(b, a, 1 - x)) / b;
}
