import type { CardCode } from "#core/geometry/index.ts";
import type { Chance } from "../../chance/index.ts";
import {
  type Camera,
  EARTH,
  inPicture,
  jpegOf,
  type Light,
  type Lying,
  letterSheet,
  level,
  type PrintedCode,
  project,
  render,
  type Sheet,
  sheetSurface,
  spotOnSheet,
  standing,
  type Vector,
  type Window,
} from "../../scenes/index.ts";

/** A phone's main camera: 12 megapixels, 26 mm on film. */
export const [WIDTH, HEIGHT, FOCAL] = [4000, 3000, 3000];
/** What is drawn of each picture, half-widths: as `OWN_PHOTO_DOUBTS` and `UNKNOWN_LENS` state it. */
export const DRAWN = { lens: 0.005, height: 0.0005, lean: 0.001, print: 0.001, bow: 0.0005 } as const;

/** Twenty signs of QR's alphanumeric mode: the longest text that its smallest version, of 21 modules, holds with a medium check. */
export const SHEET: Sheet = letterSheet(["AB1-7F3K-0042-A01-9Q", "AB1-7F3K-0042-B01-9Q", "AB1-7F3K-0042-C01-9Q", "AB1-7F3K-0042-D01-9Q"]);
export const CARD_LENGTH = SHEET.height;

const corners = ({ x, y, side }: PrintedCode) =>
  [
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ] as const;
const micrometres = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: Math.round(x * 1e6), y: Math.round(y * 1e6) });

/** The card as the core is told of it. */
export const CARD: readonly CardCode[] = SHEET.codes.map((code) => {
  const [a, b, c, d] = corners(code);
  return { name: code.name, corners: [micrometres(a), micrometres(b), micrometres(c), micrometres(d)] };
});

export interface Asked {
  /** Degrees and metres. */
  readonly tilt: number;
  readonly distance: number;
  /** Of the sheet beyond what is drawn: bent to a radius, a dog's ear, dirt. */
  readonly lying?: Partial<Pick<Lying, "bend" | "ear" | "dirt">>;
  /** The measured plane lies anywhere within this over or under the card, metres, and U is told so; else `DRAWN.height`. */
  readonly over?: number;
  /** The whole picture instead of the part with the card: the same pixels, and twelve times the time. */
  readonly whole?: boolean;
}

/** A photo of a card whose every figure is known. */
export interface CardPhoto {
  readonly camera: Camera;
  readonly jpeg: Buffer;
  readonly window: Window;
  readonly lying: Lying;
  /** The print's scale: 1 is true. */
  readonly print: number;
  /** The measured plane: its height at the card's middle, and its rise along x and y of the world. */
  readonly plane: { readonly height: number; readonly alongX: number; readonly alongY: number };
}

const between = (chance: Chance, half: number): number => half * (2 * chance.next() - 1);

/** A sheet whose print is larger by `print` is the same sheet, larger. */
const printedAt = (print: number): Sheet => ({
  width: SHEET.width * print,
  height: SHEET.height * print,
  codes: SHEET.codes.map((code) => ({ ...code, x: code.x * print, y: code.y * print, side: code.side * print })),
});

const LIGHT: Light = { sun: [0.3, 0.4, 0.866], sky: 0.35, exposure: 0.9, shadows: false };

/** Where the sheet's corners are seen; undefined where one of them is out of the picture. */
function seenSheet(camera: Camera, sheet: Sheet, lying: Lying): readonly (readonly [number, number])[] | undefined {
  const spots = [
    [0, 0],
    [sheet.width, 0],
    [sheet.width, sheet.height],
    [0, sheet.height],
  ].map(([x, y]) => project(camera, spotOnSheet(sheet, lying, x as number, y as number)));
  return spots.every((spot) => spot !== undefined && inPicture(camera, spot, 30)) ? (spots as [number, number][]) : undefined;
}

/** Whole blocks of JPEG, so that the part is stored as the whole would be. */
function windowAbout(spots: readonly (readonly [number, number])[]): Window {
  const block = (value: number): number => 16 * Math.floor(value / 16);
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const [x, y] = [Math.max(0, block(Math.min(...xs) - 40)), Math.max(0, block(Math.min(...ys) - 40))];
  return { x, y, width: Math.min(WIDTH, Math.max(...xs) + 40) - x, height: Math.min(HEIGHT, Math.max(...ys) + 40) - y };
}

/** A camera over a card somewhere in its picture; the card lies turned at random. Throws where the card never fits, which is a bug. */
function placed(
  chance: Chance,
  { tilt, distance }: Asked,
  sheet: Sheet,
  lying: Lying,
): readonly [Camera, readonly (readonly [number, number])[]] {
  for (let n = 0; n < 500; n++) {
    const reach = 0.4 * distance;
    const aim: Vector = [between(chance, reach), between(chance, reach), 0];
    const lens = { focal: FOCAL, k1: between(chance, DRAWN.lens), k2: 0 };
    const camera = standing({
      width: WIDTH,
      height: HEIGHT,
      lens,
      aim,
      distance,
      tilt,
      side: 360 * chance.next(),
      roll: 360 * chance.next(),
    });
    const seen = seenSheet(camera, sheet, lying);
    if (seen !== undefined) return [camera, seen];
  }
  throw new Error(`a card is never whole in a picture from ${distance} m at ${tilt}°`);
}

export async function cardPhoto(chance: Chance, asked: Asked): Promise<CardPhoto> {
  const print = 1 + between(chance, DRAWN.print);
  const sheet = printedAt(print);
  const turn = 2 * Math.PI * chance.next();
  // its edges rise over its middle by a bow, about: half the width squared over twice the radius
  const bend = (chance.happens(0.5) ? 1 : -1) * (SHEET.width ** 2 / 8 / (DRAWN.bow * (0.05 + 0.95 * chance.next())));
  const lying: Lying = {
    middle: [0, 0, 0],
    along: [Math.cos(turn), Math.sin(turn), 0],
    up: [0, 0, 1],
    seed: chance.below(1000),
    ...(asked.lying?.ear === undefined ? { bend } : {}),
    ...asked.lying,
  };
  const [camera, seen] = placed(chance, asked, sheet, lying);
  const window = asked.whole ? { x: 0, y: 0, width: WIDTH, height: HEIGHT } : windowAbout(seen);
  const ground = level(-0.02, { shade: 0.3, uneven: 0.8, tint: EARTH, seed: chance.below(1000), key: 10 });
  const sensor = { blur: 0.5 + 0.6 * chance.next(), noise: 0.005 + 0.015 * chance.next(), seed: chance.below(1e6) };
  const rendered = render([ground, sheetSurface(sheet, lying, 20)], camera, LIGHT, sensor, roundWindow(window));
  return {
    camera,
    jpeg: await jpegOf(rendered, 80 + chance.below(16)),
    window: rendered.window,
    lying,
    print,
    plane: {
      height: between(chance, asked.over ?? DRAWN.height),
      alongX: between(chance, DRAWN.lean),
      alongY: between(chance, DRAWN.lean),
    },
  };
}

const roundWindow = ({ x, y, width, height }: Window): Window => ({ x, y, width: Math.floor(width), height: Math.floor(height) });
