import { expect, it } from "vitest";
import { onPaper, wrapped } from "#infra/verify/paper.ts";

const said = {
  title: ["Stillwater Yard Works", "As-buried record · Elm Street 4"],
  tone: "changed",
  standing: "Changed since it was sealed with key k",
  by: "By Stillwater Yard Works: the key is in its list of keys.",
  sections: [
    { title: "What was changed", lines: ["Entry 7: one.", "Page 2: two."] },
    { title: "Not looked at", lines: ["fonts"] },
  ],
} as const;

it("the answer comes first, in shape and word, then what was changed, counted", () => {
  expect(onPaper(said, false)).toBe(
    [
      "  Stillwater Yard Works",
      "  As-buried record · Elm Street 4",
      "",
      "≠ Changed since it was sealed with key k",
      "  By Stillwater Yard Works: the key is in its list of keys.",
      "",
      "What was changed",
      "  1. Entry 7: one.",
      "  2. Page 2: two.",
      "",
      "Not looked at",
      "  - fonts",
    ].join("\n"),
  );
  expect(onPaper({ ...said, title: [], tone: "unchanged", sections: [] }, false)).toMatch(/^= /);
});

it("colours are shown where they can be, and say nothing that the words do not", () => {
  const begin = String.fromCharCode(27);
  const coloured = onPaper(said, true);
  expect(coloured).toContain(`${begin}[31m≠`);
  expect(coloured.replaceAll(new RegExp(`${begin}\\[\\d+m`, "g"), "")).toBe(onPaper(said, false));
});

it("lines are 100 signs at most, and a word that is longer stands whole on a line", () => {
  const key = "k".repeat(120);
  const lines = wrapped(`one ${"two ".repeat(40)}${key} end`, "  - ", "    ").split("\n");
  expect(lines.filter((line) => line.length > 100)).toEqual([`    ${key}`]);
  expect(lines.slice(1).every((line) => line.startsWith("    "))).toBe(true);
});
