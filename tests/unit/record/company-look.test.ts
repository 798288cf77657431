import { describe, expect, it } from "vitest";
import { coloursPrinted } from "#core/record/colours.ts";
import { companyView } from "#core/record/company-view.ts";
import { contrastOnWhite, LINES_CONTRAST, readSettings, WORDS_CONTRAST } from "#core/record/index.ts";

describe("the company's colours", () => {
  // WCAG 2.2: black on white is 21 : 1; #767676 is the palest grey that passes 4.5 : 1, #949494 the palest that passes 3 : 1
  it("are weighed against white by the published formula", () => {
    expect(contrastOnWhite("#000000")).toBeCloseTo(21, 6);
    expect(contrastOnWhite("#ffffff")).toBeCloseTo(1, 6);
    expect(contrastOnWhite("#767676")).toBeGreaterThanOrEqual(WORDS_CONTRAST);
    expect(contrastOnWhite("#777777")).toBeLessThan(WORDS_CONTRAST);
    expect(contrastOnWhite("#949494")).toBeGreaterThanOrEqual(LINES_CONTRAST);
    expect(contrastOnWhite("#959595")).toBeLessThan(LINES_CONTRAST);
    // pure red: luminance 0.2126, so 1.05 / 0.2626
    expect(contrastOnWhite("#ff0000")).toBeCloseTo(3.998, 3);
  });

  it("print as lines; words that could not be read stay in ink", () => {
    expect(coloursPrinted({ lines: "#ffee00", words: "#1f4d3a" })).toEqual({ lines: "#ffee00", words: "#1f4d3a" });
    expect(coloursPrinted({ lines: "#1f4d3a", words: "#ff0000" })).toEqual({ lines: "#1f4d3a" });
  });

  it("are none where they are no colours: what is read goes into a style sheet", () => {
    const lines = "red;} body { display: none";
    expect(readSettings({ name: "A", colours: { lines, words: "#1f4d3a" }, mark: "../other" })).not.toHaveProperty("colours");
    expect(readSettings({ name: "A", mark: "../other" })).not.toHaveProperty("mark");
  });
});

describe("the company's mark", () => {
  const mark = "ab".repeat(32);
  const settings = readSettings({ name: "A", lines: ["1 Example Lane"], mark });
  it("stands in the record with the key of what prints, and is left out where nothing of it was drawn", () => {
    const rendition = `demo/renditions/${mark}/mark.jpg`;
    expect(companyView(settings, { [mark]: { rendition } })).toEqual({
      name: "A",
      lines: ["1 Example Lane"],
      mark: { photo: mark, rendition },
    });
    expect(companyView(settings, {})).toEqual({ name: "A", lines: ["1 Example Lane"] });
  });
});
