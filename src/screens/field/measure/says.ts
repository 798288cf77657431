import { type CardPlane, type PhotoLength, type Stand, standFor } from "../../../geometry/index.ts";
import type { PhotoComparison, PhotoMeasured } from "../../../job/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import type { Sayer } from "../../../record/index.ts";
import type { ScreenWord } from "../../parts/words/index.ts";
import { type End, SET_WITHIN } from "./view.ts";

/** A length in a picture is told in thirty-seconds: finer than a tape is read, and no finer than its doubt. */
const MARKS = 32;

export const lengthText = (sayer: Sayer, micrometres: number): string => sayer.quantity("length", micrometres, MARKS);
export const doubtText = (sayer: Sayer, micrometres: number): string => sayer.doubt("length", micrometres);

/** What is done with what was measured: whether it is of use beside the tape, and else what helps, most first. */
export interface Advised {
  readonly enough: boolean;
  readonly needed: number;
  readonly words: readonly ScreenWord[];
}

/** Ends that were set with less than a finger can do are set better first: that costs no second picture. */
export function advised({ plane, length }: PhotoMeasured, ends: readonly End[], needed: number): Advised {
  const stand: Stand = standFor(plane satisfies CardPlane, length satisfies PhotoLength, needed);
  const taps = length.length.parts.get("taps") ?? 0;
  const isRough = ends.some(({ u }) => u > SET_WITHIN) && 2e6 * taps > needed / 3;
  const isByTaps = (code: Stand["advice"][number]): boolean => code === "closer" || code === "square-on";
  const said = stand.advice.filter((code) => !(isRough && isByTaps(code))).map((code): ScreenWord => `measure-says-${code}`);
  const words: readonly ScreenWord[] = isRough && said.length === 0 ? ["measure-set-exactly"] : said;
  return { enough: stand.enough, needed, words: stand.enough ? [] : words };
}

/** A refused measurement in the words of whoever holds the phone; others by their own sentence. */
export function refusedWord({ code, place, figures }: Refusal): ScreenWord | undefined {
  if (code === "reading-out-of-range" && figures.found === "horizon") return "measure-horizon";
  if (code === "points-coincident" && place === "taps") return "measure-same-spot";
  if (code === "points-too-few" || code === "points-collinear") return "measure-too-little";
  return undefined;
}

export interface ComparedSaid {
  readonly word: ScreenWord;
  readonly figures: Readonly<Record<string, string>>;
  /** Why it cannot be told. */
  readonly because?: { readonly word: ScreenWord; readonly figures: Readonly<Record<string, string>> };
}

/** A comparison with both of its numbers, as far as it has them. */
export function comparedSaid({ says, tape, measured, because }: PhotoComparison, sayer: Sayer): ComparedSaid {
  const figures = {
    ...(tape === undefined ? {} : { tape: `${lengthText(sayer, tape.value)} ± ${doubtText(sayer, tape.doubt)}` }),
    ...(measured === undefined ? {} : { length: lengthText(sayer, measured.value), doubt: doubtText(sayer, measured.doubt) }),
  };
  if (says !== "cannot tell") return { word: `measure-${says}`, figures };
  const reason =
    because === undefined || because.why === "no reading" || because.why === "refused"
      ? undefined
      : {
          word: `measure-because-${because.why}` as const,
          figures: "needed" in because ? { needed: doubtText(sayer, because.needed) } : {},
        };
  const told = reason === undefined ? {} : { because: reason };
  if (measured === undefined) return { word: "measure-cannot-compare", figures: {}, ...told };
  if (tape === undefined) return { word: "measure-no-tape", figures, ...told };
  return { word: "measure-cannot tell", figures, ...told };
}
