import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { darcyLoss, frictionFactor, frictionInSeries, frictionLoss, gallonsPerMinute, litresPerMinute } from "#core/plumbing/index.ts";
import { feet, inches } from "#core/units/index.ts";
import { answer, codeOf, doubted, gpm, NOT_NUMBERS, partOf, section, standardUncertainty, toFeet } from "./assumed.ts";

const flows = fc.double({ min: 1, max: 200, noNaN: true });
const bores = fc.double({ min: 0.6, max: 4, noNaN: true });
const coefficients = fc.double({ min: 80, max: 160, noNaN: true });
const lengths = fc.double({ min: 1, max: 500, noNaN: true });
const loss = (q: number, length: number, bore: number, c: number): number => answer(frictionLoss(gpm(q), section(length, bore, c))).value;

describe("friction by Hazen-Williams", () => {
  test("rises with flow and length, falls with bore and C", () => {
    fc.assert(
      fc.property(flows, lengths, bores, coefficients, (q, length, bore, c) => {
        const here = loss(q, length, bore, c);
        expect(loss(q * 1.01, length, bore, c)).toBeGreaterThan(here);
        expect(loss(q, length * 1.01, bore, c)).toBeGreaterThan(here);
        expect(loss(q, length, bore * 1.01, c)).toBeLessThan(here);
        expect(loss(q, length, bore, c * 1.01)).toBeLessThan(here);
      }),
    );
  });

  test("inches and metric give the same", () => {
    const metric = {
      length: certain(18.288),
      bore: certain(0.0525018),
      coefficient: certain(150),
    };
    const inMetric = answer(frictionLoss(certain(litresPerMinute(3.785411784 * 40)), metric)).value;
    expect(inMetric).toBeCloseTo(feet(loss(40, 60, 2.067, 150) / feet(1)), 12);
  });

  test("sections in series add, and their shared flow counts once for both", () => {
    const flow = doubted(gallonsPerMinute(40), "flow", gallonsPerMinute(2));
    const [a, b] = [section(30, 2.067), section(20, 1.61)];
    const sum = answer(frictionInSeries(flow, [a, b]));
    const [one, two] = [answer(frictionLoss(flow, a)), answer(frictionLoss(flow, b))];
    expect(sum.value).toBeCloseTo(one.value + two.value, 14);
    expect(partOf(sum, "flow")).toBeCloseTo(partOf(one, "flow") + partOf(two, "flow"), 14);
  });

  test("the doubt is the change over a small step, by each input", () => {
    const doubt = 0.01;
    const nudged = [
      [
        frictionLoss(doubted(gallonsPerMinute(40), "x", gallonsPerMinute(40) * doubt), section(60, 2)),
        loss(40.4, 60, 2, 150),
        loss(39.6, 60, 2, 150),
      ],
      [
        frictionLoss(gpm(40), { ...section(60, 2), bore: doubted(inches(2), "x", inches(2) * doubt) }),
        loss(40, 60, 2.02, 150),
        loss(40, 60, 1.98, 150),
      ],
      [frictionLoss(gpm(40), { ...section(60, 2), coefficient: doubted(150, "x", 1.5) }), loss(40, 60, 2, 151.5), loss(40, 60, 2, 148.5)],
    ] as const;
    for (const [result, up, down] of nudged) {
      expect(standardUncertainty(answer(result)) / (Math.abs(up - down) / 2 / Math.sqrt(3))).toBeCloseTo(1, 2);
    }
  });

  test("no flow loses nothing; senseless figures are refused by name", () => {
    expect(loss(0, 60, 2, 150)).toBe(0);
    expect(codeOf(frictionLoss(gpm(-1), section(60, 2)))).toBe("number-not-positive");
    expect(codeOf(frictionLoss(gpm(10), section(60, 0)))).toBe("number-not-positive");
    expect(codeOf(frictionLoss(gpm(10), section(60, 2, 0)))).toBe("number-not-positive");
    expect(codeOf(frictionLoss(gpm(10), section(-1, 2)))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) {
      expect(codeOf(frictionLoss(gpm(odd), section(60, 2)))).toBe("number-not-finite");
      expect(codeOf(frictionLoss(gpm(10), section(60, odd)))).toBe("number-not-finite");
      expect(codeOf(frictionLoss(doubted(0.001, "x", odd), section(60, 2)))).toBe("number-not-finite");
      expect(codeOf(frictionFactor(odd, 0))).toBe("number-not-finite");
      expect(codeOf(darcyLoss(gpm(odd), section(60, 2)))).toBe("number-not-finite");
    }
    expect(codeOf(frictionFactor(0, 0))).toBe("number-not-positive");
    expect(codeOf(frictionFactor(1e5, -1e-4))).toBe("number-not-positive");
    expect(codeOf(darcyLoss(gpm(0), section(60, 2)))).toBe("number-not-positive");
  });
});

describe("friction by Darcy-Weisbach", () => {
  test("Colebrook's equation holds at the factor found", () => {
    fc.assert(
      fc.property(fc.double({ min: 4000, max: 1e7, noNaN: true }), fc.double({ min: 0, max: 0.05, noNaN: true }), (re, rough) => {
        const f = answer(frictionFactor(re, rough));
        expect(1 / Math.sqrt(f)).toBeCloseTo(-2 * Math.log10(rough / 3.7 + 2.51 / (re * Math.sqrt(f))), 9);
      }),
    );
  });

  test("says which law holds: 64/Re below 2000, neither up to 4000", () => {
    const at = (q: number) => answer(darcyLoss(gpm(q), section(100, 2.067)));
    expect(at(0.5).regime).toBe("laminar");
    expect(at(0.5).frictionFactor).toBeCloseTo(64 / at(0.5).reynolds, 12);
    expect(at(2).regime).toBe("between laminar and turbulent");
    expect(at(40).regime).toBe("turbulent");
  });

  test("laminar loss is Poiseuille's: h = 128 ν L Q / (π g D⁴)", () => {
    const [q, d, length] = [gallonsPerMinute(0.5), inches(2.067), feet(100)];
    const head = (128 * 1.004e-6 * length * q) / (Math.PI * 9.80665 * d ** 4);
    expect(answer(darcyLoss(certain(q), section(100, 2.067))).head.value).toBeCloseTo(head, 12);
  });

  test("agrees with the first within 6 % where these pipes work, and its doubt is near the first's", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 8, noNaN: true }), fc.constantFrom(1.59, 2.047, 3.042), (feetPerSecond, bore) => {
        const q = (feetPerSecond * bore * bore) / 0.408498;
        const flow = doubted(gallonsPerMinute(q), "flow", gallonsPerMinute(q) / 50);
        const [first, second] = [answer(frictionLoss(flow, section(100, bore))), answer(darcyLoss(flow, section(100, bore))).head];
        expect(Math.abs(second.value / first.value - 1)).toBeLessThan(0.08);
        expect(Math.abs(standardUncertainty(second) / standardUncertainty(first) - 1)).toBeLessThan(0.15);
      }),
    );
    expect(toFeet(loss(40, 100, 2.047, 150))).toBeGreaterThan(0);
  });
});
