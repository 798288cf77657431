import { fisherAbove } from "./continuous.ts";

/** Sum, mean and sample variance (n - 1); the variance of fewer than two is NaN. */
export function moments(values: readonly number[]): { readonly n: number; readonly mean: number; readonly variance: number } {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { n, mean, variance: n < 2 ? Number.NaN : squares / (n - 1) };
}

/** One source of a crossed analysis: sum of squares, degrees of freedom, mean square, F and the chance of a larger one. */
export interface VarianceLine {
  readonly squares: number;
  readonly degrees: number;
  readonly mean: number;
  readonly f?: number;
  readonly p?: number;
}

/** A balanced crossed analysis of variance of parts and people, both by chance. Variances in the square of the value's unit. */
export interface CrossedVariance {
  readonly part: VarianceLine;
  readonly person: VarianceLine;
  readonly interaction: VarianceLine;
  readonly within: VarianceLine;
  /** Repeatability: one person, one part, again. */
  readonly repeatability: number;
  /** Between people, their interaction with the parts in it; never below zero. */
  readonly betweenPeople: number;
  /** ISO 5725's word: repeatability and between people together. */
  readonly reproducibility: number;
  readonly partToPart: number;
}

/**
 * `values[part][person][trial]`, every cell with the same number of trials, two at least of parts, people and trials; undefined
 * otherwise. Person and part are tested against the interaction, as both are a choice out of many.
 */
export function crossedVariance(values: readonly (readonly (readonly number[])[])[]): CrossedVariance | undefined {
  const [parts, people, trials] = [values.length, values[0]?.length ?? 0, values[0]?.[0]?.length ?? 0];
  const isWhole = values.every((row) => row.length === people && row.every((cell) => cell.length === trials));
  if (parts < 2 || people < 2 || trials < 2 || !isWhole || !values.flat(2).every(Number.isFinite)) return undefined;
  const meanOf = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;
  const grand = meanOf(values.flat(2));
  const partMeans = values.map((row) => meanOf(row.flat()));
  const personMeans = Array.from({ length: people }, (_, j) => meanOf(values.flatMap((row) => row[j] ?? [])));
  const squaresOf = (means: readonly number[]): number => means.reduce((sum, mean) => sum + (mean - grand) ** 2, 0);
  const cells = values.flatMap((row, i) =>
    row.map((cell, j) => ({ cell, mean: meanOf(cell), crossed: (partMeans[i] ?? 0) + (personMeans[j] ?? 0) - grand })),
  );
  const line = (squares: number, degrees: number): VarianceLine => ({ squares, degrees, mean: squares / degrees });
  const tested = (own: VarianceLine, against: VarianceLine): VarianceLine => {
    const f = own.mean / against.mean;
    return Number.isFinite(f) ? { ...own, f, p: fisherAbove(f, own.degrees, against.degrees) } : own;
  };
  const part = line(squaresOf(partMeans) * people * trials, parts - 1);
  const person = line(squaresOf(personMeans) * parts * trials, people - 1);
  const interaction = line(trials * cells.reduce((sum, c) => sum + (c.mean - c.crossed) ** 2, 0), (parts - 1) * (people - 1));
  const within = line(
    cells.reduce((sum, { cell, mean }) => sum + cell.reduce((s, x) => s + (x - mean) ** 2, 0), 0),
    parts * people * (trials - 1),
  );
  const ofInteraction = Math.max(0, (interaction.mean - within.mean) / trials);
  const ofPeople = Math.max(0, (person.mean - interaction.mean) / (parts * trials));
  return {
    part: tested(part, interaction),
    person: tested(person, interaction),
    interaction: tested(interaction, within),
    within,
    repeatability: within.mean,
    betweenPeople: ofPeople + ofInteraction,
    reproducibility: within.mean + ofPeople + ofInteraction,
    partToPart: Math.max(0, (part.mean - interaction.mean) / (people * trials)),
  };
}
