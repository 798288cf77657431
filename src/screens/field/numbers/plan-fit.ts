/** A place on the ground, micrometres, y to the left of x. */
interface OnGround {
  readonly x: number;
  readonly y: number;
}

export interface Fit {
  readonly height: number;
  /** Units of the drawing in a micrometre. */
  readonly scale: number;
  /** Where a place is drawn; the ground's y runs up the screen. */
  readonly at: (place: OnGround) => readonly [number, number];
}

export const PLAN_WIDTH = 340;
const MOST_HEIGHT = 420;
const EDGE = 30;
/** Of a site whose places all lie on one line, micrometres: half a metre either way. */
const LEAST_SPAN = 1_000_000;

/** One scale for both ways, as large as all places allow. */
export function fitted(places: readonly OnGround[]): Fit {
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const [wide, tall] = [Math.max(right - left, LEAST_SPAN), Math.max(high - low, LEAST_SPAN)];
  const scale = Math.min((PLAN_WIDTH - 2 * EDGE) / wide, (MOST_HEIGHT - 2 * EDGE) / tall);
  const height = tall * scale + 2 * EDGE;
  const [middleX, middleY] = [(left + right) / 2, (low + high) / 2];
  return {
    height,
    scale,
    at: ({ x, y }) => [PLAN_WIDTH / 2 + (x - middleX) * scale, height / 2 - (y - middleY) * scale],
  };
}

const feet = [1, 2, 5, 10, 20, 50, 100, 200];
const metres = [0.5, 1, 2, 5, 10, 20, 50];
const MICROMETRES_PER_FOOT = 304_800;
const LONGEST_BAR = 110;

/** The longest round length that the scale's bar has room for: in feet or metres, and in units of the drawing. */
export function barOf(
  scale: number,
  units: "inch" | "metric",
): { readonly length: number; readonly drawn: number; readonly unit: "ft" | "m" } {
  const [lengths, per, unit] = units === "inch" ? ([feet, MICROMETRES_PER_FOOT, "ft"] as const) : ([metres, 1_000_000, "m"] as const);
  const length = lengths.findLast((one) => one * per * scale <= LONGEST_BAR) ?? (lengths[0] as number);
  return { length, drawn: length * per * scale, unit };
}

/** Directions in which a letter may stand beside its place, the usual one first. */
const beside = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
  [0, -1.3],
  [0, 1.6],
] as const;
const REACH = 13;
const APART = 17;

/** Where the letter of each place stands: beside it, clear of the other places and of the letters before it. */
export function lettered(points: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const taken: (readonly [number, number])[] = [];
  for (const point of points) {
    const [x, y] = point;
    const spots = beside.map(([across, down]) => [x + across * REACH, y + down * REACH] as const);
    const room = ([sx, sy]: readonly [number, number]): number =>
      Math.min(...[...points.filter((other) => other !== point), ...taken].map(([ox, oy]) => Math.hypot(sx - ox, sy - oy)), APART);
    const best = spots.reduce((found, spot) => (room(spot) > room(found) ? spot : found));
    taken.push(best);
  }
  return taken;
}
