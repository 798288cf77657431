import type { DrawnShape, PaperPoint } from "../model-drawn.ts";
import { circle, line } from "./strokes.ts";

/** The basin in plan, micrometres in the axes of the marks. */
export type DrawnBasin = { readonly x: number; readonly y: number } & (
  | { readonly diameter: number }
  | {
      readonly length: number;
      readonly width: number;
      /** Unit vector along its length; absent: not known, drawn level. */
      readonly along?: { readonly x: number; readonly y: number };
    }
);

interface Place {
  readonly x: number;
  readonly y: number;
}

function cornersOf(basin: Extract<DrawnBasin, { length: number }>): readonly Place[] {
  const { x, y, length, width, along = { x: 1, y: 0 } } = basin;
  return [
    [1, 1],
    [1, -1],
    [-1, -1],
    [-1, 1],
  ].map(([a = 1, b = 1]) => ({
    x: x + (a * length * along.x - b * width * along.y) / 2,
    y: y + (a * length * along.y + b * width * along.x) / 2,
  }));
}

/** Places that bound its outline. */
export function basinBounds(basin: DrawnBasin): readonly Place[] {
  if ("length" in basin) return cornersOf(basin);
  const { x, y, diameter } = basin;
  return [
    { x: x - diameter / 2, y: y - diameter / 2 },
    { x: x + diameter / 2, y: y + diameter / 2 },
  ];
}

const ROUND = 24;

/** Places along its outline, near enough to each other that no letters fit in between. */
export function basinEdge(basin: DrawnBasin): readonly Place[] {
  if ("length" in basin) {
    const corners = cornersOf(basin);
    return corners.flatMap((from, i) => {
      const to = corners[(i + 1) % corners.length] ?? from;
      return [0, 0.2, 0.4, 0.6, 0.8].map((share) => ({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }));
    });
  }
  return Array.from({ length: ROUND }, (_, i) => {
    const angle = (2 * Math.PI * i) / ROUND;
    return { x: basin.x + (basin.diameter / 2) * Math.cos(angle), y: basin.y + (basin.diameter / 2) * Math.sin(angle) };
  });
}

/** Its outline to its size; thin where its turn is not known. `toPaper`: millimetres of paper in one micrometre. */
export function basinShapes(basin: DrawnBasin, paper: (place: Place) => PaperPoint, toPaper: number): readonly DrawnShape[] {
  if ("diameter" in basin) return [circle("buried", paper(basin), (basin.diameter / 2) * toPaper)];
  const corners = cornersOf(basin).map(paper);
  return [line(basin.along === undefined ? "hair" : "buried", [...corners, ...corners.slice(0, 1)])];
}
