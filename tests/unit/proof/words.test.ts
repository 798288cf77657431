import { describe, expect, it } from "vitest";
import { bare, jpegsIn, notShown, printedTexts, readKeyList, wordsChanged } from "#core/proof/index.ts";
import { rangesText } from "#core/proof/said-withheld.ts";
import { proofEn } from "#core/proof/words/proof-en.ts";
import { proofEs } from "#core/proof/words/proof-es.ts";
import { sampleModel, samplePhotoCount } from "../../samples/record-model.ts";
import { keptOffEnglish, keptOffSpanish } from "../record/kept-off.ts";

describe("words of a page", () => {
  it("that differ by blanks, joiners or the way a sign is composed are the same", () => {
    expect(wordsChanged("24 3/8 in café", "24 3/ 8  in cafe\u0301\u00ad")).toEqual([]);
    expect(bare("½ [U+2192] x")).toBe(bare("½ → x"));
    expect(bare("[U+110000]")).toBe("[U+110000]");
  });

  it("that differ are shown where they differ, with those around them, each place by itself", () => {
    const sealed = "rim place 1 24 3/8 in wiped rim at 8:14 then place 2 24 1/2 in wiped rim at 8:16";
    const found = "rim place 1 24 5/8 in wiped rim at 8:14 then place 2 25 1/2 in wiped rim at 8:16";
    expect(wordsChanged(sealed, found)).toEqual([
      { sealed: "place 1 24 3/8 in wiped rim", found: "place 1 24 5/8 in wiped rim" },
      { sealed: "then place 2 24 1/2 in wiped", found: "then place 2 25 1/2 in wiped" },
    ]);
  });

  it("that were added or taken away at the end are shown", () => {
    expect(wordsChanged("a b c", "a b c d")).toEqual([{ sealed: "a b c", found: "a b c d" }]);
    expect(wordsChanged("a b c", "a b")).toEqual([{ sealed: "a b c", found: "a b" }]);
    expect(wordsChanged("a b", "")).toEqual([{ sealed: "a b", found: "" }]);
  });
});

describe("texts of the view model", () => {
  const photos = Array.from({ length: samplePhotoCount }, (_, at) => ({
    sha256: String(at).padStart(64, "0"),
    bytes: new Uint8Array(),
    width: 800,
    height: 600,
  }));
  const model = sampleModel(photos);
  const texts = printedTexts(model).map(({ text }) => text);

  it("are those that print: readings, sentences, lettering; no ids, keys or words of the templates", () => {
    expect(texts).toEqual(expect.arrayContaining([model.standing, model.title.job, model.steps[0]?.readings[0]?.typed]));
    expect(texts.length).toBeGreaterThan(100);
    expect(texts).not.toContain(model.words.steps);
    const places = printedTexts(model).map(({ place }) => place);
    expect(places.filter((place) => /(^|\/)(step|check|photo|rendition|alt|tone|words)(\/|$)/.test(place))).toEqual([]);
  });

  it("are found on a page or over the end of one, and missed where they are nowhere", () => {
    const all = texts.join(" ");
    expect(notShown(model, [all])).toEqual([]);
    // a page may end in the middle of a sentence, and the next begins with the running strip
    const middle = all.indexOf(model.standing) + Math.floor(model.standing.length / 2);
    expect(notShown(model, [all.slice(0, middle), `Page 2 of 2 ${all.slice(middle)}`])).toEqual([]);
    const without = notShown(model, [all.replaceAll(model.standing, "")]);
    expect(without).toEqual([{ place: "standing", text: model.standing }]);
  });
});

describe("pictures in a file", () => {
  const bytes = (...pieces: (string | number[])[]): Uint8Array<ArrayBuffer> =>
    Uint8Array.from(pieces.flatMap((piece) => (typeof piece === "string" ? [...Buffer.from(piece, "latin1")] : piece)));
  const jpeg = [0xff, 0xd8, 1, 10, 2, 0xff, 0xd9];

  it("are the streams that begin as a JPEG does, each to its end", () => {
    const other = [0xff, 0xd8, 7];
    const file = bytes("<</X 1>>stream\r\n", jpeg, "\nendstream q stream\nabc\nendstream streams <<>>stream\n", other, "\r\nendstream");
    expect(jpegsIn(file).map((one) => [...one])).toEqual([jpeg, other]);
  });

  it("one that was cut off goes to the end of the file, and where there is none there is none", () => {
    expect(jpegsIn(bytes("stream\n", jpeg)).map((one) => [...one])).toEqual([jpeg]);
    expect(jpegsIn(bytes("stream"))).toEqual([]);
    expect(jpegsIn(new Uint8Array())).toEqual([]);
  });
});

describe("a list of keys", () => {
  const key = { kty: "OKP", crv: "Ed25519", x: "A".repeat(43), kid: "k", use: "sig" };

  it("says whose it is; keys of other kinds are passed over", () => {
    expect(readKeyList({ company: "c", name: "C", keys: [{ kty: "RSA" }, { ...key, retired: 5 }, key, null], more: 1 })).toEqual({
      ok: true,
      value: { company: "c", name: "C", keys: [{ x: key.x, retired: 5 }, { x: key.x }] },
    });
  });

  it.each([undefined, null, 1, [], {}, { keys: [key] }, { company: "c", name: "C", keys: [] }, { company: "", name: "C", keys: [key] }])(
    "%j is none",
    (value) => {
      expect(readKeyList(value)).toMatchObject({ ok: false, refusal: { code: "key-list-shape" } });
    },
  );
});

it("entries are told as ranges", () => {
  expect(rangesText([])).toBe("");
  expect(rangesText([9, 1, 2, 3, 5, 5, 8])).toBe("1–3, 5, 8–9");
});

describe("what is said of a check", () => {
  const figures = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

  it("has the same keys and figures in both languages, and no word that is kept off", () => {
    expect(Object.keys(proofEs).sort()).toEqual(Object.keys(proofEn).sort());
    for (const [key, text] of Object.entries(proofEn)) expect(figures(proofEs[key as keyof typeof proofEn]), key).toEqual(figures(text));
    const off = (words: Readonly<Record<string, string>>, kept: readonly RegExp[]) =>
      Object.values(words).filter((text) => kept.some((word) => word.test(text)));
    expect([off(proofEn, keptOffEnglish), off(proofEs, keptOffSpanish)]).toEqual([[], []]);
  });
});
