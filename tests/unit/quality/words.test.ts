import { describe, expect, test } from "vitest";
import {
  type Answer,
  type Asking,
  type Observed,
  type QualitySpeaking,
  qualitySpeaking,
  questions,
  usualAsking,
} from "#core/quality/index.ts";
import { companyFrom, planted, today } from "#infra/company/index.ts";

const nobody: Observed = { jobs: [], company: { taught: [], studies: [], instrumentChecks: [], sheets: [] } };
const few = companyFrom({ seed: 3, jobs: 8, effects: planted(60) });
const many = companyFrom({ seed: 3, jobs: 200, effects: planted(200) });
const usual = usualAsking(today);
const askings: readonly Asking[] = [
  usual,
  { ...usual, persons: true },
  { ...usual, persons: true, sample: { lot: 40, looked: 5, off: 0 }, limit: { check: "step-one-height", upper: 5_000 } },
  { ...usual, sample: { lot: 3, looked: 5, off: 0 } },
];
const answers: readonly Answer[] = [nobody, few, many].flatMap((observed) =>
  askings.flatMap((asking) => questions.map(({ answer }) => answer(observed, asking))),
);

/** Every key of the dictionary that an answer names. */
function keysOf({ id, decides, says, tooFew, counted, signals, tables, pictures }: Answer): readonly string[] {
  const marks = pictures.flatMap((picture) => (picture.draws === "control chart" ? picture.marks.map(({ says: said }) => said) : []));
  const messages = [...marks, ...says, ...(tooFew ? [tooFew] : []), ...counted, ...signals.map((signal) => signal.says)].map(
    ({ key }) => key,
  );
  const labels = [
    ...tables.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells.flatMap(({ label }) => label ?? []))),
    ...pictures.flatMap((picture) =>
      picture.draws === "curve"
        ? picture.lines.map(({ label }) => label)
        : picture.draws === "bars"
          ? picture.bars.map(({ label }) => label)
          : [],
    ),
  ];
  const words = tables.flatMap(({ columns, rows }) =>
    columns.flatMap(({ kind }, i) =>
      kind === "word" ? rows.flatMap(({ cells }) => (typeof cells[i]?.value === "string" ? [cells[i].value] : [])) : [],
    ),
  );
  return [
    `title.${id}`,
    decides,
    ...messages,
    ...words,
    ...labels.flatMap((label) => (label.of === "word" ? [label.id] : [])),
    ...tables.flatMap((table) => [`table.${table.id}`, ...table.columns.map((column) => `column.${column.id}`)]),
    ...pictures.flatMap((picture) => [`picture.${picture.id}`, ...(picture.draws === "curve" ? [`axis.${picture.xAxis}`] : [])]),
  ];
}

const keys = [...new Set(answers.flatMap(keysOf))].sort();
const speaking = (language: "en" | "es"): QualitySpeaking =>
  qualitySpeaking({ language, units: "inch" }, { people: {}, jobs: {}, sheets: {}, instruments: {} });

describe("words of the answers", () => {
  test("there are many to look for", () => {
    expect(keys.length).toBeGreaterThan(150);
  });

  test.each(["en", "es"] as const)("each has its words in %s", (language) => {
    const { word } = speaking(language);
    expect(keys.filter((key) => word(key) === key && key.includes("."))).toEqual([]);
    // a word in a cell has no point in its key, and is never its own text where it has a hyphen
    expect(keys.filter((key) => word(key) === key && key.includes("-"))).toEqual([]);
  });

  test.each(["en", "es"] as const)("no figure is left in braces in %s", (language) => {
    const { say } = speaking(language);
    for (const { says, tooFew, counted, signals } of answers) {
      for (const one of [...says, ...(tooFew ? [tooFew] : []), ...counted]) expect(say(one)).not.toMatch(/[{}]/);
      for (const signal of signals) expect(say({ ...signal.says, figures: { about: "x", ...signal.says.figures } })).not.toMatch(/[{}]/);
    }
  });

  test("each question names the decision that it serves", () => {
    expect(new Set(answers.map(({ decides }) => decides)).size).toBe(questions.length);
  });
});
