import { describe, test } from "vitest";
import { expectations } from "#core/job/index.ts";
import { source as design, parabola } from "../unit/design/planned.ts";
import { between, byHand, published, source } from "./checked.ts";

const GPM = 3785.411784;
const FOOT = 304_800;

function of(
  figures: Readonly<Record<string, string>>,
  card: Readonly<Record<string, string>> = {},
  texts: Readonly<Record<string, string>> = {},
) {
  const all = expectations(design(figures, card, texts), {});
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
    const closed = byHand("pump 24 − 0.004 q² ft, system 6 + 0.001 q² ft: q = √(18/0.005)");
    published(closed, "gpm from typed figures", found("flow") / GPM, 60, { digits: 2 });
    published(closed, "ft of head from typed figures", found("pumpHead") / FOOT, 9.6, { digits: 3 });
  });

  test("static head 6 ft, 60 ft of 2.067 in, C 150: 60.367 gpm, 9.4235 ft, 5.772 ft/s (worked out by hand from Hazen-Williams 0.2083, no publication)", () => {
    const figures = { staticHead: "6 ft", pipeRun: "60 ft", pipeSize: "2 in", elbows90: "0" };
    const found = of(figures, { pipeBore: "2.067 in", pipeCoefficient: "150" }, { pumpCurve: parabola, pipeKind: "rigid" });
    // between the card's points the curve is a monotone cubic, not the parabola itself
    const root = byHand("pump 24 − 0.004 q² ft, 6 ft and 60 ft of 2.067 in by Hazen-Williams 0.2083, C 150");
    published(root, "gpm from typed figures", found("flow") / GPM, 60.367, { absolute: 0.05 });
    published(root, "ft of head from typed figures", found("pumpHead") / FOOT, 9.4235, { absolute: 0.03 });
    published(root, "ft/s from typed figures", found("velocity") / 304.8, 5.772, { absolute: 0.01 });
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
    const exhibit = source(
      "Illinois Administrative Code 77-906",
      "appendix A exhibit I, friction in Schedule 40 plastic pipe, C 150",
      "seen",
    );
    published(exhibit, "ft over 100 ft from typed figures", illinois(gpm, size, bore)("frictionHead") / FOOT, feet, { share: 0.02 });
  });

  test("velocity, 40 gpm in 2.193 in bore 3.39 ft/s: a university course's friction table for PVC class 160, which cuts its digits", () => {
    const found = of({ pipeRun: "1 ft", pipeSize: "2 in", flowWanted: "40 gpm" }, { pipeBore: "2.193 in" });
    const course = source("University course table Tbl-IR-BH-1", "friction loss for PVC class 160 pipe", "seen");
    between(course, "ft/s from typed figures, cut to two decimals", found("velocity") / 304.8, 3.39, 3.405);
  });

  test("least socket depth of 2 in: 1.156 in, 1.500 in: ASTM D2466 and D2467, quoted in a pipe maker's manual; inch fractions to a micrometre", () => {
    const found = of({ pipeSize: "2 in" });
    const manual = source("ASTM D2466 and D2467", "sockets, quoted in a PVC pipe maker's technical manual page 15", "quoted");
    const ours = [found("socketLeastSchedule40") / 25_400, found("socketLeastSchedule80") / 25_400];
    published(manual, "least depths of 2 in from typed figures", ours, [1.156, 1.5], { digits: 4 });
  });

  test("voltage drop, 22 A over 50 ft of 12 AWG: 4.36 V, seen as a worked example with 1.98 ohms per 1000 ft (NEC chapter 9 table 8, quoted)", () => {
    const found = of({ voltage: "120 V", wireRun: "50 ft" }, { pumpCurrent: "22 A" }, { wireSize: "12 AWG" });
    const page = source("A secondary page on voltage drop", "22 A, 50 ft, 1.98 ohms", "seen");
    published(page, "V and % from typed figures", [found("voltageDrop") / 1000, found("voltageDropShare") / 1e4], [4.36, 3.63], {
      digits: 2,
    });
  });

  test("a lip 1/8 in out of level at 0.68 in of head runs about 32 % more at its low end (issue's own figure, Francis at both ends)", () => {
    // the flow that stands 0.68 in above the lip by Francis: 3.33 (0.68/12)^1.5 cfs a foot
    const perFoot = 3.33 * (0.68 / 12) ** 1.5 * 448.831;
    const found = of({ spillwayWidth: "24.00 in", flowWanted: `${(2 * perFoot).toFixed(3)} gpm`, lipOutOfLevel: "1/8 in" });
    const own = source("Lip out of level", "((h + d/2)/(h − d/2))^1.5, Francis at both ends", "own");
    published(own, "head from typed figures, in", found("headOnLip") / 25_400, 0.68, { digits: 3 });
    published(own, "flow ratio at 1/8 in from typed figures", found("lipFlowRatio") / 1e6, 1.318, { digits: 2 });
  });

  test("a 45 in square basin of 75 lb rises on about 1.0 in (Archimedes; the example is the issue's own)", () => {
    const found = of({}, { basinLength: "45 in", basinWidth: "45 in", basinDepth: "24 in", basinWeight: "75 lb" });
    published(
      byHand("Archimedes, 75 lb over 14.06 ft² of 62.3 lb/ft³"),
      "in, from typed figures",
      found("floatsOn") / 25_400,
      (12 * 75) / (62.3 * 14.0625),
      { digits: 2 },
    );
  });
});
