import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { darcyLoss, frictionFactor, frictionLoss, gallonsPerMinute, litresPerMinute, systemAt } from "#core/plumbing/index.ts";
import { feet, inches, metres, toInches } from "#core/units/index.ts";
import { between, byHand, disagreement, published, source } from "./checked.ts";

const toFeet = (length: number): number => toInches(metres(length)) / 12;
const colebrook = (reynolds: number, rough: number): number => {
  const factor = frictionFactor(reynolds, rough);
  return factor.ok ? factor.value : Number.NaN;
};
function darcy(flow: number, bore: number, length: number, more: { roughness?: number; viscosity?: number } = {}) {
  const loss = darcyLoss(certain(flow), { length: certain(length), bore: certain(bore), ...more });
  if (!loss.ok) throw new Error(loss.refusal.code);
  return { head: loss.value.head.value, factor: loss.value.frictionFactor, reynolds: loss.value.reynolds };
}

describe("Colebrook", () => {
  test("CalebBell/fluids", () => {
    const docstring = source("CalebBell/fluids", "friction.py, docstring of Colebrook", "seen");
    published(docstring, "f at Re 1e5, e/D 1e-4", colebrook(1e5, 1e-4), 0.018513866077471, { digits: 14 });
    const tests = source("CalebBell/fluids", "tests of friction factors", "seen");
    published(tests, "f at Re 1e5, e/D 1e-5", colebrook(1e5, 1e-5), 0.018043802895063684, { digits: 14 });
    published(tests, "f at Re 1000, laminar", colebrook(1000, 1e-4), 0.064, { digits: 12 });
  });

  test("smooth pipe after the Moody chart", () => {
    const moody = source("Two public tests after the Moody chart", "smooth pipe", "seen");
    published(moody, "f at Re 1e5 and 1e4", [colebrook(1e5, 0), colebrook(1e4, 0)], [0.01799, 0.0309], { digits: 4 });
  });
});

describe("Crane TP-410 example 7-1, 200 L/min of water at 30 °C in 2 in Schedule 40 plastic", () => {
  const loss = (roughness: number) => darcy(litresPerMinute(200), 0.0525, 20, { roughness, viscosity: 0.797e-3 / 995.7 });

  test("Re 100 600 and f 0.0179 in the book", () => {
    const book = source("Crane TP-410", "example 7-1, quoted in CalebBell/fluids", "quoted");
    published(book, "Re", loss(0).reynolds, 100_600, { share: 0.005 });
    published(book, "f", loss(0).factor, 0.0179, { share: 0.005 });
  });

  test("Re 101 005 and f 0.0181087 in the library, which takes glass for smooth", () => {
    const library = source("CalebBell/fluids", "Crane example 7.1, glass for smooth", "seen");
    published(library, "Re", loss(1.5e-6).reynolds, 101_005, { share: 0.001 });
    published(library, "f", loss(1.5e-6).factor, 0.0181087, { share: 0.001 });
  });
});

/**
 * Crane's examples 7-15 and 7-19 as CalebBell/fluids works them: its lengths, fluids and roughness, and Crane's factors K = n f_T
 * with f_T of fully turbulent flow in clean steel, 0.0018 in rough (Colebrook without the Re term). Bores of Schedule 40 steel.
 */
describe("Crane TP-410, whole lines with fittings by K", () => {
  const GRAVITY = 9.80665;
  const POUND_PER_CUBIC_FOOT = 16.018463;
  const [two, twoAndHalf, three] = [inches(2.067), inches(2.469), inches(3.068)];
  const turbulent = (bore: number): number => (2 * Math.log10((3.7 * bore) / inches(0.0018))) ** -2;
  const speedHead = (flow: number, bore: number): number => (flow / ((Math.PI / 4) * bore * bore)) ** 2 / (2 * GRAVITY);
  const elbow = 30;
  const gate = 8;

  test("7-15: 100 gpm up 400 ft through 500 ft of 3 in pipe: 421 ft, 15.2 hp at 70 %", () => {
    const flow = gallonsPerMinute(100);
    const density = 62.298 * POUND_PER_CUBIC_FOOT;
    const pipe = darcy(flow, three, feet(500), { roughness: inches(0.0022), viscosity: 0.95e-3 / density });
    const reduced = (twoAndHalf / three) ** 2;
    const lift = (600 * turbulent(three) + 0.5 * (1 - reduced) + (1 - reduced) ** 2) / reduced ** 2;
    const fittings = (1 + (gate + 4 * elbow) * turbulent(three) + lift) * speedHead(flow, three);
    const { head } = systemAt(
      { staticHead: certain(feet(400)), sections: [], knownLosses: [{ head: certain(pipe.head + fittings), flow }] },
      flow,
    );
    const horsepower = (density * GRAVITY * head * flow) / 0.7 / 745.69987;
    const book = source("Crane TP-410", "example 7-15, quoted in CalebBell/fluids", "quoted");
    published(book, "ft of head", toFeet(head), 421, { share: 0.005 });
    published(book, "hp", horsepower, 15.2, { share: 0.005 });
    const library = source("CalebBell/fluids", "Crane example 7.15", "seen");
    published(library, "ft of head", toFeet(head), 420.3499, { share: 5e-4 });
    published(library, "hp", horsepower, 15.15449, { share: 0.001 });
  });

  test("7-19: 11.5 ft of water through 10 ft of 3 in and 20 ft of 2 in pipe: 137 gpm", () => {
    const viscosity = 1.1e-3 / (62.364 * POUND_PER_CUBIC_FOOT);
    const roughness = inches(0.0018);
    const contraction = 0.5 * (1 - (2 / 3) ** 2);
    const inThree = (flow: number): number =>
      darcy(flow, three, feet(10), { roughness, viscosity }).head + (0.5 + (60 + gate) * turbulent(three)) * speedHead(flow, three);
    const inTwo = (flow: number): number =>
      darcy(flow, two, feet(20), { roughness, viscosity }).head + (contraction + 1) * speedHead(flow, two);
    /** `narrower`: how the book goes from the 3 in pipe's speed head to the 2 in pipe's, over the ratio of their true bores. */
    const gpm = (narrower: number): number => {
      let [low, high] = [gallonsPerMinute(10), gallonsPerMinute(400)];
      for (let i = 0; i < 50; i++) {
        const middle = (low + high) / 2;
        if (inThree(middle) + narrower * inTwo(middle) < feet(11.5)) low = middle;
        else high = middle;
      }
      return low / gallonsPerMinute(1);
    };
    const byNominalSize = (3 / 2) ** 4 / (three / two) ** 4;
    const book = source("Crane TP-410", "example 7-19, speed heads by nominal size, quoted in CalebBell/fluids", "quoted");
    const library = source("CalebBell/fluids", "Crane example 7.19", "seen");
    published(book, "gpm", gpm(byNominalSize), 137, { share: 0.005 });
    published(library, "gpm", gpm(byNominalSize), 136.70829, { share: 0.001 });
    const trueBores = byHand("Crane's example 7-19 with true bores throughout");
    published(trueBores, "gpm", gpm(1), 139.3, { digits: 1 });
    disagreement(
      "gpm of Crane's example 7-19",
      [
        [book, 137],
        [trueBores, 139.3],
      ],
      "true bores throughout",
    );
  });
});

describe("Darcy-Weisbach beside Hazen-Williams, smooth pipe at 20 °C", () => {
  test.each([
    [20, 1.61, 2.554],
    [40, 1.61, 8.798],
    [40, 2.067, 2.654],
    [80, 2.067, 9.205],
  ])("%i gpm in %f in: %f ft per 100 ft", (gpm, bore, head) => {
    const flow = gallonsPerMinute(gpm);
    const ours = toFeet(darcy(flow, inches(bore), feet(100)).head);
    const from = byHand("Darcy-Weisbach with Colebrook, nu 1.004e-6, e 1.5 µm");
    published(from, "ft over 100 ft", ours, head, { digits: 3 });
    const section = { length: certain(feet(100)), bore: certain(inches(bore)), coefficient: certain(150) };
    const hazen = frictionLoss(certain(flow), section);
    between(from, "Hazen-Williams C 150 over it", hazen.ok ? toFeet(hazen.value.value) / ours : Number.NaN, 0.973, 1.045);
  });
});
