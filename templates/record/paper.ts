import type { RecordModel } from "#core/record/index.ts";

export interface Strip {
  /** CSS values of `content`, already quoted. */
  readonly left: string;
  readonly middle: string;
  readonly right: string;
}

const STEP_MM = 5;
const along = (end: number, line: (at: number) => string): string =>
  Array.from({ length: end / STEP_MM }, (_, at) => line((at + 1) * STEP_MM)).join("");

// One drawing for the whole page: a repeated tile would be written into every page some hundred times over.
const grid = `data:image/svg+xml,${encodeURIComponent(
  `<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="300mm" viewBox="0 0 220 300"><path fill="none" stroke="#e9e2d3" stroke-width=".12" d="${along(215, (x) => `M${x} 0V300`)}${along(295, (y) => `M0 ${y}H220`)}"/></svg>`,
)}`;

/** The page itself: warm paper with a faint grid, the frame of a drawing sheet, and its title strip with the running page number. */
export const sheetOfPaper = (paper: RecordModel["paper"], { left, middle, right }: Strip): string => `
@page { size: ${paper === "a4" ? "A4" : "letter"}; margin: 10mm 10mm 19mm 16mm; padding: 6mm 6mm 4mm; border: .9pt solid #191815;
  background: #fdfbf5 url("${grid}") no-repeat;
  font: 400 7pt "Record Sans", sans-serif; color: #191815;
  @bottom-left { ${box("22%")} text-align: left; content: ${left}; }
  @bottom-center { ${box("54%")} border-left: 0; border-right: 0; text-align: left; font-weight: 700; content: ${middle}; }
  @bottom-right { ${box("24%")} text-align: right; content: ${right}; }
}`;

const box = (width: string): string =>
  `width: ${width}; height: 8mm; margin-bottom: 11mm; padding: 0 2.4mm; border: .9pt solid #191815; border-top: 0; vertical-align: middle; overflow: hidden; background: #fff; box-sizing: border-box; font: 400 7pt/1.25 "Record Sans", sans-serif;`;
