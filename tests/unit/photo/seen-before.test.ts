import { describe, expect, it } from "vitest";
import { type PhotoFacts, screenshotLook, weightOf } from "#core/photo/index.ts";

const AT = Date.UTC(2026, 4, 4, 12);

describe("what it weighs that two photos show the same (D08)", () => {
  it.each([
    [
      "two frames of a burst in one job",
      [
        ["a", AT],
        ["a", AT + 1_000],
      ],
      "hint",
    ],
    [
      "one photo asked for by two steps in the same minute",
      [
        ["a", AT],
        ["a", AT],
      ],
      "hint",
    ],
    [
      "a minute apart to the millisecond",
      [
        ["a", AT],
        ["a", AT + 60_000],
      ],
      "hint",
    ],
    [
      "a millisecond more",
      [
        ["a", AT],
        ["a", AT + 60_001],
      ],
      "alarm",
    ],
    [
      "the same job a day later",
      [
        ["a", AT],
        ["a", AT + 86_400_000],
      ],
      "alarm",
    ],
    [
      "two jobs in the same second",
      [
        ["a", AT],
        ["b", AT],
      ],
      "alarm",
    ],
    [
      "a burst of which one frame serves another job too",
      [
        ["a", AT],
        ["a", AT + 1_000],
        ["b", AT + 1_000],
      ],
      "alarm",
    ],
    [
      "a moment that was not kept",
      [
        ["a", AT],
        ["a", null],
      ],
      "alarm",
    ],
    ["only one of them named by a job so far", [["a", AT]], "hint"],
    ["none named yet", [], "hint"],
  ] as const)("%s", (_, uses, weight) => {
    expect(weightOf(uses.map(([job, made]) => ({ job, made })))).toBe(weight);
    expect(weightOf(uses.toReversed().map(([job, made]) => ({ job, made })))).toBe(weight);
  });
});

describe("a picture of a phone's screen (D06)", () => {
  const screen: Parameters<typeof screenshotLook>[0] = {
    type: "image/png",
    width: 1170,
    height: 2532,
    taken: null,
    position: null,
    likeness: null,
  };
  const barred: PhotoFacts["likeness"] = { hashes: ["0".repeat(16), "f".repeat(16)], unsure: [], abstains: null, strength: 0, layout: 0 };
  it.each([
    ["as long as a screen, a PNG, without a camera's word", {}, true],
    ["lying", { width: 2532, height: 1170 }, true],
    ["a PNG of a camera's shape with bars around it", { width: 1536, height: 2048, likeness: barred }, true],
    ["a PNG of a camera's shape", { width: 3000, height: 4000 }, false],
    ["a JPEG as long", { type: "image/jpeg" }, false],
    ["with the camera's time", { taken: { text: "2026-05-04T10:22:31", source: "original" } }, false],
    ["not decoded", { width: null, height: null }, false],
  ] as const)("%s", (_, change, looks) => {
    expect(screenshotLook({ ...screen, ...change })).toBe(looks);
  });
});
