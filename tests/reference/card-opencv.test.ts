import { describe, test } from "vitest";
import { type CardCode, cardPlane, type FourSpots, type Homography, homographyFrom, mapSpot, type Spot } from "#core/geometry/index.ts";
import { type Mat, openCv } from "../helpers/opencv.ts";
import { byHand, published, source } from "./checked.ts";

const library = source("OpenCV 4.5.2, @techstark/opencv-js", "findHomography, solvePnP", "seen");

const cv = await openCv();

const matrix = (rows: readonly (readonly number[])[]): Mat => cv.matFromArray(rows.length, rows[0]?.length ?? 0, cv.CV_64F, rows.flat());

/** Four codes of 50 mm on a letter sheet, millimetres from its middle. */
const sheet: readonly Spot[] = [-95.95, -45.95, 45.95, 95.95].flatMap((x) => [-127.7, -77.7, 77.7, 127.7].map((y) => ({ x, y })));

const [FOCAL, WIDTH, HEIGHT] = [3000, 4000, 3000];
const HALF = 2500;

/** Seen by a pinhole turned about x and then about its look, from a distance in mm, off the middle, with radial distortion `k` at half the diagonal. */
function seen({ x, y }: Spot, { tilt, turn, away, k }: { tilt: number; turn: number; away: number; k: number }): Spot {
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const [X, Y, Z] = [x + 60, y * c - 40, y * s + away];
  const [u, v] = [(FOCAL * X) / Z / HALF, (FOCAL * Y) / Z / HALF];
  const by = HALF * (1 + k * (u * u + v * v));
  return { x: WIDTH / 2 + by * (u * Math.cos(turn) - v * Math.sin(turn)), y: HEIGHT / 2 + by * (u * Math.sin(turn) + v * Math.cos(turn)) };
}

const poses = [
  { tilt: 0.1, turn: 0.3, away: 700 },
  { tilt: 0.5, turn: 1.2, away: 900 },
  { tilt: 0.8, turn: 2.9, away: 1500 },
] as const;
/** Off by a rule, not by chance, up to half a pixel. */
const off = (i: number): Spot => ({ x: 0.5 * Math.sin(12.9898 * i + 1), y: 0.5 * Math.sin(78.233 * i + 2) });

const ours = (pairs: readonly { from: Spot; to: Spot }[]): Homography => {
  const found = homographyFrom(pairs);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
};

describe("homography", () => {
  test("of sixteen corners that do not fit: where its sheet goes, and spots three sheets away, to a thousandth of a pixel", () => {
    for (const pose of poses) {
      const pairs = sheet.map((from, i) => {
        const [at, by] = [seen(from, { ...pose, k: 0 }), off(i)];
        return { from, to: { x: at.x + by.x, y: at.y + by.y } };
      });
      const theirs = cv.findHomography(matrix(pairs.map(({ from: { x, y } }) => [x, y])), matrix(pairs.map(({ to: { x, y } }) => [x, y])));
      const [mine, other] = [ours(pairs), [...theirs.data64F] as unknown as Homography];
      for (const spot of [...sheet, { x: 500, y: -300 }, { x: -400, y: 250 }]) {
        const [a, b] = [mapSpot(mine, spot), mapSpot(other, spot)];
        published(library, "spot through the homography of least squares, px", [a.x, a.y], [b.x, b.y], { absolute: 1e-3 });
      }
    }
  });

  test("worked out by hand: the unit square with its far corner drawn in to two thirds", () => {
    // w = x + y + 1 is 1, 2, 3, 2 at the corners; u = 2x / w and v = 2y / w take them to (0,0), (1,0), (2/3,2/3), (0,1)
    const pairs = [
      { from: { x: 0, y: 0 }, to: { x: 0, y: 0 } },
      { from: { x: 1, y: 0 }, to: { x: 1, y: 0 } },
      { from: { x: 1, y: 1 }, to: { x: 2 / 3, y: 2 / 3 } },
      { from: { x: 0, y: 1 }, to: { x: 0, y: 1 } },
    ];
    published(byHand("u = 2x / (x + y + 1), v = 2y / (x + y + 1)"), "the nine numbers", [...ours(pairs)], [2, 0, 0, 0, 2, 0, 1, 1, 1], {
      absolute: 1e-9,
    });
  });
});

const code = (name: string, x: number, y: number): CardCode => {
  const at = (dx: number, dy: number) => ({ x: 1000 * (x + dx), y: 1000 * (y + dy) });
  return { name, corners: [at(0, 0), at(50, 0), at(50, 50), at(0, 50)] };
};
const card = [code("a", -95.95, -127.7), code("b", 45.95, -127.7), code("c", 45.95, 77.7), code("d", -95.95, 77.7)];

describe("camera and card", () => {
  test("distance and tilt from corners with a lens' distortion, to the micrometre and the millionth", () => {
    for (const pose of poses) {
      const k = 0.012;
      const codes = card.map(({ name, corners }) => ({
        name,
        corners: corners.map(({ x, y }) => ({ ...seen({ x: x / 1000, y: y / 1000 }, { ...pose, k }), u: 0.001 })) as unknown as FourSpots<
          Spot & { u: number }
        >,
      }));
      const plane = cardPlane(card, { width: WIDTH, height: HEIGHT, codes, focalLength: FOCAL, lens: { distortion: 12_000, within: 1 } });
      if (!plane.ok) throw new Error(plane.refusal.code);
      const all = codes.flatMap(({ corners }) => corners);
      const [turn, shift, rotation] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
      cv.solvePnP(
        matrix(card.flatMap(({ corners }) => corners.map(({ x, y }) => [x / 1000, y / 1000, 0]))),
        matrix(all.map(({ x, y }) => [x, y])),
        matrix([
          [FOCAL, 0, WIDTH / 2],
          [0, FOCAL, HEIGHT / 2],
          [0, 0, 1],
        ]),
        // theirs is counted in focal lengths
        matrix([[(k * FOCAL * FOCAL) / (HALF * HALF), 0, 0, 0]]),
        turn,
        shift,
      );
      cv.Rodrigues(turn, rotation);
      const away = Math.sqrt([...shift.data64F].reduce((sum, t) => sum + t * t, 0));
      published(library, "from the camera to the card, micrometres", plane.value.away, 1000 * away, { absolute: 2 });
      published(library, "cosine of the tilt, millionths", plane.value.cosine, 1e6 * Math.abs(rotation.data64F[8] as number), {
        absolute: 2,
      });
    }
  });
});
