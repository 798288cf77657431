import { expanded, rectangular, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { kindOf, supposed } from "./card-fit.ts";
import { alongPlane, homographyOf, LENS, type Lean, leaning, poseOf, undistorted } from "./card-model.ts";
import type { CardPlane } from "./card-plane.ts";
import { solve } from "./cholesky.ts";
import { mapSpot, type Spot, turnedBack } from "./homography.ts";

/** What a length in a photo is doubtful by, beside the fit itself. All bounds are half-widths of a rectangle unless said otherwise. */
export interface PhotoDoubts {
  /** Standard uncertainty of a tap along each axis, pixels of the picture. */
  readonly tap: number;
  /** The measured plane may lie this far over or under the card's plane at the card, micrometres. */
  readonly height: number;
  /** And lean against it by this much either way, millionths (1000 is 1 mm in 1 m). */
  readonly lean: number;
  /** The card's print may be too large or too small by this share, millionths. */
  readonly print: number;
  /** The thing itself may end this far from where its ends are seen, both together, micrometres. */
  readonly placing: number;
}

/** Own: a tap under a magnifier, a card that lies on the plane that is measured, a check ruler read to 1/4 mm in 250 mm. */
export const OWN_PHOTO_DOUBTS: PhotoDoubts = { tap: 0.5, height: 500, lean: 1000, print: 1000, placing: 0 };

export const photoSources = ["corners", "lens", "bow", "spread", "taps", "height", "lean", "print", "placing"] as const;
export type PhotoSource = (typeof photoSources)[number];

export interface PhotoLength {
  /** Metres; its parts are named by `photoSources`. */
  readonly length: Uncertain;
  /** The same as integers, micrometres: the length, and U of k = 2. */
  readonly micrometres: number;
  readonly doubt: number;
  /** How far the farther end lies from the middle of the card, micrometres. */
  readonly reach: number;
}

interface Taken {
  readonly model: readonly number[];
  readonly lean: Lean;
  readonly from: Spot;
  readonly to: Spot;
}

const LEVEL: Lean = { height: 0, alongX: 0, alongY: 0 };
const STEP = 1e-5;

/** A spot of the picture on the measured plane, units of the card; undefined on and above the horizon. */
function onPlane({ model, lean }: Pick<Taken, "model" | "lean">, focal: number, seen: Spot): Spot | undefined {
  const card = homographyOf(model);
  const measured = leaning(card, poseOf(card, focal).up, lean);
  const spot = mapSpot(turnedBack(measured), undistorted(seen, model[LENS] as number));
  const [, , , , , , g, h, i] = measured;
  // the card's middle is in front of the camera and has w = 1
  return g * spot.x + h * spot.y + i > 0 && Number.isFinite(spot.x) && Number.isFinite(spot.y) ? spot : undefined;
}

/** Nothing, where an end is not on the plane. */
function lengthOf(taken: Taken, focal: number): number | undefined {
  const [from, to] = [onPlane(taken, focal, taken.from), onPlane(taken, focal, taken.to)];
  return from && to && alongPlane(taken.lean, from, to);
}

/** Standard uncertainty from the corners of the card together, and from each supposed number, by the gain of the least squares. */
function partsOfFit({ fit, corners }: CardPlane, slope: readonly number[]): ReadonlyMap<PhotoSource, number> {
  const gain = solve(fit.factor, slope);
  const squares = new Map<PhotoSource, number>();
  const add = (source: PhotoSource, part: number): void => {
    squares.set(source, (squares.get(source) ?? 0) + part * part);
  };
  for (const [i, row] of fit.slopes.entries()) {
    const part = fit.widened * row.reduce((sum, value, j) => sum + value * (gain[j] as number), 0);
    const index = supposed[i - 2 * corners.length];
    add(index === undefined ? "corners" : kindOf(index), part);
  }
  return new Map([...squares].map(([source, square]) => [source, Math.sqrt(square)]));
}

/**
 * Length between two taps on the plane that the card lies on, with its doubt: corners, what of lens, bow and spread the photo
 * does not tell, taps, a plane that lies over the card or leans against it, and the card's print. The farther from the card
 * and the steeper the look, the larger each of them grows by itself. Refuses what is no number, two taps on one spot, and a tap
 * on or above the plane's horizon. + − × ÷ and square roots only.
 */
export function photoLength(plane: CardPlane, from: Spot, to: Spot, doubts: PhotoDoubts = OWN_PHOTO_DOUBTS): Outcome<PhotoLength> {
  if (![from.x, from.y, to.x, to.y].every(Number.isFinite)) return refuse("number-not-finite", "taps");
  if (!Object.values(doubts).every(Number.isFinite)) return refuse("number-not-finite", "doubts");
  if (Object.values(doubts).some((value) => value < 0)) return refuse("number-not-positive", "doubts");
  if (from.x === to.x && from.y === to.y) return refuse("points-coincident", "taps");
  const { frame, fit } = plane;
  const inFrame = ({ x, y }: Spot): Spot => ({ x: (x - frame.centre.x) / frame.half, y: (y - frame.centre.y) / frame.half });
  const taken: Taken = { model: fit.model, lean: LEVEL, from: inFrame(from), to: inFrame(to) };
  const value = lengthOf(taken, frame.focal);
  const ends = [onPlane(taken, frame.focal, taken.from), onPlane(taken, frame.focal, taken.to)];
  if (value === undefined) return refuse("reading-out-of-range", ends[0] === undefined ? "taps/0" : "taps/1", { found: "horizon" });
  const slopeBy = (moved: (by: number) => Taken): number =>
    ((lengthOf(moved(STEP), frame.focal) ?? Number.NaN) - (lengthOf(moved(-STEP), frame.focal) ?? Number.NaN)) / (2 * STEP);
  const slope = fit.model.map((_, j) =>
    slopeBy((by) => ({ ...taken, model: fit.model.map((number, k) => (k === j ? number + by : number)) })),
  );
  const byTap = (end: "from" | "to", axis: "x" | "y"): number =>
    slopeBy((by) => ({ ...taken, [end]: { ...taken[end], [axis]: taken[end][axis] + by } }));
  const byLean = (part: keyof Lean): number => slopeBy((by) => ({ ...taken, lean: { ...LEVEL, [part]: by } }));
  const root = (parts: readonly number[]): number => Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));
  const taps = root([byTap("from", "x"), byTap("from", "y"), byTap("to", "x"), byTap("to", "y")]);
  const parts = new Map<PhotoSource, number>([
    ...partsOfFit(plane, slope),
    ["taps", (taps * doubts.tap) / frame.half],
    ["height", Math.abs(byLean("height")) * (rectangular(doubts.height) / frame.size)],
    ["lean", (root([byLean("alongX"), byLean("alongY")]) * rectangular(doubts.lean)) / 1e6],
    ["print", (value * rectangular(doubts.print)) / 1e6],
    ["placing", rectangular(doubts.placing) / frame.size],
  ]);
  if (![...parts.values()].every(Number.isFinite)) return refuse("reading-out-of-range", "taps", { found: "horizon" });
  const metres = frame.size / 1e6;
  const length: Uncertain = {
    value: value * metres,
    parts: new Map([...parts].filter(([, part]) => part > 0).map(([source, part]) => [source, part * metres])),
  };
  const reach = Math.max(...ends.map((end) => (end === undefined ? 0 : root([end.x, end.y])))) * frame.size;
  return ok({
    length,
    micrometres: Math.round(length.value * 1e6),
    doubt: Math.ceil(expanded(length) * 1e6),
    reach: Math.round(reach),
  });
}
