import { type Crossing, type PicturePoint, throughMost } from "./edge-line.ts";
import type { Grey } from "./grey.ts";
import { changeAt, type Profile, profileAt } from "./profile.ts";

/** An edge that a line crosses: where, and how surely. */
export interface CrossedEdge extends PicturePoint {
  /** Standard uncertainty along the line, pixels. */
  readonly u: number;
}

/** Own: an edge of a thing is no printed line; where it is held to end is not known better than this, pixels. */
export const LEAST_EDGE_DOUBT = 0.25;
/** Own: profiles beside the line on each side, a pixel apart. An edge of a pipe is straight over so short a piece. */
const BESIDE = 8;
/** Slants of the edge against the line's normal that are tried, as tangents: up to some 60°. */
const SLANTS = [-1.7, -1.2, -0.8, -0.5, -0.25, 0, 0.25, 0.5, 0.8, 1.2, 1.7] as const;
/** Half the width over which a blurred edge's light changes, pixels. */
const WINDOW = 2;
/** How far off the slant that was tried an edge is looked for once more in each profile, pixels: half a step between two slants. */
const NEAR = 3;
/** Own: an edge lighter or darker by less than this share of full light is shade or noise. */
const LEAST_STEP = 0.03;
/** Own: a step below so many standard errors of the profiles' mean may be their noise, the largest of many places and slants. */
const LEAST_ERRORS = 8;
/** Own: of the profiles at least this share must agree on one straight edge, to a pixel. */
const AGREE = 0.7;

interface Beside {
  readonly along: number;
  readonly profile: Profile;
}

interface Mean extends Profile {
  /** Standard error of a value, share of full light. */
  readonly error: number;
}

/** The mean of the profiles, each moved so that an edge of this slant lies at one place in all of them. */
function sheared(all: readonly Beside[], slant: number, reach: number): Mean | undefined {
  const [first] = all;
  if (first === undefined) return undefined;
  const step = (2 * first.profile.deep) / (first.profile.light.length - 1);
  const half = Math.floor(reach / step);
  const light: number[] = [];
  let squares = 0;
  for (let i = -half; i <= half; i++) {
    const there = all.map(
      ({ along, profile }) => profile.light[Math.round((profile.deep + i * step + slant * along) / step)] ?? Number.NaN,
    );
    const mean = there.reduce((sum, one) => sum + one, 0) / there.length;
    squares += there.reduce((sum, one) => sum + (one - mean) * (one - mean), 0);
    light.push(mean);
  }
  if (!light.every(Number.isFinite)) return undefined;
  const error = Math.sqrt(squares / (light.length * (all.length - 1) * all.length));
  return { light, deep: half * step, error };
}

interface Guess {
  readonly slant: number;
  readonly across: number;
  readonly way: 1 | -1;
  readonly contrast: number;
}

function strongest(all: readonly Beside[], reach: number): Guess | undefined {
  let best: Guess | undefined;
  for (const slant of SLANTS) {
    const mean = sheared(all, slant, reach + WINDOW + 1);
    if (mean === undefined) continue;
    for (const way of [1, -1] as const) {
      const found = changeAt(mean, way, [-reach, reach], WINDOW);
      if (
        found !== undefined &&
        Math.abs(found.across) <= reach &&
        found.contrast > Math.max(best?.contrast ?? LEAST_STEP, LEAST_ERRORS * mean.error)
      )
        best = { slant, way, ...found };
    }
  }
  return best;
}

/**
 * The strongest edge that the line from `at` in a direction of length one crosses within `reach` pixels either way, to the part of
 * a pixel; pixels of the picture, the first one's middle ½, ½. Undefined where there is none, where what is found is not one straight
 * edge, and at the picture's rim.
 */
export function edgeAcross(grey: Grey, at: PicturePoint, [dx, dy]: readonly [number, number], reach: number): CrossedEdge | undefined {
  if (![at.x, at.y, dx, dy, reach].every(Number.isFinite) || !(reach > 0)) return undefined;
  const most = Math.max(...SLANTS) * BESIDE + reach + NEAR + WINDOW + 2;
  const all: Beside[] = [];
  for (let along = -BESIDE; along <= BESIDE; along += 1) {
    const profile = profileAt(grey, [at.x - along * dy, at.y + along * dx], [dx, dy], most, most);
    if (profile !== undefined) all.push({ along, profile });
  }
  if (all.length < 2 * BESIDE + 1) return undefined;
  const guess = strongest(all, reach);
  if (guess === undefined) return undefined;
  const crossings = all.flatMap(({ along, profile }): Crossing[] => {
    const about = guess.across + guess.slant * along;
    const found = changeAt(profile, guess.way, [about - NEAR, about + NEAR], WINDOW);
    return found === undefined ? [] : [{ along, ...found }];
  });
  const fit = throughMost(crossings);
  if (fit === undefined) return undefined;
  const agreeing = crossings.filter(({ along, across }) => Math.abs(across - fit.offset - fit.slope * along) < 1);
  if (agreeing.length < AGREE * all.length || Math.abs(fit.offset) > reach + 1) return undefined;
  const u = Math.max(LEAST_EDGE_DOUBT, fit.across(0));
  return { x: at.x + fit.offset * dx, y: at.y + fit.offset * dy, u };
}
