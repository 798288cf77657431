import type { Grey } from "./grey.ts";
import { type Change, changeAt, profileAt, ringAt } from "./profile.ts";

export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** A line in the picture, a x + b y = c with a² + b² = 1, and how surely it was found. */
export interface EdgeLine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Standard uncertainty across the line, pixels, at `along` from the edge's first corner. */
  readonly across: (along: number) => number;
}

/** Neighbouring profiles share pixels and count as fewer: their scatter is taken this much larger (own, from the bench). */
const SHARED = 1.6;
/** Profiles along one edge at most. */
const MOST_PROFILES = 96;

export interface Crossing extends Change {
  /** Along the edge, pixels. */
  readonly along: number;
}

const middleOf = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.floor(share * (list.length - 1))] ?? Number.NaN;

export interface Fitted {
  readonly offset: number;
  readonly slope: number;
  readonly across: (along: number) => number;
}

function straight(points: readonly Crossing[]): Fitted | undefined {
  const n = points.length;
  if (n < 6) return undefined;
  const mean = points.reduce((sum, { along }) => sum + along, 0) / n;
  const offset = points.reduce((sum, { across }) => sum + across, 0) / n;
  const spread = points.reduce((sum, { along }) => sum + (along - mean) * (along - mean), 0);
  const slope = points.reduce((sum, { along, across }) => sum + (along - mean) * across, 0) / spread;
  const squares = points.map(
    ({ along, across }) => (across - offset - slope * (along - mean)) * (across - offset - slope * (along - mean)),
  );
  const left = squares.reduce((sum, square) => sum + square, 0) / (n - 2);
  return {
    offset: offset - slope * mean,
    slope,
    across: (along) => SHARED * Math.sqrt(left * (1 / n + ((along - mean) * (along - mean)) / spread)),
  };
}

/** The line through crossings, those that lie off it left out: three rounds, each from what the one before kept. */
export function throughMost(points: readonly Crossing[]): Fitted | undefined {
  let kept = points;
  let fit = straight(kept);
  for (let round = 0; round < 3 && fit !== undefined; round++) {
    const { offset, slope } = fit;
    const off = (point: Crossing): number => Math.abs(point.across - offset - slope * point.along);
    const limit = Math.max(0.1, 2.5 * 1.4826 * middleOf(kept.map(off), 0.5));
    kept = points.filter((point) => off(point) <= limit);
    fit = straight(kept);
  }
  return fit;
}

export interface EdgeSearch {
  /** A module along the edge, pixels. */
  readonly module: number;
  /** A module across it, pixels from the edge's first corner: a slanting look makes them unlike, a near one changes it along the edge. */
  readonly depthAt: (along: number) => number;
  /** How far off the edge may be, pixels. */
  readonly reach: number;
  /** Places along the edge, in modules from its first corner. */
  readonly looksAt: (along: number) => boolean;
  /** Whether all it looks at is a finder pattern's ring: then both its edges count. */
  readonly ring: boolean;
}

/**
 * The outer edge of a code between two of its corners as seen at first, dark inside and light outside. Places without an edge are
 * left out by their contrast. Undefined where too little is found.
 */
export function edgeLine(
  grey: Grey,
  { from, to, inside }: { readonly from: PicturePoint; readonly to: PicturePoint; readonly inside: PicturePoint },
  { module, depthAt, reach, looksAt, ring }: EdgeSearch,
): EdgeLine | undefined {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (!(length > 8)) return undefined;
  const [ux, uy] = [dx / length, dy / length];
  const side = (inside.x - from.x) * -uy + (inside.y - from.y) * ux > 0 ? -1 : 1;
  const [nx, ny] = [-uy * side, ux * side];
  const count = Math.min(MOST_PROFILES, Math.floor(length));
  const crossings: Crossing[] = [];
  for (let i = 0; i < count; i++) {
    const along = (length * (i + 0.5)) / count;
    if (!looksAt(along / module)) continue;
    const depth = depthAt(along);
    const deep = reach + 3 + (ring ? depth : 0);
    const place = [from.x + along * ux, from.y + along * uy] as const;
    const profile = profileAt(grey, place, [nx, ny], deep, reach + 3);
    if (profile === undefined) continue;
    const found = ring ? ringAt(profile, depth, reach) : changeAt(profile, 1, [-reach, reach], Math.max(1.25, Math.min(3, 0.75 * depth)));
    if (found !== undefined) crossings.push({ along, ...found });
  }
  const enough =
    0.75 *
    middleOf(
      crossings.map(({ contrast }) => contrast),
      0.85,
    );
  const fit = throughMost(crossings.filter(({ contrast }) => contrast >= enough));
  if (fit === undefined) return undefined;
  // across = offset + slope · along, in the edge's own axes
  const [a, b] = [nx - fit.slope * ux, ny - fit.slope * uy];
  const size = Math.sqrt(a * a + b * b);
  return { a: a / size, b: b / size, c: (a * from.x + b * from.y + fit.offset) / size, across: fit.across };
}
