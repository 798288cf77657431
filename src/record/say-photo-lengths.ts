import type { CannotTell, ComparedLength, PhotoComparison } from "../job/index.ts";
import { formatQuantity } from "../units/index.ts";
import { doubtText } from "./figures-text.ts";
import { fill } from "./fill.ts";
import type { Language } from "./when.ts";
import { photoLengthsEn } from "./words/photo-lengths-en.ts";
import { photoLengthsEs } from "./words/photo-lengths-es.ts";

/** Finer than a tape is read: what a photo measured is worked out, and the tape's mark stays what it was. */
const MARKS = 32;

/** Sentences of what photos measured beside the tape; apart from the others, since the crew's first page does without them. */
export function makePhotoLengthSayer({ language, units }: { readonly language: Language; readonly units: "inch" | "metric" }) {
  const texts = language === "es" ? photoLengthsEs : photoLengthsEn;
  const length = (value: number): string => formatQuantity("length", value, { lengths: units, marks: MARKS });
  const doubt = (value: number): string => doubtText("length", value, { lengths: units });
  const figures = (tape?: ComparedLength, measured?: ComparedLength): Readonly<Record<string, string>> => ({
    ...(tape && { tape: length(tape.value), tapeDoubt: doubt(tape.doubt) }),
    ...(measured && { measured: length(measured.value), measuredDoubt: doubt(measured.doubt) }),
  });
  const why = (because: CannotTell): string =>
    fill(texts[`because-${because.why}`], "needed" in because ? { needed: doubt(because.needed) } : {});

  return {
    /** 'Tape: 2 1/16 in ± 3/32 in; in the photo: 2 1/16 in ± 3/64 in. They agree.' */
    comparison({ tape, measured, says, because, times }: PhotoComparison): string {
      const beside = tape && measured ? texts.both : tape ? texts.tape : measured && texts.photo;
      const verdict = fill(texts[says], because === undefined ? {} : { why: why(because) });
      const often = times === undefined ? [] : [fill(texts.often, { times: `${times}` })];
      return [...(beside === undefined ? [] : [fill(beside, figures(tape, measured))]), verdict, ...often].join(" ");
    },
    /** '2 1/16 in ± 3/64 in' */
    length: (measured: ComparedLength): string => fill(texts.length, figures(undefined, measured)),
  };
}
