import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, expanded, standardUncertainty, type Uncertain } from "#core/doubt/index.ts";
import { correctionFor, heightsFromDesign, type SetOutDesign, type SetOutTarget, setOut, setOutPlaces } from "#core/geometry/index.ts";
import { inches, metres, toInches } from "#core/units/index.ts";
import { rod } from "./rim.ts";

/** Inches: rim 4 below grade, basin 24 high on 2 of bed, fitting 6 below the rim, lip 18 over grade, edge 3 over the lip. */
const design: SetOutDesign = {
  rimBelowGrade: inches(4),
  basinHeight: inches(24),
  bedThickness: inches(2),
  fittingBelowRim: inches(6),
  lipOverGrade: inches(18),
  linerEdgeOverLip: inches(3),
};
const limits = { rim: { lowBy: inches(1), highBy: inches(0.5) } };

function heights(of: SetOutDesign = design) {
  const found = heightsFromDesign(of, limits);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}
function targets(markReading: Uncertain, markOverGrade: Uncertain = certain(inches(2))): readonly SetOutTarget[] {
  const found = setOut(heights().heights, markReading, markOverGrade);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value.targets;
}
const asInches = (x: Uncertain | undefined): number => toInches(metres(x?.value ?? Number.NaN));
const aims = (...args: Parameters<typeof targets>): number[] => targets(...args).map(({ aim }) => asInches(aim));
const rim = (...args: Parameters<typeof targets>): SetOutTarget => targets(...args)[2] as SetOutTarget;

describe("rod readings from the design and one reading on the height mark", () => {
  test("mark read at 40 in, 2 in over grade: worked by hand", () => {
    // line 42 over grade; heights -30, -28, -4, -10, 18, 21
    expect(aims(certain(inches(40))).map((n) => Math.round(n * 1e6) / 1e6)).toEqual([72, 70, 46, 52, 24, 21]);
    expect(targets(certain(inches(40))).map(({ place }) => place)).toEqual(setOutPlaces);
  });

  test("limits: the rod reads less at the upper one", () => {
    const target = rim(certain(inches(40)));
    expect(asInches(target.least)).toBeCloseTo(45.5, 9);
    expect(asInches(target.most)).toBeCloseTo(47, 9);
    expect(targets(certain(inches(40)))[0]).not.toHaveProperty("most");
  });

  test("a mark wrong by 1 in moves every target by 1 in, whether in its reading or in its height", () => {
    const plain = aims(certain(inches(40)));
    const moved = (list: number[]) => list.map((n, i) => n - (plain[i] ?? Number.NaN));
    for (const by of moved(aims(certain(inches(41))))) expect(by).toBeCloseTo(1, 9);
    for (const by of moved(aims(certain(inches(40)), certain(inches(3))))) expect(by).toBeCloseTo(1, 9);
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (wrong) => {
        for (const by of moved(aims(certain(inches(40 + wrong))))) expect(by).toBeCloseTo(wrong, 9);
      }),
    );
  });

  test("heights over the height mark need no grade; those over grade are named without it", () => {
    const found = setOut([...heights().heights, { place: "rim", over: "height mark", aim: inches(-6) }], certain(inches(40)));
    if (!found.ok) throw new Error(found.refusal.code);
    expect(found.value.withoutGrade).toEqual(setOutPlaces);
    expect(found.value.targets.map(({ aim }) => asInches(aim))).toEqual([expect.closeTo(46, 9)]);
  });

  test("a design with gaps: which figure, and the rest still computes", () => {
    const { basinHeight: _, ...gap } = design;
    const found = heights(gap);
    expect(found.missing).toEqual([
      { place: "dug bottom", figures: ["basinHeight"] },
      { place: "top of bed", figures: ["basinHeight"] },
    ]);
    expect(found.heights.map(({ place }) => place)).toEqual(["rim", "wall fitting", "spillway lip", "liner edge"]);
  });
});

describe("raise or lower", () => {
  const target = rim(certain(inches(40)));
  const move = (reading: number, step?: number) => {
    const found = correctionFor(target, certain(inches(reading)), step);
    if (!found.ok) throw new Error(found.refusal.code);
    return [found.value.move, Math.round(asInches(found.value.by) * 1e6) / 1e6, Math.round(asInches(found.value.overAim) * 1e6) / 1e6];
  };

  test("a rod that reads too much stands too low", () => {
    expect(move(46.5)).toEqual(["raise", 0.5, -0.5]);
    expect(move(45.25)).toEqual(["lower", 0.75, 0.75]);
    expect(move(46)).toEqual(["leave", 0, 0]);
    expect(move(46.03)[0]).toBe("leave");
    expect(move(46.03, inches(1 / 32))[0]).toBe("raise");
  });

  test("what the set-up shares cancels; another set-up's does not", () => {
    const read = rod("mark", 40);
    const near = correctionFor(rim(read), rod("rim", 46));
    const far = correctionFor(rim(read), {
      ...rod("rim", 46),
      parts: new Map([...rod("rim", 46).parts].map(([k, v]) => [k.replace("set-up:s", "set-up:t"), v])),
    });
    if (!near.ok || !far.ok) throw new Error("refused");
    expect(expanded(near.value.overAim)).toBeLessThan(expanded(far.value.overAim));
    expect(standardUncertainty(rim(read).aim)).toBeCloseTo(standardUncertainty(read), 12);
  });

  test("doing what it says brings the reading to the aim", () => {
    fc.assert(
      fc.property(fc.double({ min: 30, max: 60, noNaN: true }), (reading) => {
        const [what, by] = move(reading, 0) as [string, number, number];
        expect(reading + (what === "raise" ? -by : by)).toBeCloseTo(46, 5);
      }),
    );
  });
});

describe("refuses by name", () => {
  const height = heights().heights[2];
  if (!height) throw new Error("no rim");
  test.each([
    ["a mark reading that is no number", () => setOut([height], certain(Number.NaN)), "number-not-finite"],
    ["a mark's height that is no number", () => setOut([height], certain(1), certain(Number.POSITIVE_INFINITY)), "number-not-finite"],
    ["an aim that is no number", () => setOut([{ ...height, aim: Number.NaN }], certain(1)), "number-not-finite"],
    ["a limit on the wrong side of its aim", () => setOut([{ ...height, lowBy: -0.01 }], certain(1)), "number-not-positive"],
    ["a basin of negative height", () => heightsFromDesign({ ...design, basinHeight: -0.1 }), "number-not-positive"],
    ["a design figure that is no number", () => heightsFromDesign({ ...design, lipOverGrade: Number.NaN }), "number-not-finite"],
    ["a reading that is no number", () => correctionFor(rim(certain(1)), certain(Number.NaN)), "number-not-finite"],
    ["a negative step", () => correctionFor(rim(certain(1)), certain(1), -1), "number-not-positive"],
  ])("%s", (_, run, code) => {
    expect(run()).toMatchObject({ ok: false, refusal: { code } });
  });
});
