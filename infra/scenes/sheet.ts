import encodeQR from "qr";
import { cross, dot, plus, times, unit, type Vector } from "./camera.ts";
import { EARTH, GREY, meet, paint, type Surface } from "./surface.ts";
import { dirty } from "./texture.ts";

/** A code on the sheet: its upper left corner, side and modules; metres from the sheet's upper left corner, y down. */
export interface PrintedCode {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly side: number;
  readonly text: string;
}

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly codes: readonly PrintedCode[];
}

/** How a sheet lies. */
export interface Lying {
  /** Its middle, the direction of its x, and what is up from it: the two at right angles. */
  readonly middle: Vector;
  readonly along: Vector;
  readonly up: Vector;
  /** Radius in metres of the cylinder that the sheet is bent to, about an axis along its y; its middle is up where positive. Absent: flat. */
  readonly bend?: number;
  /** The lower right code lies out of the sheet's plane by this much at its outer corner, metres (a dog's ear). */
  readonly ear?: number;
  /** Share of the sheet that dirt covers, about. */
  readonly dirt?: number;
  readonly seed: number;
}

/** A letter sheet with four codes in its corners, 12 mm from its edges. */
export function letterSheet(texts: readonly [string, string, string, string], side = 0.05, margin = 0.012): Sheet {
  const [width, height] = [0.2159, 0.2794];
  const [right, below] = [width - margin - side, height - margin - side];
  const [a, b, c, d] = texts;
  const codes = [
    { name: "a", x: margin, y: margin, side, text: a },
    { name: "b", x: right, y: margin, side, text: b },
    { name: "c", x: right, y: below, side, text: c },
    { name: "d", x: margin, y: below, side, text: d },
  ];
  return { width, height, codes };
}

/** Half the sheet's height over the ends of a bend, so that a bent sheet touches the ground with its edges or its middle. */
const rise = (bend: number, width: number): number => (bend > 0 ? bend * (1 - Math.cos(width / 2 / bend)) : 0);

/** Where a spot of the sheet is in the world. */
export function spotOnSheet({ width, height }: Sheet, { middle, along, up, bend }: Lying, x: number, y: number): Vector {
  const down = cross(along, up);
  const [a, b] = [x - width / 2, y - height / 2];
  if (bend === undefined) return plus(plus(middle, along, a), down, b);
  const r = Math.abs(bend);
  const sag = r * (1 - Math.cos(a / r));
  const z = bend > 0 ? rise(bend, width) - sag : sag;
  return plus(plus(plus(middle, along, r * Math.sin(a / r)), down, b), up, z);
}

const PAPER = 0.8;
const INK = 0.05;
const DIRT = 0.18;

/** Without the light border that the encoder adds. */
const modulesOf = (text: string): readonly (readonly boolean[])[] =>
  encodeQR(text, "raw", { ecc: "medium", border: 1 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1));

/** Light from a spot of the sheet, and a key that changes where ink begins. */
function inked({ width, height, codes }: Sheet): (x: number, y: number) => boolean | undefined {
  const printed = codes.map((code) => ({ ...code, modules: modulesOf(code.text) }));
  return (x, y) => {
    if (x < 0 || y < 0 || x > width || y > height) return undefined;
    for (const { x: left, y: top, side, modules } of printed) {
      if (x < left || y < top || x >= left + side || y >= top + side) continue;
      const per = modules.length / side;
      return modules[Math.floor((y - top) * per)]?.[Math.floor((x - left) * per)] ?? false;
    }
    return false;
  };
}

/** The sheet as a surface: flat, or a part of a cylinder. */
export function sheetSurface(sheet: Sheet, lying: Lying, key: number): Surface {
  const { middle, along, up, bend, ear = 0, dirt = 0, seed } = lying;
  const down = cross(along, up);
  const ink = inked(sheet);
  const { width, height } = sheet;
  const [paper, black, soil] = [
    { shade: PAPER, uneven: 0, tint: GREY, seed, key },
    { shade: INK, uneven: 0, tint: GREY, seed, key: key + 1 },
    { shade: DIRT, uneven: 0.8, tint: EARTH, seed, key: key + 2 },
  ];
  const met = (meeting: Parameters<Surface>[2], x: number, y: number, t: number, n: Vector, origin: Vector, d: Float64Array): boolean => {
    const dark = ink(x, y);
    if (dark === undefined) return false;
    meet(meeting, origin, d, t, n[0], n[1], n[2]);
    const soiled = dirty(x, y, seed, dirt);
    paint(meeting, soiled ? soil : dark ? black : paper, x, y);
    return true;
  };
  return (origin, d, meeting) => {
    const from = plus(origin, middle, -1);
    const [ox, oy, oz] = [dot(from, along), dot(from, down), dot(from, up)];
    const [dx, dy, dz] = [
      (d[0] as number) * along[0] + (d[1] as number) * along[1] + (d[2] as number) * along[2],
      (d[0] as number) * down[0] + (d[1] as number) * down[1] + (d[2] as number) * down[2],
      (d[0] as number) * up[0] + (d[1] as number) * up[1] + (d[2] as number) * up[2],
    ];
    if (bend === undefined) {
      const flat = -oz / dz;
      const [x, y] = [ox + flat * dx + width / 2, oy + flat * dy + height / 2];
      // the ear: a flap about the line below and right of which the lower right code lies
      const over = ear === 0 ? 0 : Math.max(0, x + y - (width + height - 0.13)) / 0.13;
      const t = over > 0 ? (ear * over - oz) / dz : flat;
      if (!(t > 1e-6 && t < meeting.t)) return;
      met(meeting, ox + t * dx + width / 2, oy + t * dy + height / 2, t, up, origin, d);
      return;
    }
    const r = Math.abs(bend);
    const middleZ = bend > 0 ? rise(bend, width) - r : r;
    const [a, b, c] = [dx * dx + dz * dz, ox * dx + (oz - middleZ) * dz, ox * ox + (oz - middleZ) ** 2 - r * r];
    const root = b * b - a * c;
    if (root < 0) return;
    for (const t of [(-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a]) {
      if (!(t > 1e-6 && t < meeting.t)) continue;
      const [x, z] = [ox + t * dx, oz + t * dz - middleZ];
      if (z * bend < 0) continue;
      const n = unit(plus(times(along, x / r), up, z / r));
      if (met(meeting, r * Math.asin(Math.max(-1, Math.min(1, x / r))) + width / 2, oy + t * dy + height / 2, t, n, origin, d)) return;
    }
  };
}
