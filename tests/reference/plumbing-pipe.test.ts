import { describe, test } from "vitest";
import { certain, expanded } from "#core/doubt/index.ts";
import {
  boreTables,
  equivalentLength,
  type FittingKind,
  fittingTables,
  pipeBore,
  pipeSizes,
  publishedLengths,
  schedule40,
  socketDimensions,
  socketStandards,
} from "#core/plumbing/index.ts";
import { inches, metres, toInches } from "#core/units/index.ts";
import { between, byHand, disagreement, published, same, source } from "./checked.ts";

const d1785 = source("ASTM D1785", "table 1 and walls of Schedule 40, quoted on two pages", "quoted");
const extruder = source("A pipe extruder's dimension table", "average walls", "seen");
const bore = (size: (typeof pipeSizes)[number], table: keyof typeof boreTables): number => boreTables[table].bores[size as never];

describe("Schedule 40 pipe", () => {
  test("outside diameters and their tolerances", () => {
    const sizes = ["1/2", "3/4", "1", "1-1/4", "1-1/2", "2"] as const;
    const [outside, tolerance] = [sizes.map((size) => schedule40[size].outside), sizes.map((size) => schedule40[size].outsideTolerance)];
    same(d1785, "outside diameter, 1/2 to 2 in", outside, [0.84, 1.05, 1.315, 1.66, 1.9, 2.375]);
    same(d1785, "its tolerance, 1/2 to 2 in", tolerance, [0.004, 0.004, 0.005, 0.005, 0.006, 0.006]);
    const limits = (size: "3" | "4") => [-1, 1].map((sign) => (schedule40[size].outside + sign * schedule40[size].outsideTolerance) * 25.4);
    published(d1785, "outside limits of 3 and 4 in, mm", [...limits("3"), ...limits("4")], [88.7, 89.1, 114.07, 114.53], {
      absolute: 0.005,
    });
    const memory = source("ASTM D1785", "2-1/2 in", "from memory");
    same(
      memory,
      "outside diameter and tolerance of 2-1/2 in",
      [schedule40["2-1/2"].outside, schedule40["2-1/2"].outsideTolerance],
      [2.875, 0.007],
    );
  });

  test("walls, mm, least and greatest", () => {
    const walls = pipeSizes.flatMap((size) => schedule40[size].wall);
    const printed = [2.77, 3.28, 2.87, 3.38, 3.38, 3.89, 3.56, 4.07, 3.68, 4.19, 3.91, 4.42, 5.16, 5.77, 5.49, 6.15, 6.02, 6.73];
    same(d1785, "wall of Schedule 40, mm", walls, printed);
    const sizes = ["1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"] as const;
    const least = sizes.map((size) => schedule40[size].wall[0] / 25.4);
    published(byHand("D1785's walls in inches"), "least wall, in", least, [0.109, 0.113, 0.133, 0.14, 0.145, 0.154, 0.203, 0.216, 0.237], {
      digits: 3,
    });
  });

  test("minimum-wall bores are D1785's diameter less two of its least walls", () => {
    for (const size of pipeSizes) {
      const { outside, wall } = schedule40[size];
      published(d1785, "bore at the least wall, in", bore(size, "schedule 40, minimum wall"), outside - (2 * wall[0]) / 25.4, {
        absolute: 0.002,
      });
    }
  });

  test("average-wall bores of an extruder's table", () => {
    for (const [size, outside, wall] of [
      ["1-1/2", 1.9, 0.155],
      ["2", 2.375, 0.164],
      ["3", 3.5, 0.229],
      ["4", 4.5, 0.251],
    ] as const)
      published(extruder, "bore at the average wall, in", bore(size, "schedule 40, average wall"), outside - 2 * wall, { digits: 9 });
  });

  test("the other sizes are the middle of D1785's walls; a page in circulation says 1.029 for 1 in", () => {
    for (const size of pipeSizes) {
      const { outside, wall } = schedule40[size];
      const middle = outside - (wall[0] + wall[1]) / 25.4;
      published(d1785, "bore at the middle of its walls, in", bore(size, "schedule 40, average wall"), middle, { absolute: 0.004 });
    }
    same(source("A page of pipe dimensions", "1 in, average bore", "seen"), "bore of 1 in", bore("1", "schedule 40, average wall"), 1.029);
  });

  test("a second table of averages differs by up to 0.006 in; both are kept, and the doubt spans both", () => {
    const engineer = source("An engineer's page of PVC pipe data", "average I.D.", "seen");
    for (const size of pipeSizes) {
      const [one, two] = [bore(size, "schedule 40, average wall"), bore(size, "schedule 40, average wall, second table")];
      published(engineer, "average bore, in", one, two, { absolute: 0.0061 });
      const found = pipeBore(size);
      between(
        engineer,
        "distance within our U, in",
        Math.abs(one - two),
        0,
        found.ok ? toInches(metres(expanded(found.value))) : Number.NaN,
      );
    }
    disagreement(
      "average bore of 3/4 in pipe, in",
      [
        [d1785, bore("3/4", "schedule 40, average wall")],
        [engineer, bore("3/4", "schedule 40, average wall, second table")],
        [source("Friction tables for Schedule 40", "minimum-wall bore", "seen"), 0.824],
      ],
      "the middle of D1785's walls, with the standard's own tolerances as doubt",
    );
  });

  test("1.590 and 2.047 for 1.610 and 2.067 cost 6.3 and 4.8 % more head", () => {
    const share = [(1.61 / 1.59) ** 4.8655, (2.067 / 2.047) ** 4.8655];
    published(byHand("exponent 4.8655"), "head at average over minimum wall", share, [1.063, 1.048], { digits: 3 });
  });
});

const documentTable = source("PVC and CPVC equivalent lengths on a document site", "friction loss in fittings", "seen");
const irrigation = source("An irrigation calculator", "fittings and valves", "seen");
const trade = source("A PVC trade page", "friction loss of fittings", "seen");
const allowance = source("Illinois Administrative Code 77-890", "appendix A table Q, wrought fittings", "seen");
const crane = source("Crane TP-410", "30 diameters for a 90 ell, quoted in CalebBell/fluids", "quoted");

describe("equivalent lengths of plastic fittings, feet", () => {
  test("the whole table for 1/2 to 4 in", () => {
    same(documentTable, "ft of pipe, six kinds, 1/2 to 4 in", fittingTables["PVC and CPVC"]?.feet, {
      "90 ell": [1.5, 2.0, 2.5, 3.8, 4.0, 5.7, 6.9, 7.9, 12.0],
      "45 ell": [0.8, 1.1, 1.4, 1.8, 2.1, 2.6, 3.1, 4.0, 5.1],
      "gate valve": [0.3, 0.4, 0.6, 0.8, 1.0, 1.5, 2.0, 3.0, null],
      "tee, run": [1.0, 1.4, 1.7, 2.3, 2.7, 4.3, 5.1, 6.2, 8.3],
      "tee, branch": [4.0, 5.0, 6.0, 7.0, 8.0, 12.0, 15.0, 16.0, 22.0],
      adapter: [1.0, 1.5, 2.0, 2.8, 3.5, 4.5, 5.5, 6.5, 9.0],
    });
  });

  const shown = (kind: FittingKind, size: (typeof pipeSizes)[number], table: string): number => {
    const found = publishedLengths(kind, size).find((one) => one.table === table);
    return found === undefined ? Number.NaN : toInches(metres(found.length)) / 12;
  };
  test.each<readonly [FittingKind, number, number]>([
    ["tee, run", 2.7, 4],
    ["tee, branch", 8.4, 12],
    ["90 ell", 4, 5.7],
    ["45 ell", 2.1, 2.6],
    ["swing check valve", 13.4, 17.2],
    ["gate valve", 1.1, 1.4],
  ])("irrigation calculator, %s", (kind, oneAndHalf, two) => {
    const ours = [shown(kind, "1-1/2", "irrigation"), shown(kind, "2", "irrigation")];
    published(irrigation, "ft of pipe, 1-1/2 and 2 in", ours, [oneAndHalf, two], { digits: 9 });
  });
  test.each<readonly [FittingKind, number, number]>([
    ["90 ell", 4, 6],
    ["45 ell", 2, 2.5],
    ["tee, run", 2.7, 4.3],
    ["tee, branch", 8, 12],
  ])("trade page, %s", (kind, oneAndHalf, two) => {
    const ours = [shown(kind, "1-1/2", "PVC trade page"), shown(kind, "2", "PVC trade page")];
    published(trade, "ft of pipe, 1-1/2 and 2 in", ours, [oneAndHalf, two], { digits: 9 });
  });

  test("a plumbing code's allowance is far smaller, and Crane's 30 diameters near the tables", () => {
    const ours = [shown("90 ell", "1-1/2", "plumbing code allowance"), shown("90 ell", "2", "plumbing code allowance")];
    published(allowance, "ft of pipe, 90 ell", ours, [2, 2], { digits: 9 });
    const used = equivalentLength("90 ell", "2");
    const [length, spread] = used.ok ? [used.value.value, expanded(used.value)].map((n) => toInches(metres(n)) / 12) : [];
    between(
      crane,
      "ft of pipe, 2 in 90 ell, within our U",
      (30 * 2.067) / 12,
      (length ?? 0) - (spread ?? 0),
      (length ?? 0) + (spread ?? 0),
    );
  });

  test("they disagree", () => {
    disagreement(
      "ft of pipe for a 2 in 90 ell",
      [
        [documentTable, 5.7],
        [trade, 6.0],
        [crane, 5.17],
        [allowance, 2.0],
      ],
      "5.7 ± 20 %; a code's allowance counts in another way and is shown only",
    );
    disagreement(
      "ft of pipe for a 2 in tee, straight through",
      [
        [documentTable, 4.3],
        [irrigation, 4.0],
        [trade, 4.3],
      ],
      "4.3 ± 20 %",
    );
    disagreement(
      "ft of pipe for a 4 in 90 ell",
      [
        [documentTable, 12.0],
        [irrigation, 11.4],
      ],
      "12.0 ± 20 %",
    );
    published(irrigation, "ft of pipe, 4 in 90 ell", shown("90 ell", "4", "irrigation"), 11.4, { digits: 9 });
  });
});

describe("sockets, inches", () => {
  const manual = source("ASTM D2466 and D2467", "sockets, quoted in a PVC pipe maker's technical manual page 15", "quoted");
  test.each([
    ["1/2", 0.848, 0.836, 0.004, 0.688, 0.875],
    ["3/4", 1.058, 1.046, 0.004, 0.719, 1],
    ["1", 1.325, 1.31, 0.005, 0.875, 1.125],
    ["1-1/4", 1.67, 1.655, 0.005, 0.938, 1.25],
    ["1-1/2", 1.912, 1.894, 0.006, 1.094, 1.375],
    ["2", 2.387, 2.369, 0.006, 1.156, 1.5],
    ["2-1/2", 2.889, 2.868, 0.007, 1.75, 1.75],
    ["3", 3.516, 3.492, 0.008, 1.875, 1.875],
    ["4", 4.518, 4.491, 0.009, 2, 2.25],
  ] as const)("%s in: entrance %f, bottom %f, ± %f, least depth %f and %f", (size, entrance, bottom, tolerance, forty, eighty) => {
    same(manual, "entrance, bottom, tolerance, least depths", socketDimensions[size], {
      entrance,
      bottom,
      tolerance,
      leastDepth40: forty,
      leastDepth80: eighty,
    });
    const found = socketStandards(size, certain(inches(3)));
    const depths = found.ok ? found.value.map(({ leastDepth }) => toInches(metres(leastDepth))) : [];
    published(manual, "least depths as answered", depths, [forty, eighty], { digits: 9 });
  });

  test("the taper fits the pipe: play at the entrance, interference at the bottom", () => {
    const fit = byHand("D2466's taper over D1785's outside diameter");
    for (const size of pipeSizes) {
      const { entrance, bottom } = socketDimensions[size];
      between(fit, "play at the entrance, in", entrance - schedule40[size].outside, 0.005, 0.03);
      between(fit, "interference at the bottom, in", schedule40[size].outside - bottom, 0.003, 0.03);
    }
    const two = socketDimensions["2"];
    published(fit, "2 in: play and interference", [two.entrance - 2.375, 2.375 - two.bottom], [0.012, 0.006], { digits: 9 });
  });

  test("1 1/4 in of insertion for 1-1/2 in pipe lies between the two least depths", () => {
    const found = socketStandards("1-1/2", certain(inches(1.25)));
    const practice = source("Insertion of 1 1/4 in", "1-1/2 in pipe", "common practice");
    same(practice, "against Schedule 40 and 80", found.ok && found.value.map(({ against }) => against), ["at least", "less"]);
  });
});
