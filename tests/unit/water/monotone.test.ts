import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { expectedDrawDown, reserve, timeToFill } from "#core/water/index.ts";
import { taken } from "../../helpers/doubt/given.ts";

const size = fc.double({ min: 0.5, max: 1, noNaN: true });

describe("monotone where physics is", () => {
  test("more water away or a smaller basin: further down, less in reserve, sooner air; more flow fills sooner", () => {
    fc.assert(
      fc.property(size, size, size, fc.double({ min: 1.01, max: 3, noNaN: true }), (away, perDepth, flow, more) => {
        const down = (v: number, a: number) => taken(expectedDrawDown(certain(v), certain(a))).value;
        expect(down(away * more, perDepth)).toBeGreaterThan(down(away, perDepth));
        expect(down(away, perDepth * more)).toBeLessThan(down(away, perDepth));
        const ratio = (usable: number, v: number) => taken(reserve(certain(usable), certain(v))).ratio.value;
        expect(ratio(perDepth, away * more)).toBeLessThan(ratio(perDepth, away));
        expect(ratio(perDepth * more, away)).toBeGreaterThan(ratio(perDepth, away));
        const fill = (v: number, q: number) => taken(timeToFill(certain(v), certain(q))).value;
        expect(fill(away * more, flow)).toBeGreaterThan(fill(away, flow));
        expect(fill(away, flow * more)).toBeLessThan(fill(away, flow));
      }),
    );
  });
});
