import { describe, expect, test } from "vitest";
import { expectations } from "#core/job/index.ts";
import { parabola, source } from "../unit/design/planned.ts";

const GPM = 3785.411784;
const FOOT = 304_800;

function of(
  figures: Readonly<Record<string, string>>,
  card: Readonly<Record<string, string>> = {},
  texts: Readonly<Record<string, string>> = {},
) {
  const all = expectations(source(figures, card, texts), {});
  return (id: string): number => {
    const found = all.find((one) => one.id === id);
    if (found?.value === undefined) throw new Error(`${id}: ${found?.needs ?? found?.refusal?.code}`);
    return found.value;
  };
}

describe("from typed figures to the operating point, pump H = 24 − 0.004 q² ft by nine points of its card", () => {
  test("system 6 + 0.001 q² ft: q = √(18/0.005) = 60.0 gpm, H = 9.6 ft (closed form, own, no publication)", () => {
    const figures = { staticHead: "6 ft", pipeRun: "0 ft", pipeSize: "2 in", elbows90: "0" };
    const found = of(figures, { knownLoss: "3.6 ft", knownLossFlow: "60 gpm" }, { pumpCurve: parabola });
    expect(found("flow") / GPM).toBeCloseTo(60, 2);
    expect(found("pumpHead") / FOOT).toBeCloseTo(9.6, 3);
  });

  test("static head 6 ft, 60 ft of 2.067 in, C 150: 60.367 gpm, 9.4235 ft, 5.772 ft/s (worked out by hand from Hazen-Williams 0.2083, no publication)", () => {
    const figures = { staticHead: "6 ft", pipeRun: "60 ft", pipeSize: "2 in", elbows90: "0" };
    const found = of(figures, { pipeBore: "2.067 in", pipeCoefficient: "150" }, { pumpCurve: parabola, pipeKind: "rigid" });
    // between the card's points the curve is a monotone cubic, not the parabola itself
    expect(Math.abs(found("flow") / GPM - 60.367)).toBeLessThan(0.05);
    expect(Math.abs(found("pumpHead") / FOOT - 9.4235)).toBeLessThan(0.03);
    expect(Math.abs(found("velocity") / 304.8 - 5.772)).toBeLessThan(0.01);
  });
});

describe("from typed figures to published ones", () => {
  const illinois = (gpm: string, size: string, bore: string) =>
    of(
      { staticHead: "0 ft", pipeRun: "100.0 ft", pipeSize: size, elbows90: "0", flowWanted: gpm },
      { pipeBore: bore, pipeCoefficient: "150" },
      { pipeKind: "rigid" },
    );

  test.each([
    ["40 gpm", "2 in", "2.067 in", 2.62],
    ["50 gpm", "2 in", "2.067 in", 3.98],
    ["30 gpm", "1-1/2 in", "1.610 in", 5.22],
    ["20 gpm", "1-1/4 in", "1.380 in", 5.23],
    ["100 gpm", "3 in", "3.068 in", 2.09],
  ])("friction, %s in %s pipe: Illinois Administrative Code 77-906 appendix A exhibit I, within 2 %%", (gpm, size, bore, feet) => {
    expect(Math.abs(illinois(gpm, size, bore)("frictionHead") / FOOT / feet - 1)).toBeLessThan(0.02);
  });

  test("velocity, 40 gpm in 2.193 in bore 3.39 ft/s: a university course's friction table for PVC class 160, which cuts its digits", () => {
    const found = of({ pipeRun: "1 ft", pipeSize: "2 in", flowWanted: "40 gpm" }, { pipeBore: "2.193 in" });
    expect(Math.abs(found("velocity") / 304.8 - 3.39)).toBeLessThan(0.015);
  });

  test("least socket depth of 2 in: 1.156 in, 1.500 in: ASTM D2466 and D2467, quoted in a pipe maker's manual; inch fractions to a micrometre", () => {
    const found = of({ pipeSize: "2 in" });
    expect(found("socketLeastSchedule40")).toBe(Math.round(1.156 * 25_400));
    expect(found("socketLeastSchedule80")).toBe(Math.round(1.5 * 25_400));
  });

  test("voltage drop, 22 A over 50 ft of 12 AWG: 4.36 V, seen as a worked example with 1.98 ohms per 1000 ft (NEC chapter 9 table 8, quoted)", () => {
    const found = of({ voltage: "120 V", wireRun: "50 ft" }, { pumpCurrent: "22 A" }, { wireSize: "12 AWG" });
    expect(Math.abs(found("voltageDrop") / 1000 - 4.36)).toBeLessThan(0.005);
    expect(Math.abs(found("voltageDropShare") / 1e6 - 0.0363)).toBeLessThan(0.0001);
  });

  test("a lip 1/8 in out of level at 0.68 in of head runs about 32 % more at its low end (issue's own figure, Francis at both ends)", () => {
    // the flow that stands 0.68 in above the lip by Francis: 3.33 (0.68/12)^1.5 cfs a foot
    const perFoot = 3.33 * (0.68 / 12) ** 1.5 * 448.831;
    const found = of({ spillwayWidth: "24.00 in", flowWanted: `${(2 * perFoot).toFixed(3)} gpm`, lipOutOfLevel: "1/8 in" });
    expect(found("headOnLip") / 25_400).toBeCloseTo(0.68, 3);
    expect(found("lipFlowRatio") / 1e6).toBeCloseTo(1.318, 2);
  });

  test("a 45 in square basin of 75 lb rises on about 1.0 in (Archimedes; the example is the issue's own)", () => {
    const found = of({}, { basinLength: "45 in", basinWidth: "45 in", basinDepth: "24 in", basinWeight: "75 lb" });
    expect(found("floatsOn") / 25_400).toBeCloseTo((12 * 75) / (62.3 * 14.0625), 2);
    expect(Math.abs(found("floatsOn") / 25_400 - 1.0)).toBeLessThan(0.05);
  });
});
