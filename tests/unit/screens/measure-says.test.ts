import { describe, expect, test } from "vitest";
import { cardPlane, photoLength, standCodes } from "#core/geometry/index.ts";
import { cardLayout, type PhotoComparison } from "#core/job/index.ts";
import { type Refusal, refuse } from "#core/outcome/index.ts";
import { makeSayer } from "#core/record/index.ts";
import { advised, comparedSaid, lengthText, refusedWord } from "#core/screens/field/measure/says.ts";
import { learn, screenWords } from "#core/screens/parts/words/index.ts";
import { measureEn } from "#core/screens/parts/words/measure-en.ts";
import { measureEs } from "#core/screens/parts/words/measure-es.ts";
import { codesSeen, height, seenFrom, type View, width } from "../../helpers/card-seen.ts";

learn({ en: measureEn, es: measureEs });
const [english, spanish] = [screenWords("en"), screenWords("es")];
const inches = makeSayer({ language: "en", units: "inch", zone: "UTC" });
const metric = makeSayer({ language: "es", units: "metric", zone: "UTC" });

describe("how to stand", () => {
  test("each of the ways has its sentence in both languages", () => {
    const said = standCodes.map((code) => [english(`measure-says-${code}`), spanish(`measure-says-${code}`)]);
    expect(said.flat().filter((sentence) => sentence.length < 12)).toEqual([]);
    expect(new Set(said.flat()).size).toBe(2 * standCodes.length);
  });

  const view: View = { tilt: 0.2, away: 0.8, right: 0, down: 0, k: 0 };
  const measured = (tap: number, print: number) => {
    const plane = cardPlane(cardLayout("letter").codes, { width, height, codes: codesSeen(view, 0.05) });
    if (!plane.ok) throw new Error(plane.refusal.code);
    const [from, to] = [seenFrom(view, { x: -100_000, y: 140_000 }), seenFrom(view, { x: 300_000, y: 140_000 })];
    const length = photoLength(plane.value, from, to, { tap, height: 500, lean: 1000, print, placing: 0 });
    if (!length.ok) throw new Error(length.refusal.code);
    return { plane: plane.value, length: length.value };
  };
  const ends = (u: number) => [
    { x: 0, y: 0, u },
    { x: 1, y: 1, u },
  ];

  test("enough: nothing to do", () => {
    expect(advised(measured(0.5, 1000), ends(0.5), 6350)).toEqual({ enough: true, needed: 6350, words: [] });
  });

  test("a print that nobody measured: the ruler, and nothing else", () => {
    // 6 % of 400 mm over the root of three, twice: 27.7 mm of 6.35
    expect(advised(measured(0.5, 60_000), ends(0.5), 6350).words).toEqual(["measure-says-ruler-measured"]);
  });

  test("ends that were set roughly are set better before anybody takes a second picture", () => {
    // 11 px at 0.8 m and 3000 px are 2.9 mm on each of two ends, twice: 8 mm
    expect(advised(measured(11, 1000), ends(11), 6350).words).toEqual(["measure-set-exactly"]);
    // the same doubt of ends that no finger sets better: nearer
    expect(advised(measured(11, 1000), ends(0.5), 6350).words).toEqual(["measure-says-closer"]);
  });
});

describe("a length in a picture beside the tape", () => {
  const of = (more: Partial<PhotoComparison>): PhotoComparison => ({
    entry: "e",
    item: "width",
    photo: "a",
    tape: { value: 609_600, doubt: 2000 },
    measured: { value: 611_188, doubt: 2463 },
    says: "agree",
    ...more,
  });
  const said = (one: PhotoComparison): string => {
    const { word, figures, because } = comparedSaid(one, inches);
    return `${english(word, figures)}${because ? ` ${english(because.word, because.figures)}` : ""}`;
  };

  test("agree, disagree and cannot tell, each with both numbers and their doubts", () => {
    // 611.188 mm is 24 1/16 in; 2 mm is 5.04/64 in, 2.463 mm 6.2/64: both rounded up
    const both = "24 in ± 3/32 in by the tape, 24 1/16 in ± 7/64 in in the picture";
    expect(said(of({}))).toBe(`Tape and picture agree: ${both}.`);
    expect(said(of({ says: "disagree" }))).toBe(`Tape and picture disagree: ${both}. Read the tape once more.`);
    expect(said(of({ says: "cannot tell", because: { why: "too doubtful", needed: 1588 } }))).toBe(
      `It cannot be told whether tape and picture agree: ${both}. ± 1/16 in is needed.`,
    );
    expect(said(of({ says: "cannot tell", because: { why: "not flat" } }))).toContain("The card did not lie flat.");
    expect(said(of({ says: "cannot tell", because: { why: "card elsewhere" } }))).toContain("this picture shows the card elsewhere");
  });

  test("in Spanish and in millimetres", () => {
    const { word, figures } = comparedSaid(of({}), metric);
    expect(spanish(word, figures)).toBe("Cinta y foto coinciden: 610 mm ± 2 mm con la cinta, 611 mm ± 2.5 mm en la foto.");
  });

  test("without a reading of the tape it says so, and without a length that it says nothing", () => {
    const { tape: _, ...without } = of({ says: "cannot tell", because: { why: "no reading" } });
    expect(said(without)).toBe("No tape's reading is entered yet: 24 1/16 in ± 7/64 in in the picture.");
    const { measured: __, ...refused } = of({ says: "cannot tell", because: { why: "refused", code: "points-collinear" } });
    expect(said(refused)).toBe("This picture says nothing about the tape's reading.");
  });

  test("a length is told in thirty-seconds", () => {
    // 24 1/32 in is 610.39375 mm
    expect(lengthText(inches, 610_394)).toBe("24 1/32 in");
  });
});

describe("what cannot be measured", () => {
  const refused = (...of: Parameters<typeof refuse>): Refusal => {
    const outcome = refuse(...of);
    if (outcome.ok) throw new Error("not refused");
    return outcome.refusal;
  };
  test("is said in the words of whoever holds the phone, and else by its own sentence", () => {
    expect(refusedWord(refused("reading-out-of-range", "taps/1", { found: "horizon" }))).toBe("measure-horizon");
    expect(refusedWord(refused("points-coincident", "taps"))).toBe("measure-same-spot");
    expect(refusedWord(refused("points-collinear", "picture"))).toBe("measure-too-little");
    expect(refusedWord(refused("points-too-few", "picture", { least: 4 }))).toBe("measure-too-little");
    expect(refusedWord(refused("points-coincident", "picture"))).toBeUndefined();
    expect(refusedWord(refused("number-not-finite", "picture"))).toBeUndefined();
  });
});
