import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { fitPlane, outOfLevel } from "#core/geometry/index.ts";
import { planArea } from "#core/water/index.ts";
import { taken } from "../../helpers/doubt/given.ts";

const size = fc.double({ min: 0.5, max: 1, noNaN: true });
const corners = [
  [0, 0],
  [1.5, 0],
  [1.5, 1.2],
  [0, 1.2],
] as const;

describe("symmetric where geometry is", () => {
  const heights = fc.tuple(size, size, size, size);
  const rim = (list: readonly number[], turned: readonly (readonly [number, number])[]) =>
    turned.map(([x, y], i) => ({ x, y, height: certain(0.1 * (list[i] ?? 0)) }));
  const total = (list: readonly number[], places: readonly (readonly [number, number])[], [along, across]: readonly [number, number]) =>
    taken(outOfLevel(taken(fitPlane(rim(list, places))).plane, along, across)).total.value;

  test("a rim is as far out of level turned a quarter, mirrored, upside down, or read over another line", () => {
    fc.assert(
      fc.property(heights, fc.double({ min: -2, max: 2, noNaN: true }), (list, line) => {
        const asRead = total(list, corners, [1.5, 1.2]);
        const others = [
          total(
            list,
            corners.map(([x, y]) => [-y, x] as const),
            [1.2, 1.5],
          ),
          total(
            list,
            corners.map(([x, y]) => [-x, y] as const),
            [1.5, 1.2],
          ),
          total(
            list.map((height) => -height),
            corners,
            [1.5, 1.2],
          ),
          total(
            list.map((height) => height + line),
            corners,
            [1.5, 1.2],
          ),
        ];
        for (const other of others) expect(Math.abs(other - asRead)).toBeLessThan(1e-12);
      }),
    );
  });

  test("a basin holds the same whichever way round its sides are named", () => {
    fc.assert(
      fc.property(size, size, (length, width) => {
        const area = (l: number, w: number) => taken(planArea({ kind: "rectangle", length: certain(l), width: certain(w) })).value;
        expect(area(length, width)).toBe(area(width, length));
      }),
    );
  });
});
