import { describe, expect, test } from "vitest";
import { agrees, byChance, type DoubtCase, isStraight, line } from "../helpers/doubt/by-chance.ts";
import { print } from "./ran.ts";

/** As GUM Supplement 1 asks (10⁶, from memory), with seeds of its own; the quick form is `tests/unit/doubt/by-chance.test.ts`. */
const DRAWS = 1_000_000;
const seeds = [101, 202];

/** U of each figure against a million draws, printed. */
export function againstChance(cases: readonly DoubtCase[]): void {
  describe("U against chance", () => {
    test.each(cases.flatMap((one) => seeds.map((seed) => ({ name: one.name, one, seed }))))("$name, seed $seed", ({ one, seed }) => {
      const found = byChance(one, Math.round(DRAWS / (one.slow ?? 1)), seed);
      print(`${line(one, found, seed)}${one.bent ? ` [${one.bent.why}]` : ""}`);
      expect(found.undrawn).toEqual([]);
      expect(agrees(one, found)).toEqual({ mean: true, u: true, covers: true });
      if (one.bent) expect(isStraight(found)).toBe(false);
    });
  });
}
