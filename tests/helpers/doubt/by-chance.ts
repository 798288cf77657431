import { certain, standardUncertainty, type Uncertain } from "#core/doubt/index.ts";

/**
 * A figure by chance (GUM Supplement 1, JCGM 101, from memory): every source of the inputs' doubt is drawn from its own rectangle,
 * once for all that share it, and the figure is worked out anew from each draw, without any slope. Mean and standard deviation of
 * the draws stand against value and u of the first-order propagation. Seeded, so the same every time.
 */
export interface DoubtCase<Name extends string = string> {
  readonly name: string;
  readonly unit: string;
  /** How many of `unit` one of the figure's SI units is. */
  readonly per: number;
  readonly inputs: Readonly<Record<Name, Uncertain>>;
  /** The figure with its doubt, as the core works it out. */
  readonly figure: (inputs: Readonly<Record<Name, Uncertain>>) => Uncertain;
  /**
   * The same figure of one draw where the core brings a factor of its own (water's weight, a card's tolerance): that factor is an
   * input here, under the core's own name, and is drawn too. Absent: `figure` of the drawn inputs.
   */
  readonly drawn?: (inputs: Readonly<Record<Name, Uncertain>>) => number;
  /** Of the drawn inputs the doubt stays beside the value: it weighs them in a fit. */
  readonly keepsDoubt?: true;
  /**
   * Where the figure is no straight line over its inputs: shares of u by which mean and u may differ beyond chance, the least share
   * of the draws that U then holds, and why. `straight` is what every other figure keeps to.
   */
  readonly bent?: { readonly mean: number; readonly u: number; readonly covers: number; readonly why: string };
  /** For what takes long: one over the share of the draws that it is given. */
  readonly slow?: number;
}

/** Names of the inputs are checked here; the list of cases need not know them. */
export const doubtCase = <Name extends string>(of: DoubtCase<Name>): DoubtCase => of as unknown as DoubtCase;

/** mulberry32. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Deviation of a rectangle in its own standard uncertainties: evenly from -√3 to √3. */
const ROOT_3 = Math.sqrt(3);

const sourcesOf = (inputs: Readonly<Record<string, Uncertain>>): readonly string[] => [
  ...new Set(Object.values(inputs).flatMap(({ parts }) => [...parts.keys()])),
];

/** Draws of the inputs, one after another. */
export function draws<Name extends string>(
  inputs: Readonly<Record<Name, Uncertain>>,
  seed: number,
  keepsDoubt = false,
): () => Record<Name, Uncertain> {
  const sources = sourcesOf(inputs);
  const place = new Map(sources.map((source, i) => [source, i]));
  const plan = (Object.entries(inputs) as [Name, Uncertain][]).map(([name, of]) => ({
    name,
    of,
    terms: [...of.parts].map(([source, part]) => [place.get(source) ?? 0, part] as const),
  }));
  const random = chance(seed);
  const deviations = new Float64Array(sources.length);
  return () => {
    for (let i = 0; i < deviations.length; i++) deviations[i] = ROOT_3 * (2 * random() - 1);
    const drawn = {} as Record<Name, Uncertain>;
    for (const { name, of, terms } of plan) {
      let value = of.value;
      for (const [i, part] of terms) value += part * (deviations[i] as number);
      drawn[name] = keepsDoubt ? { value, parts: of.parts } : certain(value);
    }
    return drawn;
  };
}

export interface ByChance {
  readonly value: number;
  readonly u: number;
  readonly mean: number;
  readonly deviation: number;
  /** Share of the draws within value ± 2u. */
  readonly covered: number;
  readonly draws: number;
  /** Sources of the figure that no input names: they would not be drawn. */
  readonly undrawn: readonly string[];
}

export function byChance({ inputs, figure, drawn, keepsDoubt }: DoubtCase, count: number, seed: number): ByChance {
  const answer = figure(inputs);
  const [value, u] = [answer.value, standardUncertainty(answer)];
  const next = draws(inputs, seed, keepsDoubt);
  const of = drawn ?? ((given: Readonly<Record<string, Uncertain>>) => figure(given).value);
  let [mean, squares, within] = [0, 0, 0];
  for (let n = 1; n <= count; n++) {
    const y = of(next());
    const step = y - mean;
    mean += step / n;
    squares += step * (y - mean);
    if (Math.abs(y - value) <= 2 * u) within++;
  }
  const known = new Set(sourcesOf(inputs));
  return {
    value,
    u,
    mean,
    deviation: Math.sqrt(squares / (count - 1)),
    covered: within / count,
    draws: count,
    undrawn: [...answer.parts.keys()].filter((source) => !known.has(source)),
  };
}

/**
 * What may differ: a standard deviation of n draws is itself worth 1 in √(2n) at most (rectangles and sums of them have thinner
 * tails than the normal distribution), a mean √(1/n) of u; five of those are not met by chance. The second order of a figure that
 * is nearly straight is below `straight`; one that is not says so in its case. U = 2u holds 95.4 of 100 draws of a normal
 * distribution, and more of one with thinner tails.
 */
const straight = { mean: 0.01, u: 0.005, covers: 0.94 };

export function agrees({ bent }: Pick<DoubtCase, "bent">, { value, u, mean, deviation, covered, draws: count }: ByChance) {
  const most = bent ?? straight;
  return {
    mean: Math.abs(mean - value) <= (most.mean + 5 / Math.sqrt(count)) * u,
    u: Math.abs(deviation / u - 1) <= most.u + 5 / Math.sqrt(2 * count),
    covers: covered >= most.covers,
  };
}

/** A case that is called bent and keeps to what every straight one does would be an excuse for nothing. */
export const isStraight = (found: ByChance): boolean => Object.values(agrees({}, found)).every(Boolean);

const digits = (n: number): string => Number(n.toPrecision(4)).toString();

/** One case in one line: what the formula says, what chance says. */
export function line({ name, unit, per }: DoubtCase, { value, u, mean, deviation, covered, draws: count }: ByChance, seed: number): string {
  const first = `${digits(per * value)} ± ${digits(2 * per * u)} ${unit}`;
  const other = `${digits(per * mean)} ± ${digits(2 * per * deviation)}`;
  const off = `U ${(100 * (deviation / u - 1)).toFixed(2)} %, mean ${(100 * ((mean - value) / u)).toFixed(2)} % of u`;
  return `${name}: first order ${first}; by chance ${other} (${off}; ${(100 * covered).toFixed(1)} % within U; ${count} draws, seed ${seed})`;
}
