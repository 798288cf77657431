import { type EdgeLine, edgeLine, type PicturePoint } from "./edge-line.ts";
import type { Grey } from "./grey.ts";

export interface RefinedCorner extends PicturePoint {
  /** Standard uncertainty along each axis, pixels. */
  readonly u: number;
}
export type FourCorners<T extends PicturePoint = PicturePoint> = readonly [topLeft: T, topRight: T, bottomRight: T, bottomLeft: T];

/** Own: no corner is better than this, pixels; what lies in the rounding of JPEG and in the pixels' own grid. */
export const LEAST_CORNER_DOUBT = 0.03;
/** A refined corner farther from the first one than this many modules is another edge. */
const MOST_MOVED = 2.5;
/** A corner that is worse known than this, pixels, was not found (own). */
const MOST_CORNER_DOUBT = 3;

function meetingOf(one: EdgeLine, other: EdgeLine): PicturePoint | undefined {
  const determinant = one.a * other.b - other.a * one.b;
  // edges that meet below some 6° say nothing of where
  if (!(Math.abs(determinant) > 0.1)) return undefined;
  return { x: (one.c * other.b - other.c * one.b) / determinant, y: (one.a * other.c - other.a * one.c) / determinant };
}

const apart = (a: PicturePoint, b: PicturePoint): number => Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));

/** Modules along a finder pattern's side, and how many of them at each end are not looked at: there the ring turns. */
const FINDER = 7;
const TURN = 1.3;
/** Whether an edge has a finder pattern at its first and at its last corner, from the upper edge clockwise. */
const FINDERS = [
  [true, true],
  [true, false],
  [false, true],
  [true, true],
] as const;

/** Where a share of the way along the edge and across the code lies, by the one homography that takes a square to four corners. */
function inCode([a, b, c, d]: FourCorners, edge: number): (along: number, across: number) => PicturePoint {
  const four = [a, b, c, d];
  const [p, q, r, s] = [0, 1, 2, 3].map((n) => four[(edge + n) % 4] as PicturePoint) as [
    PicturePoint,
    PicturePoint,
    PicturePoint,
    PicturePoint,
  ];
  // Heckbert 1989, 2.2.3 (from memory)
  const [x, y] = [p.x - q.x + r.x - s.x, p.y - q.y + r.y - s.y];
  const [x1, y1, x2, y2] = [q.x - r.x, q.y - r.y, s.x - r.x, s.y - r.y];
  const whole = x1 * y2 - x2 * y1;
  const [g, h] = [(x * y2 - x2 * y) / whole, (x1 * y - x * y1) / whole];
  return (along, across) => {
    const w = g * along + h * across + 1;
    return {
      x: ((q.x - p.x + g * q.x) * along + (s.x - p.x + h * s.x) * across + p.x) / w,
      y: ((q.y - p.y + g * q.y) * along + (s.y - p.y + h * s.y) * across + p.y) / w,
    };
  };
}

/** How deep a module lies behind an edge, pixels, by the place along it: measured at both finder patterns, straight between. */
function depthAlong(corners: FourCorners, edge: number, modules: number): (along: number) => number {
  const [from, to] = [corners[edge] as PicturePoint, corners[(edge + 1) % 4] as PicturePoint];
  const length = apart(from, to);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const place = inCode(corners, edge);
  const [near, far] = [FINDER / 2 / modules, 1 - FINDER / 2 / modules].map((share) => {
    const { x, y } = place(share, 1 / modules);
    return { along: (x - from.x) * ux + (y - from.y) * uy, depth: Math.abs((y - from.y) * ux - (x - from.x) * uy) };
  }) as [{ along: number; depth: number }, { along: number; depth: number }];
  return (along) => near.depth + ((far.depth - near.depth) * (along - near.along)) / (far.along - near.along);
}

interface Search {
  readonly modules: number;
  /** How far an edge is looked for, in modules. */
  readonly reach: number;
  /** By both edges of the finder patterns' rings, or by their outer ones alone. */
  readonly ring: boolean;
}

function refined(grey: Grey, corners: FourCorners, { modules, reach, ring }: Search): FourCorners<RefinedCorner> | undefined {
  const inside = { x: corners.reduce((sum, { x }) => sum + x, 0) / 4, y: corners.reduce((sum, { y }) => sum + y, 0) / 4 };
  const edges = corners.map((from, i) => {
    const to = corners[(i + 1) % 4] as PicturePoint;
    const length = apart(from, to);
    const module = length / modules;
    const [first, last] = FINDERS[i] as readonly [boolean, boolean];
    const looksAt = (along: number): boolean => {
      const [near, far] = [along, modules - along];
      return (first && near > TURN && near < FINDER - TURN) || (last && far > TURN && far < FINDER - TURN);
    };
    const depthAt = depthAlong(corners, i, modules);
    return {
      length,
      line: edgeLine(grey, { from, to, inside }, { module, depthAt, reach: Math.max(1.5, reach * depthAt(length / 2)), looksAt, ring }),
    };
  });
  const found = corners.map((corner, i): RefinedCorner | undefined => {
    const [before, after] = [edges[(i + 3) % 4], edges[i]];
    if (before?.line === undefined || after?.line === undefined) return undefined;
    const at = meetingOf(before.line, after.line);
    const module = (before.length + after.length) / (2 * modules);
    if (at === undefined || !(apart(at, corner) <= MOST_MOVED * module + 1)) return undefined;
    const sine = Math.abs(before.line.a * after.line.b - after.line.a * before.line.b);
    const [one, other] = [before.line.across(before.length), after.line.across(0)];
    // lines that meet slantingly are known worse along both
    const u = Math.sqrt((one * one + other * other) / 2) / sine;
    return u <= MOST_CORNER_DOUBT ? { ...at, u: Math.sqrt(u * u + LEAST_CORNER_DOUBT * LEAST_CORNER_DOUBT) } : undefined;
  });
  const [a, b, c, d] = found;
  return a && b && c && d && [a, b, c, d];
}

/**
 * Corners of a QR code to a part of a pixel. The corners meant are those of the square that all its modules fill, without the
 * quiet zone. Each side is taken from the outermost rings of the finder patterns on it: three corners are outer corners of a
 * finder pattern; the lower right one is where the right and the lower side meet, each drawn out from one pattern alone, and its
 * doubt says so. `corners`: as a decoder gives them,
 * code upright, within two modules; pixels from the picture's upper left corner, the first pixel's middle at ½, ½. `modules`:
 * along a side, 21 to 177. Undefined where an edge is not found (dirt, a rim of the picture, below 2 pixels a module).
 */
export function codeCorners(grey: Grey, corners: FourCorners, modules: number): FourCorners<RefinedCorner> | undefined {
  if (![modules, ...corners.flatMap(({ x, y }) => [x, y])].every(Number.isFinite) || modules < 21) return undefined;
  const roughly = refined(grey, corners, { modules, reach: 1.4, ring: false });
  return roughly && refined(grey, roughly, { modules, reach: 0.5, ring: true });
}
