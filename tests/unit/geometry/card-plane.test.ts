import { describe, expect, test } from "vitest";
import { cardPlane, lensFrom, type PhotoLength, photoLength, type Spot, standFor } from "#core/geometry/index.ts";
import { chanceFrom } from "#infra/chance/index.ts";
import { card, codesSeen, focalLength, height, planeOf, seenFrom, type View, width } from "../../helpers/card-seen.ts";

const view: View = { tilt: 0.6, away: 1, right: 0.05, down: -0.08, k: 0 };
const measured = { distortion: 0, within: 1 };
/** On the sheet's plane, beside and beyond it, micrometres. */
const [from, to]: [Spot, Spot] = [
  { x: -150_000, y: 50_000 },
  { x: 350_000, y: 400_000 },
];
/** 500 mm across and 350 mm down. */
const LENGTH = Math.round(1000 * Math.sqrt(500 * 500 + 350 * 350));

function lengthIn(plane: ReturnType<typeof planeOf>, of: View, up = 0): PhotoLength {
  const found = photoLength(plane, seenFrom(of, from, up), seenFrom(of, to, up));
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}

describe("a card's plane", () => {
  test("exact corners give the exact length, beside the card and beyond it, and the camera's tilt and distance", () => {
    const plane = planeOf(codesSeen(view, 0.05), measured);
    expect(Math.abs(lengthIn(plane, view).micrometres - LENGTH)).toBeLessThanOrEqual(1);
    expect(plane).toMatchObject({ flat: true, rejected: [], degreesOfFreedom: 24, chiSquare: 0 });
    expect(plane.cosine).toBe(Math.round(1e6 * Math.cos(0.6)));
    expect(Math.abs(plane.away - Math.round(1e6 * Math.sqrt(1 + 0.05 * 0.05 + 0.08 * 0.08)))).toBeLessThanOrEqual(1);
  });

  test("the lens' distortion is told by the photo where the card is large in it, else it stays in the doubt", () => {
    const near: View = { ...view, tilt: 0.3, away: 0.42, right: 0.02, down: -0.02, k: 0.004 };
    const plane = planeOf(codesSeen(near, 0.02));
    expect(plane.distortion.u).toBeLessThan(1000);
    expect(Math.abs(plane.distortion.value - 4000)).toBeLessThan(2 * plane.distortion.u);
    const far = planeOf(codesSeen({ ...near, away: 1.5 }, 0.05));
    expect(far.distortion.u).toBeGreaterThan(2500);
  });

  test("one corner that is 3 pixels off is left out by name, and so is a code that lies elsewhere", () => {
    const corner = planeOf(
      codesSeen(view, 0.05, (name, i) => ({ x: name === "b" && i === 2 ? 3 : 0, y: 0 })),
      measured,
    );
    expect(corner).toMatchObject({ flat: true, rejected: ["b/2"] });
    expect(Math.abs(lengthIn(corner, view).micrometres - LENGTH)).toBeLessThanOrEqual(1);
    const code = planeOf(
      codesSeen(view, 0.05, (name, i) => (name === "d" ? { x: 4 + i, y: 6 - i * i } : { x: 0, y: 0 })),
      measured,
    );
    expect(code).toMatchObject({ flat: true, rejected: ["d/0", "d/1", "d/2", "d/3"] });
    expect(Math.abs(lengthIn(code, view).micrometres - LENGTH)).toBeLessThanOrEqual(1);
  });

  test("a sheet bent to 1 m is not flat: its edges stand 5.8 mm over its middle", () => {
    // (215.9 mm / 2)² / (2 × 1 m)
    const bent = codesSeen(view, 0.05, undefined, ({ x }) => ((x - 107_950) * (x - 107_950)) / 2 / 1e6);
    const plane = planeOf(bent, measured);
    expect(plane.flat).toBe(false);
    expect(plane.chiSquare).toBeGreaterThan(plane.most);
    expect(standFor(plane, lengthIn(plane, view), 1e6)).toMatchObject({ enough: false, advice: ["card-flat"] });
  });

  test("a plane 5 mm over the card's is measured too large by 5 mm over the distance, and a bound of 5 mm covers it", () => {
    const square: View = { ...view, tilt: 0 };
    const plane = planeOf(codesSeen(square, 0.05), measured);
    const found = lengthIn(plane, square, 5000);
    // at 1 m: 1 / (1 - 0.005)
    expect(Math.abs(found.micrometres - LENGTH / 0.995)).toBeLessThan(5);
    const wide = photoLength(plane, seenFrom(square, from), seenFrom(square, to), { tap: 0, height: 5000, lean: 0, print: 0, placing: 0 });
    const part = wide.ok ? wide.value.length.parts.get("height") : undefined;
    // slope LENGTH per metre, half-width 5 mm, rectangular
    expect((part ?? 0) * 1e6).toBeCloseTo((LENGTH * 0.005) / Math.sqrt(3), -1);
  });

  test("a print that is 0.1 % off and taps of half a pixel, by hand: square on from 1 m a pixel is a third of a millimetre", () => {
    const square: View = { ...view, tilt: 0 };
    const plane = planeOf(codesSeen(square, 0.05), measured);
    const found = photoLength(plane, seenFrom(square, from), seenFrom(square, to), {
      tap: 0.5,
      height: 0,
      lean: 0,
      print: 1000,
      placing: 0,
    });
    const parts = found.ok ? found.value.length.parts : new Map<string, number>();
    expect((parts.get("print") ?? 0) * 1e6).toBeCloseTo((LENGTH * 0.001) / Math.sqrt(3), 0);
    // two ends, half a pixel along the length each
    expect((parts.get("taps") ?? 0) * 1e6).toBeCloseTo((Math.sqrt(2) * 0.5 * 1e6) / 3000, 0);
  });
});

describe("U of a length", () => {
  test("against chance: corners, taps, lens drawn as stated; 2 u holds 95 in a hundred, and u is the errors' own spread", () => {
    const chance = chanceFrom(10);
    let [beyond, squares, stated] = [0, 0, 0];
    const rounds = 400;
    for (let n = 0; n < rounds; n++) {
      const k = 0.005 * (2 * chance.next() - 1);
      const drawn: View = { ...view, k };
      const noisy = codesSeen(drawn, 0.1, () => ({ x: 0.1 * chance.normal(), y: 0.1 * chance.normal() }));
      const tapped = ({ x, y }: Spot): Spot => ({ x: x + 0.5 * chance.normal(), y: y + 0.5 * chance.normal() });
      const found = photoLength(planeOf(noisy), tapped(seenFrom(drawn, from)), tapped(seenFrom(drawn, to)), {
        tap: 0.5,
        height: 0,
        lean: 0,
        print: 0,
        placing: 0,
      });
      if (!found.ok) throw new Error(found.refusal.code);
      const error = found.value.micrometres - LENGTH;
      if (Math.abs(error) > found.value.doubt) beyond += 1;
      squares += error * error;
      stated += (found.value.doubt * found.value.doubt) / 4;
    }
    // 5 % of 400 is 20 with a spread of 4.4
    expect(beyond).toBeLessThanOrEqual(33);
    expect(Math.abs(Math.sqrt(squares / stated) - 1)).toBeLessThan(0.12);
  });

  test("grows with the distance from the card and with the tilt, and says how to stand", () => {
    const plane = planeOf(codesSeen(view, 0.05));
    const at = (x: number): PhotoLength => {
      const found = photoLength(plane, seenFrom(view, { x, y: 100_000 }), seenFrom(view, { x: x + 200_000, y: 100_000 }));
      if (!found.ok) throw new Error(found.refusal.code);
      return found.value;
    };
    const doubts = [0, 200_000, 400_000].map((x) => at(x).doubt);
    expect(doubts).toEqual([...doubts].sort((a, b) => a - b));
    expect(standFor(plane, at(0), at(0).doubt)).toEqual({ enough: true, doubt: at(0).doubt, needed: at(0).doubt, advice: [] });
    expect(standFor(plane, at(400_000), 200).advice).toContain("square-on");
    const unknown = standFor(plane, at(400_000), 300).advice;
    expect(unknown).toContain("lens-measured");
  });
});

describe("a lens measured by photos of a card", () => {
  test("five near photos find a distortion of 0.3 % within their half-width; two are refused", () => {
    const chance = chanceFrom(4);
    const planes = Array.from({ length: 5 }, (_, n) => {
      const near: View = { tilt: 0.1 + 0.1 * n, away: 0.42, right: 0.03 * (n - 2), down: 0.01 * (2 - n), k: 0.003 };
      return planeOf(codesSeen(near, 0.04, () => ({ x: 0.04 * chance.normal(), y: 0.04 * chance.normal() })));
    });
    const lens = lensFrom(planes);
    expect(lens.ok && Math.abs(lens.value.distortion - 3000) <= lens.value.within && lens.value.within < 1000).toBe(true);
    expect(lensFrom(planes.slice(0, 2))).toMatchObject({ ok: false, refusal: { code: "points-too-few", figures: { least: 3 } } });
  });
});

test("the order in which codes were found changes no digit", () => {
  const noisy = codesSeen(view, 0.1, (name, i) => ({ x: 0.1 * Math.sin(i + name.charCodeAt(0)), y: 0.1 * Math.cos(3 * i) }));
  expect(planeOf([...noisy].reverse()).fit.model).toEqual(planeOf(noisy).fit.model);
});

describe("what is refused", () => {
  const codes = codesSeen(view, 0.05);
  test("no code of this card, no number, corners in one line", () => {
    const picture = { width, height, focalLength, codes };
    expect(cardPlane(card, { ...picture, codes: codes.map((code) => ({ ...code, name: "z" })) })).toMatchObject({
      refusal: { code: "points-too-few" },
    });
    expect(cardPlane(card, { ...picture, width: Number.NaN })).toMatchObject({ refusal: { code: "number-not-finite" } });
    const line = codes
      .slice(0, 1)
      .map((code) => ({ ...code, corners: code.corners.map((corner, i) => ({ ...corner, x: 100 * i, y: 50 * i })) as never }));
    expect(cardPlane(card, { ...picture, codes: line })).toMatchObject({ refusal: { code: "points-collinear" } });
  });

  test("a tap over the horizon and one spot tapped twice; one code alone will do", () => {
    const steep: View = { ...view, tilt: 1.2 };
    const plane = planeOf(codesSeen(steep, 0.05));
    // this pinhole sees the sheet's lower edge farther off: its horizon lies 3000 px / tan 1.2 = 1166 px below the picture's middle
    expect(photoLength(plane, { x: 2000, y: 1500 }, { x: 2000, y: 2680 })).toMatchObject({
      refusal: { code: "reading-out-of-range", place: "taps/1" },
    });
    expect(photoLength(plane, { x: 2000, y: 1500 }, { x: 2000, y: 1500 })).toMatchObject({ refusal: { code: "points-coincident" } });
    const alone = planeOf(codes.slice(0, 1), measured);
    expect(alone.degreesOfFreedom).toBe(0);
    expect(lengthIn(alone, view).doubt).toBeGreaterThan(5 * lengthIn(planeOf(codes, measured), view).doubt);
  });
});
