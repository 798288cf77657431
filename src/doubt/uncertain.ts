/**
 * A value with its doubt, kept apart by where the doubt comes from. A source that two values share (the height of the
 * line of one set-up, the permitted error of one tape) then cancels in their difference by itself.
 */
export interface Uncertain {
  /** SI. */
  readonly value: number;
  /** Per independent source: sensitivity × standard uncertainty, signed, in the unit of the value. No part is zero. */
  readonly parts: ReadonlyMap<string, number>;
}

export type NonEmpty<T> = readonly [T, ...T[]];

/** Coverage factor of an expanded uncertainty: U = 2 u. */
export const COVERAGE_FACTOR = 2;

const smallestFirst = (a: number, b: number): number => Math.abs(a) - Math.abs(b) || a - b;

/** Up to here putting each term in its place is quicker than a sort, which is asked for thousands of times for a handful. */
const A_HANDFUL = 16;

function fromTheSmallest(terms: readonly number[]): readonly number[] {
  if (terms.length > A_HANDFUL) return [...terms].sort(smallestFirst);
  const sorted: number[] = [];
  for (const term of terms) {
    let at = sorted.length;
    for (; at > 0 && smallestFirst(term, sorted[at - 1] as number) < 0; at -= 1) sorted[at] = sorted[at - 1] as number;
    sorted[at] = term;
  }
  return sorted;
}

/** Sum that does not depend on the order of the terms: floats are not associative, and entries arrive in any order. */
export function total(terms: readonly number[]): number {
  // a sum of two is the same either way round
  if (terms.length < 3) return 0 + (terms[0] ?? 0) + (terms[1] ?? 0);
  let sum = 0;
  for (const term of fromTheSmallest(terms)) sum += term;
  return sum;
}

export const certain = (value: number): Uncertain => ({ value, parts: new Map() });

export interface Term {
  readonly times: number;
  readonly of: Uncertain;
}

/** Σ times × of. Every other operation is this one; shared sources add with their signs, new ones stand beside each other. */
export function combine(terms: readonly Term[]): Uncertain {
  return { value: total(terms.map(({ times, of }) => times * of.value)), parts: terms.length < 3 ? partsOfTwo(terms) : partsOfMany(terms) };
}

/** Of one or two: each source is added once at most, whatever the order. */
function partsOfTwo(terms: readonly Term[]): ReadonlyMap<string, number> {
  const parts = new Map<string, number>();
  for (const { times, of } of terms) for (const [source, part] of of.parts) parts.set(source, (parts.get(source) ?? 0) + times * part);
  for (const [source, part] of parts) if (part === 0) parts.delete(source);
  return parts;
}

function partsOfMany(terms: readonly Term[]): ReadonlyMap<string, number> {
  const parts = new Map<string, number>();
  // most sources stand in one term alone, and need no list
  const shared = new Map<string, number[]>();
  for (const { times, of } of terms) {
    for (const [source, part] of of.parts) {
      const own = times * part;
      const known = parts.get(source);
      const list = known === undefined ? undefined : shared.get(source);
      if (known === undefined) parts.set(source, own);
      else if (list === undefined) shared.set(source, [known, own]);
      else list.push(own);
    }
  }
  for (const [source, list] of shared) parts.set(source, total(list));
  for (const [source, part] of parts) if (part === 0) parts.delete(source);
  return parts;
}

/** Adds standard uncertainty `u` (unit of the value) from `source`; a source it already has adds to itself, as one cause does. */
export function withSource(x: Uncertain, source: string, u: number): Uncertain {
  return combine([
    { times: 1, of: x },
    { times: 1, of: { value: 0, parts: new Map([[source, u]]) } },
  ]);
}

export const add = (a: Uncertain, b: Uncertain): Uncertain =>
  combine([
    { times: 1, of: a },
    { times: 1, of: b },
  ]);
export const subtract = (a: Uncertain, b: Uncertain): Uncertain =>
  combine([
    { times: 1, of: a },
    { times: -1, of: b },
  ]);
export const scale = (x: Uncertain, factor: number): Uncertain => combine([{ times: factor, of: x }]);

/** The value without its sign; the doubt keeps its size. For limits that hold either way ('out of level at most ...'). */
export const magnitude = (x: Uncertain): Uncertain => (x.value < 0 ? scale(x, -1) : x);

export const mean = (list: NonEmpty<Uncertain>): Uncertain => combine(list.map((of) => ({ times: 1 / list.length, of })));

/** Root of the sum of squares of the parts, unit of the value. Only + × and a square root: the same in every engine. */
export function standardUncertainty(x: Uncertain): number {
  const squares: number[] = [];
  for (const part of x.parts.values()) squares.push(part * part);
  return Math.sqrt(total(squares));
}

/** That of a − b, to the last bit what `subtract` would have: what both share cancels. For a comparison that wants the doubt alone. */
export function uncertaintyOfDifference(a: Uncertain, b: Uncertain): number {
  const squares: number[] = [];
  for (const [source, part] of a.parts) {
    const left = part - (b.parts.get(source) ?? 0);
    squares.push(left * left);
  }
  for (const [source, part] of b.parts) if (!a.parts.has(source)) squares.push(part * part);
  return Math.sqrt(total(squares));
}

/** U = 2 u, unit of the value. */
export const expanded = (x: Uncertain): number => COVERAGE_FACTOR * standardUncertainty(x);

/** Standard uncertainty of something anywhere in ± `halfWidth` with equal chance (GUM 4.3.7, from memory). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Standard uncertainty of reading to the nearest `step`: half a step either side (GUM F.2.2.1, from memory). */
export const resolutionUncertainty = (step: number): number => step / (2 * Math.sqrt(3));
