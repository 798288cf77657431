import { expect, test } from "vitest";
import { defaultSheet } from "#infra/sheets/index.ts";

/** What no picture shows, by itself or as the state of a thing: those are answers and readings. Tightening and hand tight are moments of the work. */
const unseen = /\b(dry|clean|(?<!hand )tight|level|safe)\b/i;
const unseenSpanish = /\b(sec[oa]s?|limpi[oa]s?|apretad[oa]s?|nivelad[oa]s?|segur[oa]s?)\b/i;

const pictures = defaultSheet().items.filter(({ kind }) => kind === "picture");

test("what a picture cannot show is never asked of one", () => {
  expect(pictures.length).toBeGreaterThan(25);
  const asked = pictures.flatMap(({ id, title, prompt }) =>
    [title, prompt].flatMap((words) =>
      words && (unseen.test(words.en) || unseenSpanish.test(words.es ?? "")) ? [`${id}: ${words.en} / ${words.es}`] : [],
    ),
  );
  expect(asked).toEqual([]);
  expect("Fitting outside, dry").toMatch(unseen);
  expect("Conector por fuera, seco").toMatch(unseenSpanish);
});

test("every picture that holds a covering says in one line what settles it in the frame", () => {
  const without = pictures.filter(({ weight, prompt }) => weight === "holds" && (!prompt?.en || !prompt.es)).map(({ id }) => id);
  expect(without).toEqual([]);
});
