import { describe, expect, test } from "vitest";
import { kitCard, read, readWhat } from "#core/wire/index.ts";

const tie = { item: "tie-one", typed: "8 ft 4", unit: "ft-in" };
const left = { text: "leak tests", by: "2026-06-20" };

describe("what a fact may say", () => {
  test.each([
    ["tag-named", { set: "buried-point", tag: "1", hiddenBy: "fill-it", description: "joint group behind the basin" }, true],
    ["tag-named", { set: "buried-point", tag: "1", hiddenBy: "fill-it", description: "" }, false],
    ["reading-taken", { ...tie, mark: "nail in the sill" }, true],
    ["reading-taken", { ...tie, mark: 7 }, false],
    ["left-to-do", { ...left, about: { step: "leak-tests" } }, true],
    ["left-to-do", { ...left, about: { place: "leak-tests" } }, false],
    ["could-not-be-taken", { about: { step: "leak-tests" }, reason: "dark" }, false],
  ])("%s %j: %s", (kind, what, isRead) => {
    expect(readWhat(kind, what as never, "what").ok).toBe(isRead);
  });
});

describe("a kit card", () => {
  const card = (fact: unknown) => ({ id: "fitting", part: "Fitting", facts: { nutDirection: fact }, notes: "Two gaskets differ." });
  test.each([
    ["left", true],
    ["unknown", true],
    [{ typed: "3", unit: "in" }, true],
    ["", false],
    [7, false],
    [{ typed: "3" }, false],
  ])("holds a figure, a fact in words, or 'unknown': %j, %s", (fact, isRead) => {
    expect(read(kitCard, card(fact), "entry-shape", "kitCard").ok).toBe(isRead);
  });
});
