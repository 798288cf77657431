import { metres, toMicrometres } from "../units/index.ts";
import { type DoubtFigures, ownFigures, type Receiver } from "./figures.ts";
import { belongsToReading, roleOfSource, type SourceRole } from "./sources.ts";
import { COVERAGE_FACTOR, mean, type NonEmpty, total, type Uncertain, uncertaintyOfDifference } from "./uncertain.ts";

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
export const agreeWithinDoubt = (a: Uncertain, b: Uncertain): Agreement => agreement(a, b, COVERAGE_FACTOR * uncertaintyOfDifference(b, a));

/**
 * Whether a set-up closes: the first and the last reading of the height mark agree within 3/16 in (receiver on fine) or
 * 1/4 in (coarse), own figures; without a receiver (string, water level) within the expanded doubt of their difference.
 */
export function setUpCloses(first: Uncertain, last: Uncertain, receiver?: Receiver, figures: DoubtFigures = ownFigures): Agreement {
  return receiver === undefined ? agreeWithinDoubt(first, last) : agreement(first, last, figures.closing[receiver]);
}

/** The role of a source that is named anew at each reading, and is the same each time. */
function roleThatRepeats(source: string): SourceRole | undefined {
  if (!belongsToReading(source)) return undefined;
  const role = roleOfSource(source);
  return role === "resolution" || role === "placing" ? undefined : role;
}

/**
 * The mean of several readings of one point. What differs by chance each time (resolution, placing) goes down with √n. The
 * receiver's threshold and the line's slope are named anew at each reading but repeat at one point, so they stay whole:
 * they are gathered under the first of their names, so that another point's stay apart from them.
 */
function meanAtOnePoint(list: NonEmpty<Uncertain>): Uncertain {
  const plain = mean(list);
  const parts = new Map(plain.parts);
  const whole = new Map<SourceRole, { name: string; readonly sizes: number[] }>();
  for (const x of list) {
    for (const [source, part] of x.parts) {
      const role = roleThatRepeats(source);
      if (role === undefined || list.every((other) => other.parts.has(source))) continue;
      parts.delete(source);
      const known = whole.get(role);
      if (known === undefined) whole.set(role, { name: source, sizes: [Math.abs(part)] });
      else {
        known.sizes.push(Math.abs(part));
        if (source < known.name) known.name = source;
      }
    }
  }
  for (const { name, sizes } of whole.values()) parts.set(name, (Math.sign(plain.parts.get(name) ?? 1) * total(sizes)) / list.length);
  return { value: plain.value, parts };
}

export interface Repeated {
  readonly mean: Uncertain;
  /** Two that differ by more than the expanded doubt of their difference; from the third on the mean stands. */
  readonly asksForThird: boolean;
}

/** Several readings of one point (those not corrected) as one. */
export function repeated(list: NonEmpty<Uncertain>): Repeated {
  const [first, second, ...further] = list;
  const asksForThird = second !== undefined && further.length === 0 && !agreeWithinDoubt(first, second).agrees;
  return { mean: meanAtOnePoint(list), asksForThird };
}
