import { expect, test } from "vitest";
import { defaultSheet } from "#infra/sheets/index.ts";
import { keptOffEnglish, keptOffSpanish, kinderWords } from "../record/kept-off.ts";

/** Every text of the default sheet, by language. */
function texts(value: unknown, language: "en" | "es"): readonly string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) =>
    key === language && typeof inside === "string" ? [inside] : texts(inside, language),
  );
}

test.each([
  ["en", keptOffEnglish],
  ["es", keptOffSpanish],
] as const)("the default sheet has no word in %s that is kept off the screens, nor blame", (language, keptOff) => {
  // the trade's word for what a ground-fault breaker watches; an authority's inspection keeps its name
  const all = texts(defaultSheet(), language).map((text) => text.replaceAll(/falla a tierra|^Inspection of wiring/giu, ""));
  expect(all.length).toBeGreaterThan(200);
  expect(all.filter((text) => [...keptOff, ...kinderWords].some((word) => word.test(text)))).toEqual([]);
});
