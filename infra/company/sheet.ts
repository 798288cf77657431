import type { Json } from "#core/ledger/index.ts";
import {
  answerOf,
  checkOf,
  coverings,
  coveringTitles,
  FURTHER,
  LIMIT,
  lasers,
  NOISE,
  PICTURES,
  PLACING,
  RIM,
  readingOf,
  SHEET,
  steps,
  stepTitles,
  TAPE,
} from "./made-up.ts";

const words = (en: string): Json => ({ en });
/** The design's figure of one step, as the tolerance sheet names it. */
export const figureOf = (place: number): string => `height${String.fromCharCode(65 + place)}`;

const reading = (id: string, step: string, title: string, weight: string, more: { readonly [key: string]: Json } = {}): Json => ({
  id,
  step,
  kind: "reading",
  title: words(title),
  quantity: "length",
  unit: { inch: "in", metric: "cm" },
  placing: PLACING,
  weight,
  ...more,
});

const itemsOf = ({ id, covering, instrument }: (typeof steps)[number], place: number): readonly Json[] => [
  ...(place === 0 ? RIM.places.map((item, i) => reading(item, id, `Rim, place ${i + 1}`, "asked", { instrument: lasers[0] })) : []),
  reading(readingOf(id), id, `${stepTitles[place]}: height`, "holds", {
    holds: covering,
    instrument: instrument === "laser" ? lasers[0] : TAPE,
  }),
  {
    id: answerOf(id),
    step: id,
    kind: "answer",
    title: words(`${stepTitles[place]}: looked at`),
    weight: "holds",
    holds: covering,
    choices: [
      { id: "as-it-should-be", title: words("as it should be"), accepts: true },
      { id: "not-as-it-should-be", title: words("not as it should be"), accepts: false },
    ],
  },
  ...Array.from({ length: FURTHER[place] ?? 0 }, (_, k) =>
    reading(`${id}-more-${k + 1}`, id, `${stepTitles[place]}: length ${k + 1}`, "if you have it", { instrument: TAPE }),
  ),
  ...Array.from({ length: PICTURES[place] ?? 0 }, (_, k) => ({
    id: `${id}-picture-${k + 1}`,
    step: id,
    kind: "picture",
    title: words(`${stepTitles[place]}: picture ${k + 1}`),
    weight: "asked",
  })),
];

/** The made-up company's tolerance sheet: every step with one held height about a figure of the design, and one held answer. */
export const questionsSheet = (): Json => ({
  format: 1,
  id: SHEET,
  version: 1,
  title: words("Made up for the questions' demonstration"),
  switches: [],
  figures: steps.map((_, place) => ({
    id: figureOf(place),
    title: words(`${stepTitles[place]}: height as designed`),
    kind: "length",
    unit: "in",
    from: "design",
  })),
  // no error of their own, and one placing for all: the doubt of a reading is then the generator's own
  instruments: [...lasers, TAPE].map((id) => ({ id, title: words(id), exact: true, resolution: 1588 })),
  placings: [{ id: PLACING, title: words("Hard edge"), halfWidth: Math.round(NOISE * Math.sqrt(3)) }],
  tagSets: [],
  coverings: coverings.map((id, i) => ({
    id,
    title: words(coveringTitles[i] ?? id),
    done: words(`done: ${coveringTitles[i]}`),
    cautions: [],
  })),
  cautions: [{ id: "by-law", text: words("Local code and a licensed person decide.") }],
  steps: steps.map(({ id }, i) => ({ id, number: i + 1, title: words(stepTitles[i] ?? id), cautions: ["by-law"] })),
  items: steps.flatMap(itemsOf),
  oneOf: [],
  checks: [
    {
      id: RIM.check,
      step: steps[0].id,
      title: words("Rim flat"),
      function: "fourth place",
      items: [...RIM.places],
      kind: "length",
      weight: "asked",
      lower: -101_600,
      upper: 101_600,
    },
    ...steps.map(({ id, covering }, place) => ({
      id: checkOf(id),
      step: id,
      title: words(`${stepTitles[place]}: height`),
      function: "single value",
      items: [readingOf(id)],
      kind: "length",
      weight: "holds",
      holds: covering,
      aim: { function: "design figure", figure: figureOf(place) },
      lower: { function: "design figure", figure: figureOf(place), offset: -LIMIT },
      upper: { function: "design figure", figure: figureOf(place), offset: LIMIT },
    })),
  ],
});
