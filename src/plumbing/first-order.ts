import { combine, type Term, type Uncertain } from "../doubt/index.ts";

/**
 * A value that a formula gave, with the doubt of its inputs to first order: each term is sensitivity × input (GUM 5.1.2, from
 * memory). Sources that two inputs share add with their signs.
 */
export const firstOrder = (value: number, terms: readonly Term[]): Uncertain => ({ value, parts: combine(terms).parts });
