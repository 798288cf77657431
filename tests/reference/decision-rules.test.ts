import { describe, test } from "vitest";
import { normalQuantile } from "#core/statistics/index.ts";
import { conformanceProbability } from "#core/tolerance/index.ts";
import { byHand, published, source } from "./checked.ts";

function chance(y: number, u: number, lower?: number, upper?: number): number {
  const answer = conformanceProbability(y, u, lower, upper);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return answer.value;
}

/** Composite Simpson's rule; `cells` is even. */
function integrate(f: (x: number) => number, from: number, to: number, cells = 4000): number {
  const h = (to - from) / cells;
  let sum = f(from) + f(to);
  for (let i = 1; i < cells; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}

/** The acceptance limit at which `risk`, which grows with it, has the value wanted. */
function bisect(risk: (limit: number) => number, wanted: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (risk(middle) > wanted) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

/**
 * JCGM 106, 9.5.4, ball bearings: prior gamma (shape 4, scale 0.25 µm), upper limit 2 µm, measured with u = 0.25 µm.
 * Figures SEEN in a public risk calculator's worked example of it, which quotes the guide; the guide's own page not seen.
 * The chance that a part of true size `size` is measured at or under the acceptance limit A is our conformance
 * probability with A for a limit, since errors are symmetric.
 */
describe("JCGM 106 9.5.4, ball bearings (SEEN, quoted)", () => {
  const u = 0.25;
  const limit = 2;
  const far = 12;
  const prior = (size: number): number => (size ** 3 * Math.exp(-size / 0.25)) / (6 * 0.25 ** 4);
  const consumersRisk = (A: number): number => integrate((size) => prior(size) * chance(size, u, undefined, A), limit, far);
  const producersRisk = (A: number): number => integrate((size) => prior(size) * (1 - chance(size, u, undefined, A)), 0, limit);

  const guide = source("JCGM 106", "9.5.4 ball bearings, in a public risk calculator's worked example", "quoted");
  const integral = byHand("gamma prior (4, 0.25 µm) integrated by Simpson's rule");

  test("the prior is a distribution", () => published(integral, "whole of the prior", integrate(prior, 0, far), 1, { digits: 9 }));

  test("without measuring 4.2 % do not conform", () => {
    published(guide, "share beyond the limit", integrate(prior, limit, far), 0.04238011199168401, { digits: 9 });
  });

  test("accepted up to the limit itself, 0.8 % are accepted wrongly", () => {
    published(guide, "consumer's risk at the limit", consumersRisk(limit), 0.008019111884303471, { digits: 9 });
  });

  test("for 0.1 % the acceptance limit is 1.67 µm, a guard band of 0.33 µm", () => {
    const A = bisect(consumersRisk, 0.001, 1, 2);
    published(guide, "acceptance limit and guard band, µm", [A, limit - A], [1.6718287715440068, 0.3281712284559932], { digits: 6 });
  });

  test("producer's risk 1.7 % and 7.5 %", () => {
    published(integral, "producer's risk at 2 and 1.672 µm", [producersRisk(2), producersRisk(1.672)], [0.01744, 0.07549], { digits: 4 });
  });
});

/** SEEN in the same calculator's public tests, to the digits given. PFA: accepted wrongly; PFR: rejected wrongly. */
describe("normal process, normal measurement (SEEN)", () => {
  test.each([
    { process: 1, u: 0.25, limit: 2, accept: 2, pfa: 0.008, digits: 3 },
    { process: 1, u: 0.25, limit: 2.5, accept: 2.5, pfa: 0.0025, digits: 3 },
    { process: 4, u: 1, limit: 8, accept: 8, pfa: 0.008, pfr: 0.015, digits: 3 },
    { process: 1, u: 0.5, limit: 2, accept: 1.82, pfa: 0.008, pfr: 0.066, digits: 3 },
  ])("sd $process, u $u, limits ±$limit, accepted within ±$accept", ({ process, u, limit, accept, pfa, pfr, digits }) => {
    const density = (x: number): number => Math.exp(-((x / process) ** 2) / 2) / (process * Math.sqrt(2 * Math.PI));
    const accepted = (x: number): number => chance(x, u, -accept, accept);
    const far = 8 * process;
    const calculator = source("A public risk calculator", "its tests of normal process and measurement", "seen");
    published(calculator, "accepted wrongly", 2 * integrate((x) => density(x) * accepted(x), limit, far), pfa, { digits });
    if (pfr === undefined) return;
    published(
      calculator,
      "rejected wrongly",
      integrate((x) => density(x) * (1 - accepted(x)), -limit, limit),
      pfr,
      { digits },
    );
  });
});

/** JCGM 106 table 1: only its title was seen; the factors are from memory and agree with the distribution. */
describe("guard factors of JCGM 106 table 1 (from memory)", () => {
  test.each([
    [0.8, 0.84],
    [0.9, 1.28],
    [0.95, 1.64],
    [0.99, 2.33],
    [0.999, 3.09],
  ])("conformance probability %f at %f u inside the limit", (probability, factor) => {
    const table = source("JCGM 106", "table 1, guard factors", "from memory");
    published(table, "factor for 80, 90, 95, 99, 99.9 of 100", normalQuantile(probability), factor, { digits: 2 });
    const [y, u, limit] = [10 - normalQuantile(probability) * 0.3, 0.3, 10];
    const phi = byHand("Φ((T − y)/u)");
    published(phi, "conformance probability", [chance(y, u, undefined, limit), chance(-y, u, -limit)], [probability, probability], {
      digits: 10,
    });
  });
});
