const SQRT_2_PI = Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp(-(z * z) / 2) / SQRT_2_PI;

/** Beyond this the continued fraction converges in fewer terms than it is given. */
const TAIL_FROM = 3;
const TAIL_TERMS = 120;

/** Abramowitz & Stegun 26.2.11: 1/2 + φ(z) (z + z³/3 + z⁵/(3·5) + …). All terms have one sign, so nothing is lost. */
function centre(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > Math.abs(sum) * 1e-17; k += 2) {
    term = (term * z * z) / k;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/** Abramowitz & Stegun 26.2.14: the upper tail φ(x) · 1/(x + 1/(x + 2/(x + 3/(x + …)))), x > 0, from the inside out. */
function upperTail(x: number): number {
  let denominator = x;
  for (let k = TAIL_TERMS; k >= 1; k--) denominator = x + k / denominator;
  return normalDensity(x) / denominator;
}

/**
 * Φ(z): chance that a standard normal value is at most z. Absolute error below 1e-14, relative error below 1e-12 in the lower tail.
 * Uses an exponential, so engines may differ in the last digit: never for a check that holds.
 */
export function normalDistribution(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  if (z >= TAIL_FROM) return 1 - upperTail(z);
  if (z <= -TAIL_FROM) return z < -40 ? 0 : upperTail(-z);
  return centre(z);
}

/** Abramowitz & Stegun 26.2.23 (error below 4.5e-4): z with chance `tail` above it, 0 < tail <= 1/2. */
function roughQuantile(tail: number): number {
  const t = Math.sqrt(-2 * Math.log(tail));
  return t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
}

/**
 * The z with Φ(z) = p, by Newton steps (Halley's form) on `normalDistribution`. p in 0..1; 0 and 1 give the infinities, anything
 * else outside gives NaN.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN;
  if (p === 0) return Number.NEGATIVE_INFINITY;
  if (p === 1) return Number.POSITIVE_INFINITY;
  const tail = p < 0.5 ? p : 1 - p;
  let z = -roughQuantile(tail);
  for (let step = 0; step < 4; step++) {
    const error = (normalDistribution(z) - tail) / normalDensity(z);
    z -= error / (1 + (z * error) / 2);
  }
  return p < 0.5 ? z : -z;
}
