import type { CornerSeen, FittedCard } from "./card-fit.ts";
import { dot, solve } from "./cholesky.ts";

/** Standard normal deviate that is exceeded once in a thousand (NIST/SEMATECH e-Handbook 1.3.6.7.1, from memory). */
const ONCE_IN_A_THOUSAND = 3.0902;

/** Chi-square that is exceeded once in a thousand, by the cube of Wilson and Hilferty 1931 (from memory): within 1 % from 4 degrees on. */
export function mostByChance(degreesOfFreedom: number): number {
  if (degreesOfFreedom <= 0) return 0;
  const part = 2 / (9 * degreesOfFreedom);
  const root = 1 - part + ONCE_IN_A_THOUSAND * Math.sqrt(part);
  return degreesOfFreedom * root * root * root;
}

export interface Agreeing {
  readonly fit: FittedCard;
  readonly rejected: readonly string[];
  readonly most: number;
  readonly flat: boolean;
}

type Fit = (corners: readonly CornerSeen[]) => FittedCard | undefined;

/** A bad corner stands alone; more of them than this are no accident. */
const MOST_SINGLE = 3;
/** With fewer corners left nothing is told from the rest. */
const LEAST_LEFT = 10;

const agrees = (fit: FittedCard): boolean => fit.degreesOfFreedom <= 0 || fit.chiSquare <= mostByChance(fit.degreesOfFreedom);

/** Every fit without one of the groups, the best first. Ties go by the groups' order: the same everywhere. */
function without(
  corners: readonly CornerSeen[],
  groups: readonly string[],
  of: (corner: CornerSeen) => string,
  fitted: Fit,
): readonly Without[] {
  return groups
    .flatMap((group) => {
      const rest = corners.filter((corner) => of(corner) !== group);
      const found = rest.length >= 4 ? fitted(rest) : undefined;
      return found === undefined ? [] : [{ rest, fit: found, per: found.chiSquare / Math.max(1, found.degreesOfFreedom) }];
    })
    .sort((a, b) => a.per - b.per);
}

interface Without {
  readonly rest: readonly CornerSeen[];
  readonly fit: FittedCard;
  /** Chi-square for each degree of freedom. */
  readonly per: number;
}

/** Of all corners those of which one is tried without: each fit takes milliseconds, and a bent sheet would take fifty of them. */
const TRIED = 4;

/**
 * By how much chi-square would fall without one corner, as far as the fit is straight about its place: its residuals by what the other
 * corners leave of them (leave-one-out by the hat matrix; Cook and Weisberg 1982, from memory).
 */
function fallWithout({ residuals, slopes, factor }: FittedCard, corner: number): number {
  const [first, second] = [slopes[2 * corner] ?? [], slopes[2 * corner + 1] ?? []];
  const [along, across] = [solve(factor, first), solve(factor, second)];
  const [a, b, d] = [1 - dot(first, along), -dot(first, across), 1 - dot(second, across)];
  const [x, y] = [residuals[2 * corner] as number, residuals[2 * corner + 1] as number];
  const determinant = a * d - b * b;
  // a corner that nothing else tells of fits whatever it is
  return determinant > 0 ? (d * x * x - 2 * b * x * y + a * y * y) / determinant : 0;
}

/** Names of the corners that disagree most with the others, the worst first. */
const mostDoubted = (fit: FittedCard, corners: readonly CornerSeen[]): readonly string[] =>
  corners
    .map(({ name }, i) => ({ name, fall: fallWithout(fit, i) }))
    .sort((one, other) => other.fall - one.fall)
    .slice(0, TRIED)
    .map(({ name }) => name);

/** Without one corner, two or three, each time the one without which the rest agree best. */
function withoutSingles(corners: readonly CornerSeen[], all: FittedCard, fitted: Fit): Without | undefined {
  let [rest, fit] = [corners, all];
  for (let n = 0; n < MOST_SINGLE && rest.length > LEAST_LEFT; n++) {
    const [best] = without(rest, mostDoubted(fit, rest), ({ name }) => name, fitted);
    if (best === undefined || agrees(best.fit)) return best;
    ({ rest, fit } = best);
  }
  return undefined;
}

function withoutCode(corners: readonly CornerSeen[], fitted: Fit): Without | undefined {
  const codes = [...new Set(corners.map(({ code }) => code))];
  if (codes.length < 4) return undefined;
  const [best] = without(corners, codes, ({ code }) => code, fitted);
  return best !== undefined && agrees(best.fit) ? best : undefined;
}

/**
 * The fit of all corners where they agree; else without one corner, two or three, or without a whole code where the rest then
 * agree twice as well: a code that lies a little off can pass for a few bad corners. Nothing is drawn by lot, so that phone and
 * edge leave out the same. Where no such fit agrees, the sheet is not flat and the fit of all stays, its doubts widened.
 */
export function agreeing(corners: readonly CornerSeen[], fitted: Fit): Agreeing | undefined {
  const all = fitted(corners);
  if (all === undefined) return undefined;
  const told = (some: FittedCard, rest: readonly CornerSeen[], flat: boolean): Agreeing => ({
    fit: some,
    rejected: corners.filter((corner) => !rest.includes(corner)).map(({ name }) => name),
    most: mostByChance(some.degreesOfFreedom),
    flat,
  });
  if (agrees(all)) return told(all, corners, true);
  const [singles, code] = [withoutSingles(corners, all, fitted), withoutCode(corners, fitted)];
  const chosen = code !== undefined && (singles === undefined || 2 * code.per < singles.per) ? code : singles;
  return chosen === undefined ? told(all, corners, false) : told(chosen.fit, chosen.rest, true);
}
