import { rectangular } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { type CornerSeen, type FittedCard, fitCard, type Priors } from "./card-fit.ts";
import { type CardFrame, LENS, type ModelCorner } from "./card-model.ts";
import { agreeing } from "./card-rejection.ts";
import type { CardCode, CardPicture, Lens, SeenCorner } from "./card-shape.ts";

/** Own: a phone corrects its main camera; what is left at the corner of the picture is taken to be below 0.5 %. */
export const UNKNOWN_LENS: Lens = { distortion: 0, within: 5000 };
/** Own: focal length of a phone's main camera, 26 mm on a film whose half diagonal is 21.63 mm. Sizes doubts only. */
const FOCAL = 1.2;
/** Own: a sheet that lies flat bows by less than this over its codes, micrometres. */
const BOW_WITHIN = 500;
/** Own: ink and blur move an edge by less than this, micrometres. */
const SPREAD_WITHIN = 400;

/** Where a card lies in a picture, and how well that is known. For `photoLength` and `standFor`. */
export interface CardPlane {
  readonly frame: CardFrame;
  readonly priors: Priors;
  readonly fit: FittedCard;
  readonly corners: readonly CornerSeen[];
  readonly lens: Lens;
  /** Names of corners that lie off what the others agree on, as `code/0` to `code/3` from the upper left one clockwise. */
  readonly rejected: readonly string[];
  /** Whether corners, flat sheet and lens fit together: chi-square and what it exceeds once in a thousand, in millionths. */
  readonly chiSquare: number;
  readonly most: number;
  readonly degreesOfFreedom: number;
  /** No where the sheet is bent, a code lies out of its plane, or it is another card than was printed. */
  readonly flat: boolean;
  /** Angle's cosine between the card's normal and the camera's axis, in millionths, and the distance to the card, micrometres. */
  readonly cosine: number;
  readonly away: number;
  /** The lens' distortion as this photo has it, with its standard uncertainty, in millionths. */
  readonly distortion: { readonly value: number; readonly u: number };
}

const inMillionths = (n: number): number => Math.round(n * 1e6);

/** Middle of all codes, and half the diagonal of the box about them. */
function framed(card: readonly CardCode[]): Pick<CardFrame, "middle" | "size"> {
  const spots = card.flatMap(({ corners }) => corners);
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const [width, height] = [right - left, bottom - top];
  return { middle: { x: (left + right) / 2, y: (top + bottom) / 2 }, size: Math.sqrt(width * width + height * height) / 2 };
}

function cornersOf(card: readonly CardCode[], { codes }: CardPicture, { middle, size, centre, half }: CardFrame): readonly CornerSeen[] {
  // in their names' order, whatever order they were found in: sums of floats depend on it
  const inOrder = [...codes].sort((a, b) => (a.name < b.name ? -1 : 1));
  return inOrder.flatMap(({ name, corners }) => {
    const printed = card.find((code) => code.name === name);
    if (printed === undefined) return [];
    const [x0, y0] = [printed.corners.reduce((sum, { x }) => sum + x, 0) / 4, printed.corners.reduce((sum, { y }) => sum + y, 0) / 4];
    return printed.corners.map((spot, i): CornerSeen => {
      const seen = corners[i] as SeenCorner;
      const [dx, dy] = [spot.x - x0, spot.y - y0];
      const reach = Math.sqrt((dx * dx + dy * dy) / 2);
      const model: ModelCorner = {
        at: { x: (spot.x - middle.x) / size, y: (spot.y - middle.y) / size },
        outwards: { x: dx / reach, y: dy / reach },
      };
      return {
        name: `${name}/${i}`,
        code: name,
        model,
        seen: { x: (seen.x - centre.x) / half, y: (seen.y - centre.y) / half },
        u: seen.u / half,
      };
    });
  });
}

const finite = ({ width, height, codes, lens, focalLength, centre }: CardPicture, card: readonly CardCode[]): boolean =>
  [
    ...[width, height, lens?.distortion ?? 0, lens?.within ?? 0, focalLength ?? 1, centre?.x ?? 0, centre?.y ?? 0],
    ...codes.flatMap(({ corners }) => corners.flatMap(({ x, y, u }) => [x, y, u])),
    ...card.flatMap(({ corners }) => corners.flatMap(({ x, y }) => [x, y])),
  ].every(Number.isFinite);

/**
 * The card's plane from the corners of its codes: one code is enough, four bear a bad one. Corners that disagree with the rest
 * are left out (a whole code, or up to three single ones). Refuses what is no number, a picture without a code of the card or
 * with one of them twice, a doubt that is not above nought, and corners in one line.
 */
export function cardPlane(card: readonly CardCode[], picture: CardPicture): Outcome<CardPlane> {
  const { width, height, lens = UNKNOWN_LENS, centre = { x: width / 2, y: height / 2 } } = picture;
  if (!finite(picture, card)) return refuse("number-not-finite", "picture");
  if (!(width > 0 && height > 0 && lens.within > 0)) return refuse("number-not-positive", "picture");
  if (card.length === 0) return refuse("points-too-few", "card", { least: 4 });
  const half = Math.sqrt(width * width + height * height) / 2;
  const frame: CardFrame = { ...framed(card), centre, half, focal: picture.focalLength === undefined ? FOCAL : picture.focalLength / half };
  if (!(frame.size > 0 && frame.focal > 0)) return refuse("number-not-positive", "picture");
  const corners = cornersOf(card, picture, frame);
  if (new Set(corners.map(({ name }) => name)).size < corners.length) return refuse("points-coincident", "picture");
  if (corners.length < 4) return refuse("points-too-few", "picture", { least: 4 });
  if (!corners.every(({ u }) => u > 0)) return refuse("number-not-positive", "picture");
  const bow = rectangular(BOW_WITHIN) / frame.size;
  const priors: Priors = {
    lens: { value: lens.distortion / 1e6, u: rectangular(lens.within) / 1e6 },
    bow: { value: 0, u: bow },
    spread: { value: 0, u: rectangular(SPREAD_WITHIN) / frame.size },
  };
  const chosen = agreeing(corners, (some) => fitCard(some, priors, frame));
  if (chosen === undefined) return refuse("points-collinear", "picture");
  const { fit, rejected, most, flat } = chosen;
  return ok({
    frame,
    priors,
    fit,
    corners: corners.filter(({ name }) => !rejected.includes(name)),
    lens,
    rejected,
    chiSquare: inMillionths(fit.chiSquare),
    most: inMillionths(most),
    degreesOfFreedom: fit.degreesOfFreedom,
    flat,
    cosine: inMillionths(fit.pose.cosine),
    away: Math.round(fit.pose.away * frame.size),
    distortion: { value: inMillionths(fit.model[LENS] as number), u: inMillionths(fit.lensU) },
  });
}
