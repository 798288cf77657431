import { expect, test } from "vitest";
import { saidOfPhotos } from "#core/screens/parts/measured.ts";
import { type Book, bench, book, lengthItem } from "../../helpers/job.ts";
import { measuredWords, tapped } from "../../helpers/photo-measured.ts";

const sheet = bench({
  items: [lengthItem("the-length", { onOnePlane: true }), lengthItem("the-depth", { onOnePlane: true })],
  checks: ["first-check", "second-check"].map((id) => ({
    ...{ id, step: "step-one", title: { en: id }, function: "single value" as const, items: ["the-length"] },
    ...{ kind: "length" as const, weight: "holds" as const, holds: "bury-it", aim: 508_000, lower: 254_000 },
  })),
});
const said = (b: Book, language: "en" | "es" = "en"): readonly (readonly [string, readonly string[]])[] => {
  const { state, all } = b.done();
  return [...saidOfPhotos({ state, findings: all }, language, "inch")].map(([{ check }, sentences]) => [check, sentences]);
};

test("the office reads beside the first finding that rests on the reading what the photo measured", () => {
  const b = book(sheet);
  b.read("the-length", "20 0/16");
  b.enter("photo-measured", measuredWords());
  expect(said(b)).toEqual([["first-check", [expect.stringMatching(/^Tape: 20 in ± 3\/32 in; in the photo: 20 in ± .* They agree\.$/)]]]);
  expect(said(b, "es")[0]?.[1][0]).toMatch(/^Cinta: .* Coinciden\.$/);
});

test("before anybody has read the tape it stands beside the finding that asks for the reading", () => {
  const b = book(sheet);
  b.enter("photo-measured", measuredWords());
  // 7 7/8 in, 200 mm
  b.enter("photo-measured", measuredWords({ item: "the-depth", from: tapped(0, -50_000), to: tapped(0, 150_000) }));
  expect(said(b)).toEqual([
    ["first-check", [expect.stringContaining("no reading by tape counts here")]],
    ["the-depth", [expect.stringMatching(/^In the photo: 7 7\/8 in ± /)]],
  ]);
});

test("where nobody measured in a photo nothing is said", () => {
  const b = book(sheet);
  b.read("the-length", "20 0/16");
  expect(said(b)).toEqual([]);
});
