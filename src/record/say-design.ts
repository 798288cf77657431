import type { DesignLine, DesignMessage, DesignQuestion, DesignState, Expectation, ExpectationId, FigureKey } from "../job/index.ts";
import { formatQuantity, type QuantityKind, tapeMarks, type UnitPreferences } from "../units/index.ts";
import { doubtText } from "./figures-text.ts";
import { fill, type Speaking } from "./speaking.ts";
import { type DesignWord, designEn } from "./words/design-en.ts";
import { designEs } from "./words/design-es.ts";

const dictionaries = { en: designEn, es: designEs } as const;

/** Of a boulder or a basin nobody says sixteenths before it is dug. */
const MARKS = 4;
const INCH = 25_400;
const METRE = 1_000_000;
const CENTIMETRE = METRE / 100;
/** What is shorter is told in sixteenths, and below one inch in thirty-seconds: a basin that lifts at 19/32 in does not lift at 5/8. */
const SHORT = 3 * INCH;
const FINER = 16;
const FINEST = 32;
const finerMarks = (value: number): typeof FINER | typeof FINEST => (Math.abs(value) < INCH ? FINEST : FINER);
const TEN_MINUTES_MS = 600_000;

/** One expected figure as it prints. */
export interface ExpectationText {
  readonly title: string;
  /** Empty where there is no number. */
  readonly value: string;
  readonly doubt: string;
  /** Answer and warning, if any. */
  readonly beside: string;
  /** Where most of the doubt comes from, largest first. */
  readonly contributors: readonly string[];
  readonly needs: readonly string[];
  readonly assumes: readonly string[];
  readonly caution: string;
}

/** Says the lines of a design check and the figures that a design leads to, in one language and one company's units. */
export function makeDesignSayer({ language, units: lengths }: Pick<Speaking, "language" | "units">) {
  const texts: Readonly<Record<DesignWord, string>> = dictionaries[language];
  const units: UnitPreferences = { lengths, marks: MARKS };

  const word = (key: string): string => (Object.hasOwn(texts, key) ? texts[key as DesignWord] : key.slice(key.indexOf(".") + 1));
  const quantity = (kind: QuantityKind, value: number): string =>
    formatQuantity(kind, value, kind === "length" && Math.abs(value) < SHORT ? { lengths, marks: finerMarks(value) } : units);

  /** Of minutes nobody wants a doubt that is rounded up to the next one. */
  const doubtOf = (kind: QuantityKind, of: number): string =>
    kind === "duration" && of < TEN_MINUTES_MS ? quantity(kind, Math.ceil(of / 1000) * 1000) : doubtText(kind, of, { lengths });

  /** Doubt beside a length: a large one in quarter inches, that of metres in centimetres, always rounded up. */
  function doubtBeside(kind: QuantityKind, value: number, doubt: number): string {
    if (kind !== "length") return doubtOf(kind, doubt);
    const up = (step: number): number => Math.ceil(doubt / step) * step;
    if (lengths === "inch") return doubt >= SHORT ? quantity(kind, up(INCH / MARKS)) : doubtOf(kind, doubt);
    return Math.abs(value) < METRE ? doubtOf(kind, doubt) : formatQuantity(kind, up(CENTIMETRE), { lengths, lengthAs: "m" });
  }

  /** '5 ft 10 in ± 8 1/4 in': a length to marks no coarser than its doubt, so that the band that is printed holds what was worked out. */
  function withDoubt(kind: QuantityKind, value: number, doubt: number): string {
    if (doubt === 0) return quantity(kind, value);
    const marks = tapeMarks.find((each) => each >= MARKS && INCH / each <= doubt) ?? 64;
    // metres stand beside a doubt in centimetres
    const metres = kind === "length" && lengths === "metric" && Math.abs(value) >= METRE;
    const shown = metres ? Math.round(value / CENTIMETRE) * CENTIMETRE : value;
    return `${formatQuantity(kind, shown, { lengths, marks })} ± ${doubtBeside(kind, value, doubt)}`;
  }

  const figure = (key: FigureKey): string => word(`figure.${key}`);
  const titles = (keys: readonly FigureKey[] = []): readonly string[] => keys.map(figure);

  function message({ key, figures, kinds }: DesignMessage): string {
    const said = Object.entries(figures).map(([name, value]): readonly [string, string] => {
      const kind = kinds[name];
      if (typeof value === "string" || kind === undefined) return [name, String(value)];
      return [name, name === "doubt" ? doubtText(kind, value, { lengths }) : quantity(kind, value)];
    });
    return fill(word(key), Object.fromEntries(said));
  }

  /** A contributor's name in words: a figure's own title, else what it is called here, else its name. */
  function source(name: string): string {
    if (name.startsWith("figure:")) return word(`figure.${name.slice("figure:".length)}`);
    const exact = `source.${name}`;
    const family = `source.${name.slice(0, name.indexOf(":"))}`;
    return Object.hasOwn(texts, exact) ? word(exact) : Object.hasOwn(texts, family) ? word(family) : name;
  }

  /** What was taken for a figure that nobody gave, and the caution. */
  function besides({ assumes = [], caution }: DesignLine): readonly string[] {
    return [
      ...(assumes.length === 0 ? [] : [fill(texts["design.assumes"], { assumes: titles(assumes).join("; ") })]),
      ...(caution === undefined ? [] : [word(`caution.${caution}`)]),
    ];
  }

  /** The sentences of a line in order: what it comes to, what to change, what it waits for, what was taken for it, its caution. */
  function line(of: DesignLine): readonly string[] {
    const { says, advice, needs = [] } = of;
    return [
      message(says),
      ...advice.map(message),
      ...(needs.length === 0 ? [] : [fill(texts["design.needs"], { needs: titles(needs).join("; ") })]),
      ...besides(of),
    ];
  }

  function expectation(of: Expectation): ExpectationText {
    const { id, kind, value, doubt, answer, warning, contributors = [], needs, assumes, caution } = of;
    return {
      title: word(`expected.${id}`),
      value: value === undefined ? "" : quantity(kind, value),
      doubt: doubt === undefined || doubt === 0 ? "" : doubtOf(kind, doubt),
      beside: [answer && word(`answer.${answer}`), warning && word(`warning.${warning}`)].filter(Boolean).join("; "),
      contributors: contributors.map(({ name }) => source(name)),
      needs: titles(needs),
      assumes: titles(assumes),
      caution: caution === undefined ? "" : word(`caution.${caution}`),
    };
  }

  return {
    question: (id: DesignQuestion): string => word(`question.${id}`),
    state: (state: DesignState): string => word(`state.${state}`),
    title: (id: ExpectationId): string => word(`expected.${id}`),
    figure,
    source,
    message,
    line,
    besides,
    answer: (answer: string): string => word(`answer.${answer}`),
    withDoubt,
    expectation,
  };
}

export type DesignSayer = ReturnType<typeof makeDesignSayer>;
