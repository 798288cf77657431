import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import {
  frictionLoss,
  gallonsPerMinute,
  hazenWilliamsCoefficients,
  pipeContents,
  pipeVelocity,
  VELOCITY_GUIDANCE,
} from "#core/plumbing/index.ts";
import { cubicMetres, feet, inches, metres, toGallons, toInches } from "#core/units/index.ts";
import { between, byHand, disagreement, published, source } from "./checked.ts";

const toFeet = (length: number): number => toInches(metres(length)) / 12;
/** Feet of water over 100 ft. */
const lost = (gpm: number, bore: number, coefficient = 150): number => {
  const loss = frictionLoss(certain(gallonsPerMinute(gpm)), {
    length: certain(feet(100)),
    bore: certain(inches(bore)),
    coefficient: certain(coefficient),
  });
  return loss.ok ? toFeet(loss.value.value) : Number.NaN;
};
const fps = (gpm: number, bore: number): number => {
  const found = pipeVelocity(certain(gallonsPerMinute(gpm)), certain(inches(bore)));
  return found.ok ? toFeet(found.value.velocity.value) : Number.NaN;
};

const illinois = source("Illinois Administrative Code 77-906", "appendix A exhibit I, friction in Schedule 40 plastic pipe, C 150", "seen");
const class160 = source("University course table Tbl-IR-BH-1", "friction loss for PVC class 160 pipe", "seen");
const course = source("University course table Tbl-IR-BH-1", "footnote on design velocity", "seen");
const byFormula = byHand("Hazen-Williams 0.2083 (100/C)^1.852 q^1.852 / d^4.8655");

/** Columns 1-1/4, 1-1/2, 2, 3, 4 in; blank cells were lost when the page was read, and columns are told by size of the figure. */
describe("Illinois Administrative Code 77-906 appendix A exhibit I", () => {
  test.each([
    [10, 1.38, 1.46],
    [10, 1.61, 0.7],
    [10, 2.067, 0.21],
    [20, 1.38, 5.23],
    [20, 1.61, 2.46],
    [20, 2.067, 0.74],
    [30, 1.61, 5.22],
    [30, 2.067, 1.54],
    [40, 2.067, 2.62],
    [50, 2.067, 3.98],
    [30, 3.068, 0.23],
    [40, 3.068, 0.39],
    [50, 3.068, 0.58],
    [60, 3.068, 0.81],
    [80, 3.068, 1.38],
    [100, 3.068, 2.09],
    [40, 4.026, 0.09],
    [50, 4.026, 0.16],
    [60, 4.026, 0.21],
    [80, 4.026, 0.37],
    [100, 4.026, 0.55],
  ])("%i gpm in %f in: %f ft per 100 ft, 2 %% or 0.02 ft", (gpm, bore, table) => {
    published(illinois, "ft lost over 100 ft (2 % or 0.02 ft)", lost(gpm, bore), table, { absolute: Math.max(0.02 * table, 0.02) });
  });

  test("its 3 in at 20 gpm is 0.12; by formula 0.108, while the neighbours agree", () => {
    disagreement(
      "ft lost over 100 ft of 3 in at 20 gpm",
      [
        [illinois, 0.12],
        [byFormula, 0.108],
      ],
      "the formula",
    );
    published(byFormula, "ft lost over 100 ft of 3 in at 20 gpm", lost(20, 3.068), 0.108, { digits: 3 });
  });
});

describe("PVC class 160, velocities cut to their digits", () => {
  test.each([
    [1.195, 20, 5.71, 4.59, 0.005],
    [1.195, 40, 11.42, 16.59, 0.005],
    [2.193, 20, 1.69, 0.242, 0.0005],
    [2.193, 40, 3.39, 0.86, 0.005],
    [2.193, 55, 4.66, 1.56, 0.005],
    [2.193, 80, 6.78, 3.12, 0.005],
    [2.193, 100, 8.48, 4.72, 0.005],
    [3.23, 130, 5.08, 1.17, 0.005],
  ])("%f in, %i gpm: %f ft/s, %f psi", (bore, gpm, velocity, psi, digit) => {
    published(class160, "psi over 100 ft (1 % or half a digit)", lost(gpm, bore) * 0.4335, psi, { absolute: Math.max(0.01 * psi, digit) });
    between(class160, "ft/s, cut to two decimals with 0.408 for 0.4085", fps(gpm, bore), velocity, velocity + 0.026);
  });

  test("design velocity at most 5 ft/s", () => published(course, "ft/s, guidance", toFeet(VELOCITY_GUIDANCE), 5, { digits: 9 }));
});

describe("one form of Hazen-Williams against the others", () => {
  const forms = {
    "SI, 10.67 and 4.8704": (gpm: number, bore: number): number =>
      (10.67 * 30.48 * gallonsPerMinute(gpm) ** 1.852) / (150 ** 1.852 * inches(bore) ** 4.8704) / 0.3048,
    "original, 1.318 C R^0.63 S^0.54": (gpm: number, bore: number): number =>
      100 * (fps(gpm, bore) / (1.318 * 150 * (bore / 12 / 4) ** 0.63)) ** (1 / 0.54),
    "feet and cfs, 4.727 and 4.871": (gpm: number, bore: number): number =>
      (4.727 * 100 * (gpm / 448.831169) ** 1.852) / (150 ** 1.852 * (bore / 12) ** 4.871),
    "psi, 4.52 and 4.87": (gpm: number, bore: number): number => ((4.52 * gpm ** 1.85) / (150 ** 1.85 * bore ** 4.87)) * 100 * 2.3089,
  };
  const pages = { "SI, 10.67 and 4.8704": "quoted", "psi, 4.52 and 4.87": "seen" } as const;
  test.each(Object.entries(forms))("%s lies below ours, by less than 2 %%", (name, form) => {
    const from = source("Hazen-Williams in another form", name, name in pages ? pages[name as keyof typeof pages] : "worked out");
    for (const [gpm, bore] of [
      [20, 1.61],
      [40, 1.61],
      [40, 2.067],
      [80, 2.067],
    ] as const)
      between(from, "its head over ours, 20 to 80 gpm", form(gpm, bore) / lost(gpm, bore), 0.98, 1);
  });

  test("the points of the other forms themselves", () => {
    const si = byHand("Hazen-Williams SI form, 10.67 and 4.8704");
    const of = forms["SI, 10.67 and 4.8704"];
    const original = forms["original, 1.318 C R^0.63 S^0.54"];
    published(si, "ft over 100 ft", [of(20, 1.61), of(40, 1.61), of(40, 2.067), of(80, 2.067)], [2.4595, 8.8789, 2.6294, 9.492], {
      share: 5e-5,
    });
    published(
      byHand("Hazen-Williams original form, 1.318"),
      "ft over 100 ft",
      [original(20, 1.61), original(40, 2.067)],
      [2.4635, 2.6334],
      {
        share: 5e-4,
      },
    );
    disagreement(
      "ft lost over 100 ft of 2.067 in at 40 gpm, C 150",
      [
        [illinois, 2.62],
        [source("Hazen-Williams US form", "0.2083, 4.8655", "seen"), 2.6625],
        [si, 2.6294],
        [byHand("Darcy-Weisbach with Colebrook, smooth, 20 °C"), 2.654],
      ],
      "the US form, 0 to 2 % above the others",
    );
  });

  test("50 gpm, 2.067 in, C 150, 100 ft: 1.74 psi", () => {
    published(source("A public test of Hazen-Williams", "50 gpm, 2.067 in, C 150, 100 ft", "seen"), "psi", lost(50, 2.067) * 0.4335, 1.74, {
      digits: 2,
    });
  });

  test("a calculator's worked example, 50 gpm, 2 in, C 130, prints 6.09, having taken 50^1.852 for 1387; it is 1401", () => {
    published(byHand("50^1.852"), "power", 50 ** 1.852, 1401.3, { digits: 0 });
    const example = source("A calculator's worked example", "50 gpm, 2 in, C 130, its slip in 50^1.852 allowed for", "seen");
    published(example, "ft over 100 ft", (lost(50, 2, 130) * 1387) / 50 ** 1.852, 6.09, { absolute: 0.01 });
  });

  test("the exact points of the form, 1.610 and 2.067 in", () => {
    for (const [gpm, bore, head, velocity] of [
      [20, 1.61, 2.4875, 3.1519],
      [40, 1.61, 8.9799, 6.3038],
      [60, 1.61, 19.028, 9.4557],
      [80, 1.61, 32.418, 12.6075],
      [20, 2.067, 0.7375, 1.9122],
      [40, 2.067, 2.6625, 3.8245],
      [60, 2.067, 5.6418, 5.7367],
      [80, 2.067, 9.6117, 7.6489],
    ] as const) {
      published(byFormula, "ft over 100 ft, 1.610 and 2.067 in", lost(gpm, bore), head, { share: 1e-4 });
      published(byHand("v = 0.408498 q/d²"), "ft/s, 1.610 and 2.067 in", fps(gpm, bore), velocity, { digits: 3 });
    }
  });

  test("C 140, 130, 120, 100 cost 1.136, 1.303, 1.512, 2.119 times C 150", () => {
    const times = [140, 130, 120, 100].map((c) => lost(40, 2.067, c) / lost(40, 2.067));
    published(byFormula, "head at C 140, 130, 120, 100 over C 150", times, [1.136, 1.303, 1.512, 2.119], { digits: 3 });
  });

  test("design C of plastic pipe: 150, others print 145 and 140; flexible pipe has none", () => {
    const table = source("C-factor table for PE and PVC (CECALC)", "design value", "quoted");
    const { design, halfWidth } = hazenWilliamsCoefficients["rigid PVC"];
    published(table, "C of rigid PVC", design, 150, { digits: 9 });
    const sheet = source("An engineering site", "PVC Schedule 40 friction diagram", "seen");
    const glossary = source("An irrigation glossary", "Hazen-Williams", "seen");
    disagreement(
      "design C of PVC pipe",
      [
        [table, 150],
        [glossary, 145],
        [sheet, 140],
      ],
      `${design} ± ${halfWidth}, which holds all three`,
    );
    between(sheet, "C, within our ±", 140, design - halfWidth, design + halfWidth);
    const practice = source("Flexible and ribbed pipe", "C, no published figure found", "common practice");
    between(practice, "C of smooth flexible pipe", hazenWilliamsCoefficients["flexible PVC, smooth bore"].design, 140, 150);
    between(practice, "C of ribbed pipe", hazenWilliamsCoefficients["flexible, ribbed bore"].design, 100, 120);
  });
});

describe("velocity and contents", () => {
  test("v = 0.4085 q/d²", () => {
    const fire = source("A fire-protection friction calculator", "v = 0.4085 q/d²", "seen");
    published(fire, "ft/s at 100 gpm in 10 in", fps(100, 10), 0.4085, { digits: 4 });
    published(byHand("231/1728/60 / (π/4/144)"), "factor of v = k q/d²", fps(100, 10), 0.408498, { digits: 5 });
  });

  test("5 ft/s is reached at 31.7 gpm in 1.610 and 52.3 gpm in 2.067 in", () => {
    published(byHand("v = 0.408498 q/d²"), "ft/s at 31.73 and 52.3 gpm", [fps(31.73, 1.61), fps(52.3, 2.067)], [5, 5], { digits: 2 });
  });

  test("contents 0.0408 d² gal/ft; 0.10576, 0.17432, 0.38403 at 1.610, 2.067, 3.068 in", () => {
    const gallons = (bore: number): number => {
      const held = pipeContents(certain(inches(bore)), certain(feet(1)));
      return held.ok ? toGallons(cubicMetres(held.value.value)) : Number.NaN;
    };
    const chart = source("A conversion chart of a digital library", "pipe contents 0.0408 d²", "seen");
    published(chart, "gal a foot at 1 in", gallons(1), 0.0408, { digits: 4 });
    published(byHand("π/4 d² with 231 in³"), "gal a foot", [1.61, 2.067, 3.068].map(gallons), [0.10576, 0.17432, 0.38403], { digits: 5 });
  });
});
