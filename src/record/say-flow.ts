import type { Finding, FlowExplained } from "../job/index.ts";
import type { QuantityKind, TapeMarks } from "../units/index.ts";
import { fill, sentences } from "./speaking.ts";
import type { Language } from "./when.ts";

const PER_MILLION = 1e6;
/** So many times what is ordinary is the most that is stored. */
const MOST_TIMES = 1000;

/** Causes to look by are told in half inches and whole per cent. */
const COARSE_MARKS = 2;
const PER_CENT = 10_000;

/** Says what would explain a flow that is not the expected one; `print` prints a figure in the company's units. */
export function makeFlowCauses(language: Language, print: (kind: QuantityKind, value: number, marks?: TapeMarks) => string) {
  const texts = sentences[language];
  const quantity = (kind: QuantityKind, value: number): string =>
    print(kind, kind === "ratio" ? Math.round(value / PER_CENT) * PER_CENT : value, COARSE_MARKS);

  function sizeOf({ cause, kind, wouldBe = 0, off = 0, boreShare = PER_MILLION }: FlowExplained): string {
    const figures = {
      wouldBe: quantity(kind, wouldBe),
      off: quantity(kind, Math.abs(off)),
      share: quantity("ratio", boreShare),
    };
    const way = off < 0 ? "less" : "more";
    switch (cause) {
      case "static head":
        return fill(texts[`explains.static-head.${way}`], figures);
      case "C":
        return fill(texts[`explains.C.${way}`], figures);
      case "blockage":
        return fill(texts["explains.blockage"], figures);
      case "air":
        return fill(texts["explains.air"], figures);
      case "wrong curve":
        return fill(texts["explains.wrong-curve"], figures);
    }
  }

  function ranked(one: FlowExplained): string {
    const times = one.times / PER_MILLION;
    const key = times >= MOST_TIMES ? "explains.times-most" : "explains.times";
    return fill(texts[key], { cause: sizeOf(one), times: times.toFixed(times < 10 ? 1 : 0) });
  }

  /** Sentences, the likeliest cause first, and last what cannot explain it; none where nothing is to be explained. */
  return ({ explains }: Finding): readonly string[] => {
    if (explains === undefined) return [];
    const [able, unable] = [explains.filter(({ cannot }) => cannot === undefined), explains.filter(({ cannot }) => cannot !== undefined)];
    return [
      able.length === 0 ? texts["explains.none"] : fill(texts["explains.are"], { causes: able.map(ranked).join("; ") }),
      ...(unable.length === 0
        ? []
        : [fill(texts["explains.cannot"], { causes: unable.map(({ cause }) => texts[`cause.${cause}`]).join("; ") })]),
    ];
  };
}
