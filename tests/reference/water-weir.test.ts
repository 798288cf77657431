import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { feet, inches } from "#core/units/index.ts";
import {
  broadCrestedCoefficient,
  gallonsPerHourPerInch,
  kindsvaterCarterTable,
  LEAST_HEAD_OF_FORMULAS,
  lipFlowRatio,
  outsideRange,
  sheetOverLip,
  toGallonsPerHourPerInch,
  type WeirFormula,
  weirFlow,
  weirHead,
} from "#core/water/index.ts";
import { between, byHand, disagreement, published, same, source } from "./checked.ts";

const CUBIC_FOOT = feet(1) ** 3;
/** 1 cfs = 448.831169 gpm, worked out from 231 in³. */
const GPM_PER_CFS = (1728 * 60) / 231;
const rootFoot = Math.sqrt(feet(1));

function flow(formula: WeirFormula, length: number, crestHeight: number, head: number, channelWidth?: number): number {
  const answer = weirFlow(formula, channelWidth === undefined ? { length, crestHeight } : { length, crestHeight, channelWidth }, head);
  if (!answer.ok) throw new Error(answer.refusal.place);
  return answer.value;
}
const cfs = (cubicMetresPerSecond: number): number => cubicMetresPerSecond / CUBIC_FOOT;

const fluids = source("CalebBell/fluids", "tests/test_open_flow.py: head 0.3 m over a crest of 0.4 m, lip 2 m", "seen");
const usbr = source("A worked sheet after USBR", "L 2 ft, B 4 ft, P 1 ft, H 0.45 ft", "seen");
const kindsvater = byHand("Kindsvater-Carter in feet, kh 0.003 ft");

describe("fluids library, test_open_flow.py", () => {
  test("Rehbock to the last digits, with Blevins' constants; with 0.083 and 0.0012 as others print it 0.05 % less", () => {
    published(fluids, "Rehbock, m³/s", flow("Rehbock", 2, 0.4, 0.3), 0.6486856330601333, { digits: 14 });
    const rounded = (2 / 3) * Math.sqrt(2 * 9.80665) * (0.602 + 0.083 * 0.75) * 2 * 0.3012 ** 1.5;
    published(byHand("Rehbock with 0.083 and 0.0012"), "share of the other constants' flow", rounded / 0.6486856330601333, 1, {
      share: 6e-4,
    });
  });

  test("Kindsvater-Carter in its metric form (0.602 + 0.075 h/p); by the USBR table in feet within 0.1 %", () => {
    published(fluids, "Kindsvater-Carter, m³/s", flow("Kindsvater-Carter", 2, 0.4, 0.3), 0.641560300081563, { share: 0.001 });
    const metric = (2 / 3) * Math.sqrt(2 * 9.80665) * (0.602 + 0.075 * 0.75) * (2 - 0.001) * 0.301 ** 1.5;
    published(fluids, "Kindsvater-Carter by its metric form, m³/s", metric, 0.641560300081563, { share: 1e-4 });
  });

  test("one weir, four published formulas", () => {
    const ackers = 0.6489618999846898;
    published(fluids, "Ackers against our Rehbock, m³/s", flow("Rehbock", 2, 0.4, 0.3), ackers, { share: 0.001 });
    published(fluids, "Ackers against our Kindsvater-Carter, m³/s", flow("Kindsvater-Carter", 2, 0.4, 0.3), ackers, { share: 0.012 });
    between(byHand("Francis ignores the approach"), "Francis over Ackers", flow("Francis", 2, 0.4, 0.3) / ackers, 0.92, 0.94);
    disagreement(
      "m³/s over a 2 m lip at 0.3 m of head, crest 0.4 m",
      [
        [source("CalebBell/fluids", "Ackers", "seen"), 0.64896],
        [source("CalebBell/fluids", "Rehbock", "seen"), 0.64869],
        [source("CalebBell/fluids", "Kindsvater-Carter", "seen"), 0.64156],
        [source("Francis", "3.33 L h^1.5", "seen"), Number(flow("Francis", 2, 0.4, 0.3).toFixed(5))],
      ],
      "Francis, and the others beside it with what lies outside their range",
    );
  });
});

describe("Francis with two end contractions, table in gpm, which runs 0.1 to 0.7 % high", () => {
  const table = source("A page on rectangular weirs", "contracted weirs, gpm (heads by fit)", "seen");
  test.each([
    [1 / 4, 1, 4.5, 4.48],
    [1, 1, 35.4, 35.36],
    [1, 3, 108, 107.26],
    [2, 1, 98.5, 98.31],
  ])("%f in over %i ft: %f gpm", (head, length, gpm, exact) => {
    const q = cfs(flow("Francis, open at both ends", feet(length), feet(2), inches(head))) * GPM_PER_CFS;
    published(table, "gpm", q, gpm, { share: 0.01 });
    published(byHand("3.33 (L − 0.2 h) h^1.5 × 448.831"), "gpm", q, exact, { digits: 2 });
  });
});

describe("a worked sheet after USBR", () => {
  test("Francis contracted 1.92 cfs", () => {
    published(usbr, "Francis, cfs", cfs(flow("Francis, open at both ends", feet(2), feet(1), feet(0.45))), 1.92, { digits: 2 });
  });

  test("its Kindsvater-Carter line, 1.981 cfs, takes the wrong C2 and exchanges kb and kh; done right 1.9614", () => {
    const q = cfs(flow("Kindsvater-Carter", feet(2), feet(1), feet(0.45), feet(4)));
    published(kindsvater, "cfs of the worked sheet", q, 1.9614, { share: 0.001 });
    disagreement(
      "cfs by Kindsvater-Carter of one worked sheet",
      [
        [usbr, 1.981],
        [kindsvater, 1.9614],
      ],
      "1.961: the sheet takes another row's C2 and exchanges kb with kh",
    );
  });

  test("C1 and C2 by L/B", () => {
    const swmm = source("EPA SWMM Reference Manual vol. II", "table 6-2, which cites USBR 2001", "quoted");
    same(
      swmm,
      "L/B, C1, C2",
      kindsvaterCarterTable.map(({ lengthOverWidth, c1, c2 }) => [lengthOverWidth, c1, c2]),
      [
        [0.2, -0.0087, 3.152],
        [0.4, 0.0317, 3.164],
        [0.5, 0.0612, 3.173],
        [0.6, 0.0995, 3.178],
        [0.7, 0.1602, 3.182],
        [0.8, 0.2376, 3.189],
        [0.9, 0.3447, 3.205],
        [1.0, 0.4, 3.22],
      ],
    );
    const curve = source("USBR Water Measurement Manual", "fig. 7-4, kb", "from memory");
    const kb = kindsvaterCarterTable.map(({ kb: metres }) => metres / feet(1));
    between(curve, "kb at L/B 1, ft", kb.at(-1) ?? Number.NaN, -0.0035, -0.0025);
    for (const one of kb.slice(0, -1)) between(curve, "kb at L/B 0.2 to 0.9, ft", one, 0.007, 0.0145);
  });

  test("suppressed, h 0.5, p 1, L 1 ft: 1.216 cfs, Francis 1.17733", () => {
    published(kindsvater, "cfs, suppressed", cfs(flow("Kindsvater-Carter", feet(1), feet(1), feet(0.5))), 1.21639, { share: 1e-4 });
    published(byHand("3.33 L h^1.5"), "cfs, suppressed", cfs(flow("Francis", feet(1), feet(1), feet(0.5))), 1.17733, { digits: 5 });
  });

  test("both forms of its constants agree: 2/3 √(2g) × 0.602 = 3.219 and × 0.075 = 0.401", () => {
    const factor = (2 / 3) * Math.sqrt(2 * 32.174);
    const last = kindsvaterCarterTable.at(-1);
    published(
      byHand("Kindsvater-Carter, metric twin"),
      "C2 and C1 at L/B 1",
      [last?.c2 ?? Number.NaN, last?.c1 ?? Number.NaN],
      [factor * 0.602, factor * 0.075],
      {
        absolute: 0.0015,
      },
    );
  });
});

describe("constants", () => {
  test("Francis 3.33 in feet is 1.84 in metres; exactly 1.8384", () => {
    const page = source("A page on rectangular weirs", "Francis, metric constant", "seen");
    published(page, "m^½/s", flow("Francis", 1, 1, 1), 1.84, { digits: 2 });
    published(byHand("3.33 √0.3048"), "m^½/s", flow("Francis", 1, 1, 1), 1.8384, { digits: 4 });
  });

  test("ideal broad crest 1.705, 3.0876 in feet", () => {
    const page = source("A secondary page on broad crests", "ideal coefficient", "seen");
    published(page, "m^½/s", flow("broad-crested", 1, 1, 1), 1.705, { digits: 3 });
    published(
      byHand("(2/3)^1.5 √g"),
      "m^½/s and ft^½/s",
      [flow("broad-crested", 1, 1, 1), flow("broad-crested", 1, 1, 1) / rootFoot],
      [1.7046, 3.0876],
      {
        absolute: 5e-4,
      },
    );
  });

  /** Feet; head, then coefficient by breadth. */
  test.each([
    [0.2, [2.8, 2.75, 2.69, 2.62, 2.54, 2.44]],
    [0.4, [2.92, 2.8, 2.72, 2.64, 2.61, 2.58]],
  ])("broad crest, head %f ft: %j over 0.5, 0.75, 1, 1.5, 2, 3 ft", (head, printed) => {
    const swmm = source("EPA SWMM Reference Manual vol. II", "table 6-3, after Brater and King", "quoted");
    const ours = [0.5, 0.75, 1, 1.5, 2, 3].map((breadth) => {
      const answer = broadCrestedCoefficient(feet(head), feet(breadth));
      return answer.ok ? answer.value / rootFoot : Number.NaN;
    });
    published(swmm, "C at heads of 0.2 and 0.4 ft", ours, printed, { digits: 9 });
  });
});

describe("the sheet on a landscape lip", () => {
  const sheetAt = (gphPerInch: number) => {
    const answer = sheetOverLip(certain(gallonsPerHourPerInch(gphPerInch)), certain(1));
    if (!answer.ok) throw new Error(answer.refusal.place);
    return answer.value;
  };
  const inInches = (metres: number): number => metres / inches(1);

  test("1 gph per inch is 4.4560e-4 × 1 cfs per foot", () => {
    published(byHand("12/(7.480519 × 3600)"), "cfs a foot of 1 gph an inch", gallonsPerHourPerInch(1) / feet(1) ** 2, 4.456e-4, {
      digits: 7,
    });
    published(byHand("12/(7.480519 × 3600)"), "117 gph an inch and back", toGallonsPerHourPerInch(gallonsPerHourPerInch(117)), 117, {
      digits: 9,
    });
  });

  /** gph/in, head by Francis, head over an ideal broad crest, critical depth, brink 0.715 of it. */
  test.each([
    [25, 0.268, 0.282, 0.188, 0.135],
    [50, 0.426, 0.448, 0.299, 0.214],
    [100, 0.676, 0.711, 0.474, 0.339],
    [150, 0.886, 0.932, 0.621, 0.444],
    [200, 1.074, 1.129, 0.753, 0.538],
    [300, 1.407, 1.48, 0.986, 0.705],
  ])("%i gph per inch: head %f in, broad %f in, critical depth %f in, brink %f in", (gph, head, broad, critical, brink) => {
    const { head: h, criticalDepth, sheet } = sheetAt(gph);
    published(byHand("(q/3.33)^⅔"), "head, in", inInches(h.value), head, { absolute: 6e-4 });
    const crest = weirHead("broad-crested", { length: 1, crestHeight: 1 }, gallonsPerHourPerInch(gph));
    published(byHand("(q/3.0876)^⅔"), "head over a broad crest, in", crest.ok ? inInches(crest.value) : Number.NaN, broad, {
      absolute: 6e-4,
    });
    published(byHand("(q²/g)^⅓"), "critical depth, in", inInches(criticalDepth.value), critical, { absolute: 6e-4 });
    published(source("Brink depth", "0.715 of the critical", "from memory"), "sheet at the brink, in", inInches(sheet.value), brink, {
      absolute: 0.0011,
    });
  });

  test.each([
    [0.25, 22.5],
    [0.5, 63.6],
    [0.75, 116.8],
    [1, 179.8],
  ])("%f in of head carry %f gph per inch", (head, gph) => {
    published(byHand("3.33 h^1.5, gph an inch"), "gph an inch", toGallonsPerHourPerInch(flow("Francis", 1, 1, inches(head))), gph, {
      digits: 1,
    });
  });

  test("the trade press: 1/4 in of sheet at 50, 1/2 to 5/8 in at 100, 1 to 1 1/4 in at 200 gph per inch: between depth and head, 20 % either side", () => {
    const press = source("Trade press", "sheet by flow per inch; no standard", "seen");
    for (const [gph, least, most] of [
      [50, 0.25, 0.25],
      [100, 0.5, 0.625],
      [200, 1, 1.25],
    ] as const) {
      const { head, criticalDepth } = sheetAt(gph);
      between(press, "in, thinnest it names", least, 0.8 * inInches(criticalDepth.value), 1.2 * inInches(head.value));
      between(press, "in, thickest it names", most, 0.8 * inInches(criticalDepth.value), 1.2 * inInches(head.value));
    }
  });

  test("usual landscape flow 100 to 150 gph per inch stands below the range of every formula", () => {
    const practice = source("Usual landscape range", "100 to 150 gph an inch", "common practice");
    same(
      practice,
      "warned of",
      [100, 150].map((gph) => sheetAt(gph).warning),
      ["heads out of range", "heads out of range"],
    );
    const range = source("USBR Water Measurement Manual", "least head 0.2 ft", "from memory");
    published(range, "ft", LEAST_HEAD_OF_FORMULAS / feet(1), 0.2, { digits: 9 });
    const rehbock = source("Rehbock's range", "0.03 < h < 0.75 m, b and p > 0.3 m, h/p < 1, in CalebBell/fluids", "seen");
    const outside = (head: number, p: number) => outsideRange("Rehbock", { length: 2, crestHeight: p }, head);
    same(
      rehbock,
      "what lies outside",
      [outside(0.029, 0.4), outside(0.3, 0.4), outside(0.76, 1), outside(0.35, 0.31)],
      [["head"], [], ["head"], ["head over crest height"]],
    );
  });

  test("a rule in circulation, width × height × 3.33 in inches, gives 20 gpm for 12 in at 1/2 in; Francis gives 12.7", () => {
    const gpm = cfs(flow("Francis", inches(12), feet(1), inches(0.5))) * GPM_PER_CFS;
    const francis = byHand("3.33 L h^1.5");
    published(francis, "gpm over 12 in at 1/2 in", gpm, 12.7, { digits: 1 });
    disagreement(
      "gpm over 12 in of lip at 1/2 in of head",
      [
        [source("A rule in circulation", "inches × inches × 3.33", "seen"), 20],
        [francis, 12.7],
      ],
      "12.7: the rule takes Francis' constant for feet with inches",
    );
  });

  test("1/8 in out of level at 0.68 in of head: 32 % more at the low end", () => {
    const answer = lipFlowRatio(certain(inches(0.68)), certain(inches(1 / 8)));
    const own = source("Lip out of level", "((h + d/2)/(h − d/2))^1.5, Francis at both ends", "own");
    published(
      own,
      "low end over high end",
      answer.ok && answer.value.answer === "runs all along" ? answer.value.ratio.value : Number.NaN,
      1.32,
      { digits: 2 },
    );
  });
});
