import {
  type CardCode,
  type CardPlane,
  cardPlane,
  type FourSpots,
  type SeenCode,
  type SeenCorner,
  type Spot,
} from "#core/geometry/index.ts";

/** A card of four codes of 50 mm on a letter sheet, and a pinhole over it; all by formula, nothing drawn. */
const code = (name: string, x: number, y: number): CardCode => ({
  name,
  corners: [
    { x, y },
    { x: x + 50_000, y },
    { x: x + 50_000, y: y + 50_000 },
    { x, y: y + 50_000 },
  ],
});
export const card: readonly CardCode[] = [
  code("a", 12_000, 12_000),
  code("b", 153_900, 12_000),
  code("c", 153_900, 217_400),
  code("d", 12_000, 217_400),
];
export const [width, height, focalLength] = [4000, 3000, 3000];
/** Middle of the codes, micrometres. */
export const middle: Spot = { x: 107_950, y: 139_700 };

export interface View {
  /** Radians and metres; the card's middle is off the picture's middle by `right` and `down`, metres. */
  readonly tilt: number;
  readonly away: number;
  readonly right: number;
  readonly down: number;
  /** Distortion at half the diagonal, share. */
  readonly k: number;
}

/** Where a spot is seen: micrometres on the sheet, and its height over it towards the camera. */
export function seenFrom({ tilt, away, right, down, k }: View, { x, y }: Spot, up = 0): Spot {
  const [a, b, c] = [(x - middle.x) / 1e6, (y - middle.y) / 1e6, up / 1e6];
  const [cosine, sine] = [Math.cos(tilt), Math.sin(tilt)];
  const depth = away + b * sine - c * cosine;
  const [u, v] = [(focalLength * (a + right)) / depth / 2500, (focalLength * (b * cosine + c * sine + down)) / depth / 2500];
  const by = 2500 * (1 + k * (u * u + v * v));
  return { x: width / 2 + by * u, y: height / 2 + by * v };
}

/** The codes as seen, every corner moved by what `off` says, with `u`. */
export const codesSeen = (
  view: View,
  u: number,
  off: (name: string, corner: number) => Spot = () => ({ x: 0, y: 0 }),
  heightAt: (spot: Spot) => number = () => 0,
): readonly SeenCode[] =>
  card.map(({ name, corners }) => ({
    name,
    corners: corners.map((spot, i): SeenCorner => {
      const [at, by] = [seenFrom(view, spot, heightAt(spot)), off(name, i)];
      return { x: at.x + by.x, y: at.y + by.y, u };
    }) as unknown as FourSpots<SeenCorner>,
  }));

export function planeOf(codes: readonly SeenCode[], lens?: { readonly distortion: number; readonly within: number }): CardPlane {
  const found = cardPlane(card, { width, height, focalLength, codes, ...(lens === undefined ? {} : { lens }) });
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}
