import type { LineLook, PointShape } from "./view.ts";

/** A sign of a picture's key as one SVG path in a box of 28 by 12. */
export interface SignDrawn {
  readonly path: string;
  readonly filled: boolean;
  readonly dash: string;
}

export const SIGN_BOX = { width: 28, height: 12 } as const;

const paths: Readonly<Record<PointShape | LineLook, string>> = {
  circle: "M9.5 6a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0Z",
  square: "M10 2h8v8h-8Z",
  triangle: "M14 1.5l5 9h-10Z",
  diamond: "M14 1l5 5l-5 5l-5 -5Z",
  times: "M10 2l8 8M18 2l-8 8",
  whole: "M1 6H27",
  dashed: "M1 6H27",
  dotted: "M1 6H27",
};
export const dashes: Readonly<Record<LineLook, string>> = { whole: "", dashed: "6 4", dotted: "1.5 3.5" };

const isLine = (sign: PointShape | LineLook): sign is LineLook => Object.hasOwn(dashes, sign);

export const signDrawn = (sign: PointShape | LineLook, filled = false): SignDrawn => ({
  path: paths[sign],
  filled: filled && !isLine(sign),
  dash: isLine(sign) ? dashes[sign] : "",
});
