import { describe, test } from "vitest";
import { crossedVariance, differenceOfShares, exactShare, kaplanMeier, logRank, studentQuantile, wilson } from "#core/statistics/index.ts";
import { byHand, published, same, source } from "./checked.ts";

describe("shares", () => {
  test("Wilson", () => {
    const readme = source("a public package's readme on Wilson's interval", "z = 1.96", "seen");
    const of = (hits: number, n: number): readonly number[] => {
      const { low, high } = wilson(hits, n, 0.05, 1.96);
      return [low, high];
    };
    published(readme, "430 of 474", of(430, 474), [0.8776750858242243, 0.9301239839930541], { absolute: 1e-14 });
    published(readme, "392 of 436", of(392, 436), [0.8672311846637769, 0.9239627360567735], { absolute: 1e-14 });
    published(readme, "10 of 14", of(10, 14), [0.4535045882751561, 0.882788120898909], { absolute: 1e-14 });
    const newcombe = source("Newcombe 1998", "table I, score without continuity correction", "from memory");
    const plain = (hits: number, n: number): readonly number[] => [wilson(hits, n, 0.05).low, wilson(hits, n, 0.05).high];
    published(newcombe, "81 of 263", plain(81, 263), [0.2553, 0.3662], { digits: 4 });
    published(newcombe, "15 of 148", plain(15, 148), [0.0624, 0.1605], { digits: 4 });
    published(newcombe, "0 of 20", plain(0, 20), [0, 0.1611], { digits: 4 });
    published(newcombe, "1 of 29", plain(1, 29), [0.0061, 0.1718], { digits: 4 });
  });

  test("exact, and a difference", () => {
    // nothing found in n: 1 - alpha/2 of the beta distribution is 1 - (alpha/2)^(1/n)
    published(byHand("1 - 0.025^(1/20)"), "0 of 20, upper", exactShare(0, 20, 0.05).high, 1 - 0.025 ** (1 / 20), { absolute: 1e-12 });
    const newcombe = source("Newcombe 1998", "differences, method 10: 56 of 70 less 48 of 80", "from memory");
    const { low, high } = differenceOfShares(wilson(48, 80, 0.05), wilson(56, 70, 0.05));
    published(newcombe, "interval", [low, high], [0.0524, 0.3339], { digits: 4 });
  });

  test("Student's t", () => {
    const table = source("a printed table of Student's t", "two-sided 5 %", "from memory");
    published(
      table,
      "4, 10 and 30 degrees of freedom",
      [4, 10, 30].map((d) => studentQuantile(0.975, d)),
      [2.776, 2.228, 2.042],
      { digits: 3 },
    );
  });
});

describe("crossed analysis of variance", () => {
  /** Ten parts, three people, three trials. */
  const people = [
    [
      [0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36],
      [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25],
      [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
    ],
    [
      [0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68],
      [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62],
      [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5],
    ],
    [
      [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
      [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
      [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
    ],
  ];
  const values = Array.from({ length: 10 }, (_, part) => people.map((trials) => trials.map((trial) => trial[part] ?? Number.NaN)));

  test("a gauge study of the motor industry's handbook", () => {
    const from = source("Measurement Systems Analysis (motor industry), 4th edition", "gauge study, analysis of variance", "from memory");
    const study = crossedVariance(values);
    const line = (name: "part" | "person" | "interaction" | "within"): readonly number[] => [
      study?.[name].squares ?? 0,
      study?.[name].degrees ?? 0,
    ];
    published(from, "parts", line("part"), [88.3619, 9], { digits: 4 });
    published(from, "people", line("person"), [3.1673, 2], { digits: 4 });
    published(from, "interaction", line("interaction"), [0.359, 18], { digits: 4 });
    published(from, "within", line("within"), [2.7589, 60], { digits: 4 });
    published(
      from,
      "F of parts, people and interaction",
      [study?.part.f ?? 0, study?.person.f ?? 0, study?.interaction.f ?? 0],
      [492.291, 79.406, 434e-3],
      {
        absolute: 0.0006,
      },
    );
  });
});

describe("Kaplan and Meier", () => {
  const end = (time: number) => ({ time, event: true });
  const left = (time: number) => ({ time, event: false });
  const treated = [6, 6, 6, 7, 10, 13, 16, 22, 23].map(end).concat([6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map(left));
  const placebo = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23].map(end);
  const from = source("Freireich and others 1963, remission of leukaemia", "as worked in general texts on survival", "from memory");

  test("curve, Greenwood's error and those at risk", () => {
    const steps = kaplanMeier(treated, 0.05);
    same(
      from,
      "times",
      steps.map(({ time }) => time),
      [6, 7, 10, 13, 16, 22, 23],
    );
    same(
      from,
      "at risk",
      steps.map(({ atRisk }) => atRisk),
      [21, 17, 15, 12, 11, 7, 6],
    );
    published(
      from,
      "survival",
      steps.map(({ survival }) => survival),
      [0.8571, 0.8067, 0.7529, 0.6902, 0.6275, 0.5378, 0.4482],
      { digits: 4 },
    );
    published(
      from,
      "error",
      steps.map(({ error }) => error),
      [0.0764, 0.0869, 0.0963, 0.1068, 0.1141, 0.1282, 0.1346],
      { digits: 4 },
    );
  });

  test("the log-rank test", () => {
    published(from, "chi-square", logRank(treated, placebo).chiSquare, 16.79, { digits: 2 });
  });
});
