import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { standardUncertainty } from "#core/doubt/index.ts";
import { type FurtherMark, type MeasuredMarks, marksFromDistances, placeByTies } from "#core/geometry/index.ts";
import { mark, taped, tiesTo } from "./tie-marks.ts";

const [a, b, c, d] = [mark("A", 0, 0), mark("B", 6, 0), mark("C", 5, 4), mark("D", -1, 3)];
const second = { name: "B", distance: taped("A to B", 6, 0.004) };
const further: FurtherMark[] = [
  { name: "C", ties: tiesTo([a, b], { x: 5, y: 4 }), side: { from: "A", to: "B", side: "left" } },
  { name: "D", ties: tiesTo([a, b, c], { x: -1, y: 3 }) },
];
const measured: MeasuredMarks = { first: "A", second, further };

function network(of: MeasuredMarks) {
  const marks = marksFromDistances(of);
  if (!marks.ok) throw new Error(marks.refusal.code);
  return marks.value;
}

describe("marks from the distances between them", () => {
  test("the first at the origin, the second on the axis, the others where they stand", () => {
    const { marks, concerns } = network(measured);
    for (const [i, expected] of [a, b, c, d].entries()) {
      expect(marks[i]?.name).toBe(expected.name);
      expect(marks[i]?.x.value).toBeCloseTo(expected.x.value, 8);
      expect(marks[i]?.y.value).toBeCloseTo(expected.y.value, 8);
    }
    expect(concerns).toEqual([]);
    expect(standardUncertainty(marks[0]?.x ?? taped("none", 0))).toBe(0);
    expect(standardUncertainty(marks[1]?.x ?? taped("none", 0))).toBeCloseTo(0.004, 12);
  });

  test("a mark may come before those that it is placed from", () => {
    const turned = network({ ...measured, further: [...further].reverse() });
    expect(turned.marks.map(({ name }) => name)).toEqual(["A", "B", "D", "C"]);
    expect(turned.marks[2]?.x.value).toBeCloseTo(-1, 8);
  });

  test("doubt of the marks reaches the point tied to them", () => {
    const place = (u: number) => {
      const { marks } = network({ first: "A", second: { name: "B", distance: taped("A to B", 6, u) } });
      const found = placeByTies(marks, tiesTo([a, b], { x: 3, y: 3 }), { from: "A", to: "B", side: "left" });
      if (!found.ok || found.value.kind !== "placed") throw new Error("not placed");
      return found.value.ellipse.semiMajor;
    };
    expect(place(0.02)).toBeGreaterThan(2 * place(0.001));
  });

  test("without a side two distances are not enough: asks which, by name", () => {
    const { side: _, ...noSide } = further[0] as FurtherMark;
    expect(marksFromDistances({ ...measured, further: [noSide] })).toMatchObject({
      ok: false,
      refusal: { code: "ties-side-missing", figures: { mark: "C", first: "A", second: "B" } },
    });
  });

  test("a poor crossing among the marks is named", () => {
    const flat = { name: "C", ties: tiesTo([a, b], { x: 3, y: 0.5 }), side: { from: "A", to: "B", side: "left" } } as const;
    expect(network({ ...measured, further: [flat] }).concerns).toEqual([{ mark: "C", concerns: ["poor crossing"] }]);
  });

  test.each([
    ["a name twice", { ...measured, further: [{ name: "A", ties: [] }] }, "ties-mark-twice"],
    ["a mark tied to itself", { ...measured, further: [{ name: "C", ties: tiesTo([a, c], { x: 3, y: 1 }) }] }, "ties-mark-unknown"],
    ["no distance to the second", { ...measured, second: { name: "B", distance: taped("x", 0) } }, "number-not-positive"],
    ["no number", { ...measured, second: { name: "B", distance: taped("x", Number.NaN) } }, "number-not-finite"],
  ] as const)("refuses %s", (_, of, code) => {
    expect(marksFromDistances(of)).toMatchObject({ ok: false, refusal: { code } });
  });

  test("any third mark comes back, on the side that is said", () => {
    const coordinate = fc.double({ min: 2, max: 6, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, coordinate, (along, x, y) => {
        const ends = [mark("A", 0, 0), mark("B", along, 0)];
        const found = marksFromDistances({
          first: "A",
          second: { name: "B", distance: taped("ab", along) },
          further: [{ name: "C", ties: tiesTo(ends, { x, y: -y }), side: { from: "A", to: "B", side: "right" } }],
        });
        if (!found.ok) throw new Error(found.refusal.code);
        expect(found.value.marks[2]?.x.value).toBeCloseTo(x, 6);
        expect(found.value.marks[2]?.y.value).toBeCloseTo(-y, 6);
      }),
    );
  });
});
