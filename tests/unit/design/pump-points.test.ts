import { describe, expect, test } from "vitest";
import { pumpPoints } from "#core/job/index.ts";
import { gallonsPerMinute } from "#core/plumbing/index.ts";
import { feet } from "#core/units/index.ts";

function points(text: string) {
  const read = pumpPoints(text);
  if (!read.ok) throw new Error(`${read.refusal.code} at ${read.refusal.place}`);
  return read.value;
}

const [flow, head] = [gallonsPerMinute(20), feet(21)];

describe("the points of a pump's curve, as a kit card has them", () => {
  test.each([
    "20 gpm 21 ft",
    "20 gpm, 21 ft",
    "20 gal/min @ 21 ft",
    "20gpm at 21 ft",
    "20 gpm: 21'",
    "21 ft 0 in 20 gpm",
    "1200 gph 252 in",
    "75.70823568 L/min 6.4008 m",
    "4.542494141 m3/h a 6.4008 m",
  ])("%s", (text) => {
    const [point] = points(`0 gpm 24 ft; ${text}`).slice(1);
    expect(point?.flow).toBeCloseTo(flow, 7);
    expect(point?.head).toBeCloseTo(head, 5);
  });

  test("parted by semicolons or lines, empty ones let be", () => {
    expect(points("0 gpm 24 ft;\n20 gpm 21 ft;;77 gpm 0 ft;")).toHaveLength(3);
  });

  test.each([
    ["0 gpm 24 ft; 20 21", "pump-curve-text", "figures/pumpCurve/1", 14],
    ["0 gpm 24 ft; 20 gpm 21 gal", "reading-unit-kind", "figures/pumpCurve/1", undefined],
    ["0 gpm 24 ft; 20 knots 21 ft", "reading-unit-unknown", "figures/pumpCurve/1", 17],
    ["nonsense", "pump-curve-text", "figures/pumpCurve/0", 1],
  ])("%s is refused as %s at %s", (text, code, place, column) => {
    expect(pumpPoints(text)).toMatchObject({ ok: false, refusal: { code, place, ...(column === undefined ? {} : { column }) } });
  });

  test("no text is no point: how many there must be is the curve's own matter", () => {
    expect(points("  ; ")).toEqual([]);
  });
});
