import type { Uncertain } from "../doubt/index.ts";
import { refuse } from "../outcome/index.ts";

/** The refusal of the first input that is not finite, or is zero or negative; `zero` lets a zero through. */
export function unfit(place: string, inputs: Readonly<Record<string, Uncertain>>, zero = false) {
  for (const [name, { value, parts }] of Object.entries(inputs)) {
    if (![value, ...parts.values()].every(Number.isFinite)) return refuse("number-not-finite", `${place}/${name}`);
    if (value < 0 || (value === 0 && !zero)) return refuse("number-not-positive", `${place}/${name}`);
  }
  return undefined;
}
