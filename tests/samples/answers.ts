import type { Answer, Label } from "#core/quality/index.ts";

/** Answers with every kind of picture and cell, made by hand: what pages and the printed report are tried with. Keys stand for words. */

const step = (id: string): Label => ({ of: "text", id });
const steps = ["Set the basin", "Glue the line", "Lay the liner", "Place the stone over a basin with a very long name of its own"];
const held = { comparisons: 4, alpha: 0.05, rule: "Holm" } as const;
const nothing = { says: [], counted: [], signals: [], held, tables: [], pictures: [] } as const;

const intervals: Answer = {
  ...nothing,
  id: "first-time-right",
  decides: "title.first-time-right",
  says: [{ key: "someone", figures: {} }],
  signals: [{ about: step("Glue the line"), what: "step goes wrong more often", p: 0.002, says: { key: "picture-breaks", figures: {} } }],
  tables: [
    {
      id: "steps",
      columns: [
        { id: "step", kind: "label" },
        { id: "right", kind: "count" },
        { id: "share", kind: "share" },
      ],
      rows: steps.map((text, i) => ({
        cells: [{ label: step(text) }, { value: 40 - i }, { value: 0.9 - i / 10, low: 0.8 - i / 10, high: 0.96 - i / 20 }],
        ...(i === 1 ? { note: "stands out" as const } : {}),
      })),
    },
  ],
  pictures: [
    {
      draws: "intervals",
      id: "steps",
      table: "steps",
      axis: { kind: "share" },
      against: 0.8,
      points: steps.map((text, i) => ({ label: step(text), value: 0.9 - i / 10, low: 0.8 - i / 10, high: 0.96 - i / 20 })),
    },
  ],
};

// sixteenths of an inch up and down about nothing, the ninth far off
const deviations = [1, -1, 2, 0, -2, 1, 0, -1, 9, 0, 1, -1].map((sixteenths) => (sixteenths * 25_400) / 16);

const control: Answer = {
  ...nothing,
  id: "over-time",
  decides: "title.over-time",
  pictures: [
    {
      draws: "control chart",
      id: "individuals",
      table: "points",
      axis: { kind: "fixed", quantity: "length" },
      chart: "individuals",
      points: deviations.map((value, i) => ({
        x: i + 1,
        label: step(`job ${i + 1}`),
        at: 1_790_000_000_000 + i * 86_400_000,
        value,
        centre: 700,
        lower: -11_000,
        upper: 12_400,
        ...(i === 8 ? { breaks: "beyond the limits" as const } : {}),
      })),
      marks: [{ at: 5.5, says: { key: "title.instruments", figures: {} } }],
    },
  ],
};

const curve: Answer = {
  ...nothing,
  id: "came-back",
  decides: "title.came-back",
  tooFew: { key: "note.too-few-to-tell", figures: {} },
  pictures: [
    {
      draws: "curve",
      id: "survival",
      table: "months",
      axis: { kind: "share" },
      shape: "steps",
      xAxis: "months",
      lines: [
        {
          label: step("all jobs"),
          points: [
            { x: 0, y: 1, low: 1, high: 1 },
            { x: 3, y: 0.95, low: 0.84, high: 0.99 },
            { x: 7, y: 0.9, low: 0.78, high: 0.96 },
            { x: 12, y: 0.9, low: 0.78, high: 0.96 },
          ],
        },
      ],
    },
  ],
};

const funnel: Answer = {
  ...nothing,
  id: "foremen",
  decides: "title.foremen",
  pictures: [
    {
      draws: "funnel",
      id: "foremen",
      table: "foremen",
      axis: { kind: "share" },
      centre: 0.85,
      points: [
        { label: step("Ada"), n: 12, share: 0.9 },
        { label: step("Bo"), n: 40, share: 0.8 },
        { label: step("Cy"), n: 55, share: 0.6 },
      ],
      limits: [
        { n: 5, lower: 0.36, upper: 1 },
        { n: 20, lower: 0.66, upper: 0.97 },
        { n: 60, lower: 0.75, upper: 0.93 },
      ],
    },
  ],
};

const bars: Answer = {
  ...nothing,
  id: "readings-that-carry-nothing",
  decides: "title.readings-that-carry-nothing",
  pictures: [
    {
      draws: "bars",
      id: "heaping",
      table: "heaping",
      axis: { kind: "count" },
      bars: steps.map((text, i) => ({ label: step(text), value: 30 - 6 * i, expected: 12 })),
    },
  ],
};

export const sampleAnswers: readonly Answer[] = [intervals, control, curve, funnel, bars];
