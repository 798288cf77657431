import type { RecordModel } from "#core/record/index.ts";

export interface Strip {
  /** CSS values of `content`, already quoted. */
  readonly left: string;
  readonly middle: string;
  readonly right: string;
}

/** Of the page, and of the frame inside its margins; millimetres. */
const sizes = {
  letter: { size: "letter", width: 215.9, height: 279.4 },
  a4: { size: "A4", width: 210, height: 297 },
} as const;
const margin = { top: 10, right: 10, bottom: 19, left: 16 } as const;
const padding = { top: 6, sides: 6, bottom: 4 } as const;
const GRID_MM = 5;

const lines = (end: number, line: (at: number) => string): string =>
  Array.from({ length: Math.ceil(end / GRID_MM) - 1 }, (_, at) => line((at + 1) * GRID_MM)).join("");

// One drawing for the whole page: a repeated tile would be written into every page some hundred times over.
const grid = (width: number, height: number): string =>
  `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><path fill="none" stroke="#ece6d9" stroke-width=".12" d="${lines(width, (x) => `M${x} 0V${height}`)}${lines(height, (y) => `M0 ${y}H${width}`)}"/></svg>`,
  )}`;

/** The page itself: warm paper, the frame of a drawing sheet with a faint grid in it, and its title strip with the page's number. */
export const sheetOfPaper = (paper: RecordModel["paper"], { left, middle, right }: Strip): string => {
  const { size, width, height } = sizes[paper];
  const frame = grid(width - margin.left - margin.right, height - margin.top - margin.bottom);
  return `
@page { size: ${size}; margin: ${margin.top}mm ${margin.right}mm ${margin.bottom}mm ${margin.left}mm; padding: ${padding.top}mm ${padding.sides}mm ${padding.bottom}mm; border: .9pt solid #191815;
  background: #fdfbf5 url("${frame}") no-repeat; font: 400 6.9375pt "Record Sans", sans-serif; color: #191815;
  @bottom-left { ${box("25%")} text-align: left; content: ${left}; }
  @bottom-center { ${box("50%")} border-left: 0; border-right: 0; text-align: left; font-weight: 700; content: ${middle}; }
  @bottom-right { ${box("25%")} text-align: right; content: ${right}; }
}`;
};

const box = (width: string): string =>
  `width: ${width}; height: 8mm; margin-bottom: 11mm; padding: 0 2.4mm; border: .9pt solid #191815; border-top: 0; vertical-align: middle; overflow: hidden; background: #fff; box-sizing: border-box; font: 400 6.9375pt/1.25 "Record Sans", sans-serif;`;

/** The frame's line, and the hair's breadth that the text keeps from it. */
const BORDER_MM = 0.85;

/** Height that the name of a bound page takes, millimetres. */
export const BOUND_NAME_MM = 11;

/** Where a page of a paper goes that is bound in, millimetres from the lower left corner. */
export const boundArea = (paper: RecordModel["paper"]): Readonly<Record<"x" | "y" | "width" | "height", number>> => {
  const { width, height } = sizes[paper];
  const [x, y] = [margin.left + padding.sides + BORDER_MM, margin.bottom + padding.bottom + BORDER_MM];
  return {
    x,
    y,
    width: width - x - margin.right - padding.sides - BORDER_MM,
    height: height - y - margin.top - padding.top - BOUND_NAME_MM,
  };
};
