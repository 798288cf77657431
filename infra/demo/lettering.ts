/**
 * Drawn capitals, each a few strokes on a grid 4 wide and 6 high, y down. Lettering by strokes needs no font, so that a
 * drawing made on a machine without fonts still says what it shows.
 */
const strokes: Readonly<Record<string, string>> = {
  A: "0,6 2,0 4,6|.8,4 3.2,4",
  B: "0,0 0,6 3,6 4,5 4,4 3,3 0,3|0,0 2.7,0 3.6,.8 3.6,2.2 3,3",
  C: "4,1 3,0 1,0 0,1.2 0,4.8 1,6 3,6 4,5",
  D: "0,0 0,6 2.4,6 4,4.6 4,1.4 2.4,0 0,0",
  E: "4,0 0,0 0,6 4,6|0,3 3,3",
  F: "4,0 0,0 0,6|0,3 3,3",
  G: "4,1 3,0 1,0 0,1.2 0,4.8 1,6 3,6 4,5 4,3.4 2.4,3.4",
  H: "0,0 0,6|4,0 4,6|0,3 4,3",
  I: "2,0 2,6",
  J: "3.4,0 3.4,4.8 2.4,6 1,6 0,5",
  K: "0,0 0,6|4,0 0,3.4|1.3,2.4 4,6",
  L: "0,0 0,6 3.8,6",
  M: "0,6 0,0 2,3.6 4,0 4,6",
  N: "0,6 0,0 4,6 4,0",
  O: "1,0 3,0 4,1.2 4,4.8 3,6 1,6 0,4.8 0,1.2 1,0",
  P: "0,6 0,0 3,0 4,1 4,2.2 3,3.2 0,3.2",
  Q: "1,0 3,0 4,1.2 4,4.8 3,6 1,6 0,4.8 0,1.2 1,0|2.6,4.4 4,6.4",
  R: "0,6 0,0 3,0 4,1 4,2.2 3,3.2 0,3.2|2,3.2 4,6",
  S: "4,1 3,0 1,0 0,1 0,2 1,2.9 3,3.1 4,4 4,5 3,6 1,6 0,5",
  T: "0,0 4,0|2,0 2,6",
  U: "0,0 0,4.8 1,6 3,6 4,4.8 4,0",
  V: "0,0 2,6 4,0",
  W: "0,0 1,6 2,2.4 3,6 4,0",
  X: "0,0 4,6|4,0 0,6",
  Y: "0,0 2,3 4,0|2,3 2,6",
  Z: "0,0 4,0 0,6 4,6",
  "0": "1,0 3,0 4,1.2 4,4.8 3,6 1,6 0,4.8 0,1.2 1,0|1,5 3,1",
  "1": "1,1.2 2.2,0 2.2,6",
  "2": "0,1.2 1,0 3,0 4,1.2 4,2.2 0,6 4,6",
  "3": "0,.6 1,0 3,0 4,1 4,2 3,2.9 1.6,2.9|3,2.9 4,3.9 4,5 3,6 1,6 0,5.2",
  "4": "3,6 3,0 0,4.2 4,4.2",
  "5": "3.8,0 .4,0 0,2.8 2.8,2.6 4,3.6 4,5 3,6 1,6 0,5.2",
  "6": "3.4,0 1.4,1 0,3.4 0,5 1,6 3,6 4,5 4,4 3,3 1,3 0,4",
  "7": "0,0 4,0 1.4,6",
  "8": "1,2.9 .2,2 .2,.9 1,0 3,0 3.8,.9 3.8,2 3,2.9 1,2.9 0,4 0,5 1,6 3,6 4,5 4,4 3,2.9",
  "9": "4,2 3,3.2 1,3.2 0,2.2 0,1 1,0 3,0 4,1 4,2.8 2.6,5.2 .8,6",
  ".": "1.8,5.7 2.2,5.7 2.2,6 1.8,6 1.8,5.7",
  ",": "2.2,5.4 1.6,6.8",
  ":": "2,1.8 2,2.2|2,4.8 2,5.2",
  ";": "2,1.8 2,2.2|2.2,4.8 1.6,6.4",
  "-": "1,3.2 3,3.2",
  "–": "0.4,3.2 3.6,3.2",
  "/": "0,6.4 4,-.4",
  "(": "3,-.4 1.8,1 1.8,5 3,6.4",
  ")": "1,-.4 2.2,1 2.2,5 1,6.4",
  "'": "2,0 2,1.4",
  '"': "1.3,0 1.3,1.4|2.7,0 2.7,1.4",
  "+": "2,1.6 2,4.8|.4,3.2 3.6,3.2",
  "=": ".6,2.4 3.4,2.4|.6,4 3.4,4",
  "±": "2,1 2,4|.5,2.5 3.5,2.5|.5,5.2 3.5,5.2",
  "°": "1.6,0 2.6,0 2.6,1 1.6,1 1.6,0",
  "&": "4,6 1,1.4 1.4,.2 2.4,.2 2.8,1.2 0,3.8 0,5 1,6 2.4,6 4,3.6",
  "#": "1.2,.6 .8,5.6|3.2,.6 2.8,5.6|.2,2 4,2|0,4.2 3.8,4.2",
  "?": "0,1.2 1,0 3,0 4,1.2 4,2.2 2,3.4 2,4.4|2,5.6 2,6",
};
const UNKNOWN = "0,0 4,0 4,6 0,6 0,0";
const ADVANCE = 5.6;

/** Whether this character is drawn as itself; another is drawn as an empty box. */
export const isDrawn = (character: string): boolean => character === " " || Object.hasOwn(strokes, character.toUpperCase());

/** Width of a line of lettering of this height, in the height's unit. */
export const letteringWidth = (text: string, height: number): number => ([...text].length * ADVANCE - 1.6) * (height / 6);

/** SVG path data of one line of lettering; `x`, `y` its upper left corner. */
export function lettering(text: string, x: number, y: number, height: number): string {
  const scale = height / 6;
  return [...text.toUpperCase()]
    .flatMap((character, i) => {
      if (character === " ") return [];
      const left = x + i * ADVANCE * scale;
      return (strokes[character] ?? UNKNOWN).split("|").map((stroke) =>
        stroke
          .split(" ")
          .map((point, n) => {
            const [px = 0, py = 0] = point.split(",").map(Number);
            return `${n === 0 ? "M" : "L"}${(left + px * scale).toFixed(1)} ${(y + py * scale).toFixed(1)}`;
          })
          .join(""),
      );
    })
    .join("");
}

/** The strokes of one capital or digit, in its height's unit from its upper left corner, y down. */
export const strokesOf = (character: string, height: number): readonly (readonly [x0: number, y0: number, x1: number, y1: number])[] =>
  (strokes[character.toUpperCase()] ?? UNKNOWN).split("|").flatMap((stroke) => {
    const points = stroke.split(" ").map((point) => point.split(",").map((one) => (Number(one) * height) / 6));
    return points.slice(1).map(([x = 0, y = 0], i) => [points[i]?.[0] ?? 0, points[i]?.[1] ?? 0, x, y] as const);
  });

/** Words laid into lines no longer than `width`. */
export function linesWithin(text: string, height: number, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && letteringWidth(`${last} ${word}`, height) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
