import { metres, toMicrometres } from "../units/index.ts";
import { type DoubtFigures, ownFigures, type Receiver } from "./figures.ts";
import { belongsToReading, roleOfSource, sourceRoles } from "./sources.ts";
import { expanded, mean, type NonEmpty, subtract, total, type Uncertain } from "./uncertain.ts";

/** A comparison of two readings, in the integers it was taken from. Micrometres. */
export interface Agreement {
  readonly agrees: boolean;
  readonly difference: number;
  readonly allowed: number;
}

/** A bound is rounded up, that a difference of exactly 3/16 in (4762.5 µm) agrees with a bound of 3/16 in; past the floats' own dust. */
const boundInMicrometres = (bound: number): number => Math.ceil(bound * 1e6 - 1e-6);

function agreement(first: Uncertain, second: Uncertain, allowed: number): Agreement {
  const difference = toMicrometres(metres(Math.abs(second.value - first.value)));
  const bound = boundInMicrometres(allowed);
  return { agrees: difference <= bound, difference, allowed: bound };
}

/** Whether two readings of one point agree within the expanded doubt of their difference. */
export const agreeWithinDoubt = (a: Uncertain, b: Uncertain): Agreement => agreement(a, b, expanded(subtract(b, a)));

/**
 * Whether a set-up closes: the first and the last reading of the height mark agree within 3/16 in (receiver on fine) or
 * 1/4 in (coarse), own figures; without a receiver (string, water level) within the expanded doubt of their difference.
 */
export function setUpCloses(first: Uncertain, last: Uncertain, receiver?: Receiver, figures: DoubtFigures = ownFigures): Agreement {
  return receiver === undefined ? agreeWithinDoubt(first, last) : agreement(first, last, figures.closing[receiver]);
}

const repeatsAtOnePoint = (source: string): boolean => {
  const role = roleOfSource(source);
  return belongsToReading(source) && role !== undefined && role !== "resolution" && role !== "placing";
};

/**
 * The mean of several readings of one point. What differs by chance each time (resolution, placing) goes down with √n. The
 * receiver's threshold and the line's slope are named anew at each reading but repeat at one point, so they stay whole:
 * they are gathered under the first of their names, so that another point's stay apart from them.
 */
function meanAtOnePoint(list: NonEmpty<Uncertain>): Uncertain {
  const plain = mean(list);
  const inAll = (source: string): boolean => list.every((x) => x.parts.has(source));
  const staysWhole = (source: string): boolean => repeatsAtOnePoint(source) && !inAll(source);
  const whole = list.flatMap((x) => [...x.parts].filter(([source]) => staysWhole(source)));
  if (whole.length === 0) return plain;
  const parts = new Map([...plain.parts].filter(([source]) => !staysWhole(source)));
  for (const role of sourceRoles) {
    const ofRole = whole.filter(([source]) => roleOfSource(source) === role);
    const [name] = ofRole.map(([source]) => source).sort();
    if (name === undefined) continue;
    const sign = Math.sign(plain.parts.get(name) ?? 1);
    parts.set(name, (sign * total(ofRole.map(([, part]) => Math.abs(part)))) / list.length);
  }
  return { value: plain.value, parts };
}

export interface Repeated {
  readonly mean: Uncertain;
  /** No two differ by more than the expanded doubt of their difference. */
  readonly agrees: boolean;
  /** Two that do not agree ask for a third. */
  readonly asksForThird: boolean;
  /** The pair that is furthest apart; absent for a single reading. */
  readonly widest?: Agreement;
}

/** Several readings of one point (those not corrected) as one. */
export function repeated(list: NonEmpty<Uncertain>): Repeated {
  const pairs = list.flatMap((a, i) => list.slice(i + 1).map((b) => agreeWithinDoubt(a, b)));
  const agrees = pairs.every((pair) => pair.agrees);
  const apart = [...pairs].sort((a, b) => b.difference - a.difference || a.allowed - b.allowed)[0];
  const value = meanAtOnePoint(list);
  const asksForThird = list.length === 2 && !agrees;
  return apart === undefined ? { mean: value, agrees, asksForThird } : { mean: value, agrees, asksForThird, widest: apart };
}
