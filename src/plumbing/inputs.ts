import type { Uncertain } from "../doubt/index.ts";
import { refuse } from "../outcome/index.ts";

type Refused = ReturnType<typeof refuse>;
type Bound = "above zero" | "zero or more" | "finite";

const below = (value: number, bound: Bound): boolean =>
  bound === "above zero" ? value <= 0 : bound === "zero or more" ? value < 0 : false;

const numbersOf = (input: number | Uncertain): readonly number[] =>
  typeof input === "number" ? [input] : [input.value, ...input.parts.values()];

/** The refusal of the first input that is no number to work with, or lies outside its bound; undefined where all are fit. */
export function unfit(place: string, bound: Bound, inputs: Readonly<Record<string, number | Uncertain>>): Refused | undefined {
  for (const [name, input] of Object.entries(inputs)) {
    const [value = Number.NaN, ...parts] = numbersOf(input);
    if (![value, ...parts].every(Number.isFinite)) return refuse("number-not-finite", `${place}/${name}`);
    if (below(value, bound)) return refuse("number-not-positive", `${place}/${name}`);
  }
  return undefined;
}
