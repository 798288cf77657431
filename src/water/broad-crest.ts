import { faultIn, refused } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { feet } from "../units/index.ts";
import { broadCrestedTable } from "./weir-coefficients.ts";

const between = (from: number, to: number, share: number): number => from + share * (to - from);

/**
 * Coefficient C in m^½/s of Q = C L h^1.5 over a flat lip `breadth` metres along the flow at `head` metres, straight between the
 * values of EPA SWMM Reference Manual vol. II table 6-3 (heads 0.2 to 0.4 ft, breadths 0.5 to 3 ft). Refuses what lies outside:
 * most landscape heads do, and the table falls as the head does.
 */
export function broadCrestedCoefficient(head: number, breadth: number): Outcome<number> {
  const { breadths, rows } = broadCrestedTable;
  const [shallow, deep] = rows;
  const narrowest = breadths[0] ?? 0;
  const widest = breadths[breadths.length - 1] ?? 0;
  const fault = faultIn("lip", { head: [head, [shallow.head, deep.head]], breadth: [breadth, [narrowest, widest]] });
  if (fault) return refused(fault);
  const upper = Math.max(
    1,
    breadths.findIndex((b) => b >= breadth),
  );
  const [from = narrowest, to = widest] = breadths.slice(upper - 1, upper + 1);
  const across = (row: { readonly coefficients: readonly number[] }): number => {
    const [low = Number.NaN, high = Number.NaN] = row.coefficients.slice(upper - 1, upper + 1);
    return between(low, high, (breadth - from) / (to - from));
  };
  const c = between(across(shallow), across(deep), (head - shallow.head) / (deep.head - shallow.head));
  return ok(c * Math.sqrt(feet(1)));
}
