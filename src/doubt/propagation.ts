import { combine, standardUncertainty, type Term, type Uncertain } from "./uncertain.ts";

/**
 * First-order propagation for what is not a plain sum (GUM 5.1.2, from memory): y = f(x1, x2, ...), its part from each source
 * is Σ ∂f/∂xi × the part of xi, so that a source which two inputs share counts once and with its sign. Terms: slope × input.
 */
export const firstOrder = (value: number, terms: readonly Term[]): Uncertain => ({ value, parts: combine(terms).parts });

/** a × b. */
export const product = (a: Uncertain, b: Uncertain): Uncertain =>
  firstOrder(a.value * b.value, [
    { times: b.value, of: a },
    { times: a.value, of: b },
  ]);

/** a ÷ b; b is not zero. */
export const quotient = (a: Uncertain, b: Uncertain): Uncertain =>
  firstOrder(a.value / b.value, [
    { times: 1 / b.value, of: a },
    { times: -a.value / (b.value * b.value), of: b },
  ]);

/**
 * f of several inputs, each slope taken as {f(x + u) - f(x - u)} / 2u (GUM 5.1.4 note, from memory). For formulas with powers
 * and exponentials, never for a check that holds. `of` must have an answer within one standard uncertainty of each input.
 */
export function throughSteps<Name extends string>(
  inputs: Readonly<Record<Name, Uncertain>>,
  of: (figures: Readonly<Record<Name, number>>) => number,
): Uncertain {
  const names = Object.keys(inputs) as Name[];
  const at = Object.fromEntries(names.map((name) => [name, inputs[name].value])) as Record<Name, number>;
  const terms = names.flatMap((name): Term[] => {
    const u = standardUncertainty(inputs[name]);
    if (u === 0) return [];
    const slope = (of({ ...at, [name]: at[name] + u }) - of({ ...at, [name]: at[name] - u })) / (2 * u);
    return [{ times: slope, of: inputs[name] }];
  });
  return firstOrder(of(at), terms);
}
