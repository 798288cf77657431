import { type Refusal, refuse } from "../outcome/index.ts";
import type { Uncertain } from "./uncertain.ts";

/** What a figure must be: a size above zero, a size that may be zero, any number, or a number between two bounds (both allowed). */
export type Wanted = "positive" | "not negative" | "finite" | readonly [lowest: number, highest: number];

export type Asked = readonly [figure: number | Uncertain | undefined, wanted: Wanted];

const partsOf = (figure: number | Uncertain): number[] => (typeof figure === "number" ? [] : [...figure.parts.values()]);

function fault(figure: number | Uncertain, wanted: Wanted, place: string): Refusal | undefined {
  const value = typeof figure === "number" ? figure : figure.value;
  if (![value, ...partsOf(figure)].every(Number.isFinite)) return refuse("number-not-finite", place).refusal;
  if (wanted === "positive" && value <= 0) return refuse("number-not-positive", place).refusal;
  if (wanted === "not negative" && value < 0) return refuse("number-not-positive", place).refusal;
  if (typeof wanted === "string" || (value >= wanted[0] && value <= wanted[1])) return undefined;
  return refuse("reading-out-of-range", place, { found: value.toString() }).refusal;
}

/** The first figure that cannot be worked with, as a refusal at `place/name`. Absent figures are not looked at. */
export function faultIn(place: string, figures: Readonly<Record<string, Asked>>): Refusal | undefined {
  for (const [name, [figure, wanted]] of Object.entries(figures)) {
    const found = figure === undefined ? undefined : fault(figure, wanted, `${place}/${name}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

type Refused = { readonly ok: false; readonly refusal: Refusal };

/** The refusal as an outcome. */
export const refused = (refusal: Refusal): Refused => ({ ok: false, refusal });

/** One figure, refused at its own place; undefined where it is fit. */
export function unfitAt(place: string, wanted: Wanted, figure: number | Uncertain): Refused | undefined {
  const found = fault(figure, wanted, place);
  return found && refused(found);
}

/** The same for figures that must all be alike. */
export function unfit(
  place: string,
  wanted: Wanted,
  figures: Readonly<Record<string, number | Uncertain | undefined>>,
): Refused | undefined {
  const found = faultIn(place, Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, [figure, wanted] as const])));
  return found && refused(found);
}
