import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { add, certain, standardUncertainty, subtract, type Uncertain, withSource } from "#core/doubt/index.ts";
import {
  crossings,
  degreesBetween,
  errorEllipse,
  levelDistance,
  type Mark,
  type PlaceByTies,
  placeByTies,
  planDistance,
  type SideSaid,
  type Tie,
} from "#core/geometry/index.ts";
import { mark, normals, taped, tiesTo } from "./tie-marks.ts";

function found(marks: readonly Mark[], ties: readonly Tie[], said?: SideSaid): PlaceByTies {
  const place = placeByTies(marks, ties, said);
  if (!place.ok) throw new Error(place.refusal.code);
  return place.value;
}
function placed(...args: Parameters<typeof found>): Extract<PlaceByTies, { kind: "placed" }> {
  const place = found(...args);
  if (place.kind !== "placed") throw new Error("mirrored");
  return place;
}
const [a, b, c, d] = [mark("A", 0, 0), mark("B", 8, 0), mark("C", 7, 6), mark("D", -1, 5)];
const said = (side: "left" | "right", from = "A", to = "B"): SideSaid => ({ from, to, side });

describe("two ties", () => {
  const ties = tiesTo([a, b], { x: 3, y: 4 });

  test("leave two mirror places and ask for the side; never guessed", () => {
    const place = found([a, b], ties);
    expect(place).toMatchObject({ kind: "mirrored", ask: { from: "A", to: "B" } });
    if (place.kind !== "mirrored") return;
    expect([place.left.point.y.value, place.right.point.y.value]).toEqual([expect.closeTo(4, 10), expect.closeTo(-4, 10)]);
    expect(place.left.consistency).toBeUndefined();
  });

  test.each([
    [said("left"), 4],
    [said("right"), -4],
    [said("right", "B", "A"), 4],
  ])("the side that is said picks: %j", (side, y) => {
    const place = placed([a, b], ties, side);
    expect(place.point.y.value).toBeCloseTo(y, 10);
    expect(place.concerns).toEqual([]);
  });

  test("distances too short together, and one too long for the other, are refused with the miss in micrometres", () => {
    const two = (r: number, s: number) =>
      placeByTies(
        [a, b],
        [
          { mark: "A", distance: taped("a", r) },
          { mark: "B", distance: taped("b", s) },
        ],
      );
    expect(two(3, 4.9)).toMatchObject({
      ok: false,
      refusal: { code: "ties-cannot-meet", figures: { first: "A", second: "B", miss: 100_000 } },
    });
    expect(two(11.2, 3)).toMatchObject({ ok: false, refusal: { code: "ties-cannot-meet", figures: { miss: 200_000 } } });
    expect(two(3, 5)).toMatchObject({ ok: false, refusal: { code: "ties-in-line" } });
  });

  test("a poor crossing is named, not refused; mirrors within each other's doubt too", () => {
    expect(placed([a, b], tiesTo([a, b], { x: 4, y: 0.8 }), said("left")).concerns).toEqual(["poor crossing"]);
    expect(placed([a, b], tiesTo([a, b], { x: 4, y: 0.2 }, [], 0.03), said("left")).concerns).toEqual(["poor crossing", "mirrors overlap"]);
  });
});

describe("three and more", () => {
  test("tell the side by themselves, and say so where another was said", () => {
    const ties = tiesTo([a, b, c], { x: 3, y: 4 });
    expect(placed([a, b, c], ties)).toMatchObject({ concerns: [], consistency: { agrees: true, degreesOfFreedom: 1 } });
    expect(placed([a, b, c], ties, said("right")).concerns).toEqual(["side differs"]);
  });

  test("marks in one line still leave two mirror places", () => {
    const row = [a, mark("M", 4, 0), b];
    expect(found(row, tiesTo(row, { x: 3, y: 4 })).kind).toBe("mirrored");
    expect(placed(row, tiesTo(row, { x: 3, y: 4 }), said("right")).point.y.value).toBeCloseTo(-4, 8);
  });

  test("a wrong distance: with three something is wrong, with four it is named", () => {
    const three = placed([a, b, c], tiesTo([a, b, c], { x: 3, y: 4 }, [0, 0, 0.1]));
    expect(three.concerns).toEqual(["ties disagree"]);
    expect(three.consistency?.suspect).toBeUndefined();
    const four = placed([a, b, c, d], tiesTo([a, b, c, d], { x: 3, y: 2 }, [0, 0, 0.1]));
    expect(four.consistency).toMatchObject({ agrees: false, degreesOfFreedom: 2, suspect: "C" });
    expect(four.residuals.map(({ mark: name }) => name)).toEqual(["A", "B", "C", "D"]);
  });

  test("a foot lost cannot meet and names the pair; the eighth of an inch within the doubt is fitted", () => {
    const marks = [a, b, mark("E", 4, 9)];
    const inLine = (miss: number) => placeByTies(marks, tiesTo(marks, { x: 4, y: 0.000001 }, [-miss, 0, 0]));
    expect(inLine(0.3)).toMatchObject({
      ok: false,
      refusal: { code: "ties-cannot-meet", figures: { first: "A", second: "B", miss: 300_000 } },
    });
    expect(inLine(0.003)).toMatchObject({ ok: true, value: { kind: "placed", concerns: [] } });
  });

  test("without any doubt all ties count alike, and nothing is said of their fit", () => {
    const exact = tiesTo([a, b, c], { x: 3, y: 4 }, [0.01, 0, 0]).map(({ mark: name, distance }) => ({
      mark: name,
      distance: certain(distance.value),
    }));
    const alike = placed([a, b, c], tiesTo([a, b, c], { x: 3, y: 4 }, [0.01, 0, 0]));
    const place = placed([a, b, c], exact);
    expect(place.consistency).toBeUndefined();
    expect(place.point.x.value).toBeCloseTo(alike.point.x.value, 9);
    expect(place.ellipse.semiMajor).toBe(0);
  });
});

const metre = fc.double({ min: -10, max: 10, noNaN: true });
const around = fc.record({ x: fc.double({ min: 1, max: 6, noNaN: true }), y: fc.double({ min: 1, max: 4, noNaN: true }) });
const errors = fc.array(fc.double({ min: -0.004, max: 0.004, noNaN: true }), { minLength: 4, maxLength: 4 });

describe("properties", () => {
  test("the order of ties changes no bit", () => {
    fc.assert(
      fc.property(around, errors, (at, wrong) => {
        const marks = [a, b, c, d];
        const ties = tiesTo(marks, at, wrong);
        expect(placed(marks, [...ties].reverse())).toEqual(placed(marks, ties));
      }),
    );
  });

  test("turned and moved marks turn and move the place and its ellipse, and nothing else", () => {
    fc.assert(
      fc.property(around, errors, metre, metre, fc.double({ min: 0, max: 6.28, noNaN: true }), (at, wrong, dx, dy, angle) => {
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
        const turn = (x: number, y: number) => ({ x: dx + cos * x - sin * y, y: dy + sin * x + cos * y });
        const marks = [a, b, c, d];
        const ties = tiesTo(marks, at, wrong);
        const turned = marks.map(({ name, x, y }) => mark(name, turn(x.value, y.value).x, turn(x.value, y.value).y));
        const [one, other] = [placed(marks, ties), placed(turned, ties)];
        const expected = turn(one.point.x.value, one.point.y.value);
        expect(other.point.x.value).toBeCloseTo(expected.x, 7);
        expect(other.point.y.value).toBeCloseTo(expected.y, 7);
        expect(other.ellipse.semiMajor).toBeCloseTo(one.ellipse.semiMajor, 9);
        expect(other.ellipse.semiMinor).toBeCloseTo(one.ellipse.semiMinor, 9);
        expect(other.consistency?.chiSquare).toBeCloseTo(one.consistency?.chiSquare ?? Number.NaN, -2);
      }),
    );
  });

  test("mirrored in the first axis: left becomes right", () => {
    fc.assert(
      fc.property(around, errors, (at, wrong) => {
        const mirror = (m: Mark): Mark => mark(m.name, m.x.value, -m.y.value);
        const marks = [a, b, c];
        const [one, other] = [placed(marks, tiesTo(marks, at, wrong)), placed(marks.map(mirror), tiesTo(marks, at, wrong))];
        expect(other.point.x.value).toBeCloseTo(one.point.x.value, 8);
        expect(other.point.y.value).toBeCloseTo(-one.point.y.value, 8);
        expect(other.side.side).not.toBe(one.side.side);
      }),
    );
  });

  test("ties without error bring back the place", () => {
    fc.assert(
      fc.property(around, (at) => {
        const place = placed([a, b, c], tiesTo([a, b, c], at));
        expect(place.point.x.value).toBeCloseTo(at.x, 8);
        expect(place.point.y.value).toBeCloseTo(at.y, 8);
      }),
    );
  });
});

describe("the ellipse against 4000 simulated measurings (as GUM Supplement 1 does; seeded)", () => {
  const runs = 4000;
  const moments = (points: readonly { x: number; y: number }[]) => {
    const mean = (f: (p: { x: number; y: number }) => number) => points.reduce((s, p) => s + f(p), 0) / points.length;
    const [mx, my] = [mean(({ x }) => x), mean(({ y }) => y)];
    return { xx: mean(({ x }) => (x - mx) ** 2), xy: mean(({ x, y }) => (x - mx) * (y - my)), yy: mean(({ y }) => (y - my) ** 2) };
  };

  /** `shared`: one error in all distances, as of one tape. Mark C is itself doubtful. */
  test.each([
    ["each tie by itself", 0],
    ["with an error that all ties share", 0.02],
  ])("%s", (_, shared) => {
    const [normal, u] = [normals(7), 0.01];
    const at = { x: 3, y: 2.5 };
    const marks = [a, b, { ...c, x: taped("C", 7, 0.015) }];
    const tape = (x: Uncertain): Uncertain => (shared > 0 ? withSource(x, "set-up:tape/permitted-error", shared) : x);
    const nominal = tiesTo(marks, at, [], u).map((tie) => ({ ...tie, distance: tape(tie.distance) }));
    const place = placed(marks, nominal);
    const simulated = Array.from({ length: runs }, () => {
      const all = shared * normal();
      const trueC = { ...c, x: certain(7 + 0.015 * normal()) };
      const drawn = tiesTo(
        [a, b, trueC],
        at,
        [0, 0, 0].map(() => all + u * normal()),
        u,
      ).map((tie) => ({ ...tie, distance: tape(tie.distance) }));
      return placed(marks, drawn);
    });
    const { xx, xy, yy } = moments(simulated.map(({ point }) => ({ x: point.x.value, y: point.y.value })));
    const { semiMajor, semiMinor, direction } = place.ellipse;
    const spread = Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy);
    expect(semiMajor / Math.sqrt((xx + yy) / 2 + spread)).toBeCloseTo(1, 1);
    expect(semiMinor / Math.sqrt((xx + yy) / 2 - spread)).toBeCloseTo(1, 1);
    const along = direction.x ** 2 * xx + 2 * direction.x * direction.y * xy + direction.y ** 2 * yy;
    expect(along / ((xx + yy) / 2 + spread)).toBeGreaterThan(0.99);
    const disagreeing = simulated.filter(({ consistency }) => consistency?.agrees === false).length / runs;
    expect(disagreeing).toBeGreaterThan(0.04);
    expect(disagreeing).toBeLessThan(0.06);
  });

  test("sources that the point shares with a mark cancel in their distance", () => {
    const drift = (x: number) => withSource(certain(x), "common", 0.5);
    const marks = [a, b, c].map((m) => ({ ...m, x: drift(m.x.value) }));
    const { point } = placed(marks, tiesTo(marks, { x: 3, y: 4 }));
    expect(standardUncertainty(point.x)).toBeGreaterThan(0.49);
    expect(standardUncertainty(subtract(point.x, marks[0]?.x ?? certain(0)))).toBeLessThan(0.01);
    const away = planDistance(point, marks[2] as Mark);
    expect(away.ok && standardUncertainty(away.value)).toBeLessThan(0.01);
  });
});

describe("refuses by name", () => {
  const ties = tiesTo([a, b], { x: 3, y: 4 });
  const changed = (value: number): Tie[] => [ties[0] as Tie, { mark: "B", distance: certain(value) }];
  test.each([
    ["one tie", ties.slice(1), undefined, "ties-too-few"],
    ["an unknown mark", [...ties, { mark: "Z", distance: certain(3) }], undefined, "ties-mark-unknown"],
    ["a mark twice", [...ties, { mark: "A", distance: certain(3) }], undefined, "ties-mark-twice"],
    ["a distance of nothing", changed(0), undefined, "number-not-positive"],
    ["a negative distance", changed(-3), undefined, "number-not-positive"],
    ["no number", changed(Number.NaN), undefined, "number-not-finite"],
    ["an endless distance", changed(Number.POSITIVE_INFINITY), undefined, "number-not-finite"],
    ["a side of an unknown line", ties, said("left", "A", "Z"), "ties-mark-unknown"],
  ] as const)("%s", (_, list, side, code) => {
    expect(placeByTies([a, b], list, side)).toMatchObject({ ok: false, refusal: { code } });
  });

  test("two marks in one spot", () => {
    const twin = [a, mark("B", 0, 0)];
    expect(placeByTies(twin, tiesTo(twin, { x: 3, y: 4 }))).toMatchObject({ ok: false, refusal: { code: "points-coincident" } });
  });
});

describe("crossings", () => {
  test("the best pair comes first; 30 and 150 degrees are the bounds", () => {
    const list = crossings([a, b, mark("F", 4, 0.3)], { x: 4, y: 4 });
    expect(list[0]).toMatchObject({ first: "A", second: "B", degrees: 90, poor: false });
    const at = (degrees: number) => {
      const radians = (degrees * Math.PI) / 180;
      return crossings([mark("A", 1, 0), mark("B", 2 * Math.cos(radians), 2 * Math.sin(radians))], { x: 0, y: 0 })[0];
    };
    expect([29.9, 30.1, 149.9, 150.1].map((degrees) => at(degrees)?.poor)).toEqual([true, false, false, true]);
  });

  test("degrees agree with the arc tangent of the engine", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 180, noNaN: true }), (degrees) => {
        const radians = (degrees * Math.PI) / 180;
        expect(degreesBetween({ x: 3, y: 0 }, { x: 2 * Math.cos(radians), y: -2 * Math.sin(radians) })).toBeCloseTo(degrees, 6);
      }),
    );
  });
});

describe("small parts", () => {
  test("a tape on a slope: 3-4-5, with its doubt", () => {
    const level = levelDistance(taped("t", 5, 0.01), taped("rise", -3, 0.02));
    if (!level.ok) throw new Error(level.refusal.code);
    expect(level.value.value).toBeCloseTo(4, 12);
    expect(standardUncertainty(level.value)).toBeCloseTo(Math.hypot(0.01 * 1.25, 0.02 * 0.75), 12);
    expect(levelDistance(certain(3), certain(3))).toMatchObject({ ok: false, refusal: { code: "ties-rise-too-great" } });
    expect(levelDistance(certain(0), certain(0))).toMatchObject({ ok: false, refusal: { code: "number-not-positive" } });
    expect(levelDistance(certain(Number.NaN), certain(0))).toMatchObject({ ok: false, refusal: { code: "number-not-finite" } });
  });

  test("an ellipse: certain, round, along y, at 45 degrees", () => {
    const [one, other] = [withSource(certain(0), "one", 3), withSource(certain(0), "other", 1)];
    expect(errorEllipse({ x: certain(1), y: certain(2) })).toEqual({ semiMajor: 0, semiMinor: 0, direction: { x: 1, y: 0 } });
    expect(errorEllipse({ x: one, y: withSource(certain(0), "like it", 3) })).toEqual({
      semiMajor: 3,
      semiMinor: 3,
      direction: { x: 1, y: 0 },
    });
    expect(errorEllipse({ x: other, y: one })).toEqual({ semiMajor: 3, semiMinor: 1, direction: { x: 0, y: 1 } });
    const { semiMajor, semiMinor, direction } = errorEllipse({ x: add(one, other), y: subtract(one, other) });
    expect(semiMajor).toBeCloseTo(3 * Math.SQRT2, 12);
    expect(semiMinor).toBeCloseTo(Math.SQRT2, 12);
    expect(direction.x).toBeCloseTo(Math.SQRT1_2, 12);
    expect(direction.y).toBeCloseTo(Math.SQRT1_2, 12);
  });
});
