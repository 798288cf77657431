import { lettering } from "./lettering.ts";

type Point = readonly [x: number, y: number];

/** Chance that is the same every time: a drawing of the same thing has the same bytes. */
export function chanceFrom(seed: string): () => number {
  let state = 2166136261;
  for (const character of seed) state = Math.imul(state ^ (character.codePointAt(0) ?? 0), 16777619) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A pen whose lines waver a little, as drawn without a ruler. Collects SVG. */
export class Pen {
  readonly chance: () => number;
  readonly #parts: string[] = [];

  constructor(seed: string) {
    this.chance = chanceFrom(seed);
  }

  get svg(): string {
    return this.#parts.join("\n");
  }

  /** A number between two, by this drawing's chance. */
  between(least: number, most: number): number {
    return least + this.chance() * (most - least);
  }

  line(points: readonly Point[], { width = 4, dash, fill = "none", colour = "#1d1b18" }: Stroke = {}): void {
    this.#add(this.#wavering(points), width, fill, colour, dash);
  }

  shape(points: readonly Point[], stroke: Stroke = {}): void {
    const [first] = points;
    this.line(first === undefined ? points : [...points, first], stroke);
  }

  circle(x: number, y: number, radius: number, stroke: Stroke = {}): void {
    this.ellipse(x, y, radius, radius, stroke);
  }

  ellipse(x: number, y: number, rx: number, ry: number, stroke: Stroke = {}): void {
    const points = Array.from({ length: 33 }, (_, i): Point => {
      const angle = (i / 32) * 2 * Math.PI;
      return [x + rx * Math.cos(angle), y + ry * Math.sin(angle)];
    });
    this.line(points, stroke);
  }

  /** A line with an arrow at its end. */
  arrow([x1, y1]: Point, [x2, y2]: Point, stroke: Stroke = {}): void {
    const length = Math.hypot(x2 - x1, y2 - y1) || 1;
    const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
    this.line(
      [
        [x1, y1],
        [x2, y2],
      ],
      stroke,
    );
    this.line(
      [
        [x2 - 22 * ux - 11 * uy, y2 - 22 * uy + 11 * ux],
        [x2, y2],
        [x2 - 22 * ux + 11 * uy, y2 - 22 * uy - 11 * ux],
      ],
      stroke,
    );
  }

  words(text: string, x: number, y: number, height = 22, width = 3, colour = "#1d1b18"): void {
    this.#parts.push(
      `<path d="${lettering(text, x, y, height)}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"/>`,
    );
  }

  /** Slanting strokes, as cut earth is drawn. */
  hatch(x: number, y: number, width: number, height: number, gap = 26): void {
    for (let at = 0; at < width; at += gap) {
      const reach = Math.min(height, width - at);
      this.line(
        [
          [x + at + this.between(0, 6), y],
          [x + at + reach * 0.6, y + reach],
        ],
        { width: 2, colour: "#5b5348" },
      );
    }
  }

  /** Water: short level strokes under a level line. */
  water(x: number, y: number, width: number): void {
    this.line(
      [
        [x, y],
        [x + width, y],
      ],
      { width: 4, colour: "#1f5f6e" },
    );
    for (const [i, share] of [0.7, 0.45, 0.22].entries()) {
      const w = width * share;
      this.line(
        [
          [x + (width - w) / 2, y + 16 + i * 14],
          [x + (width + w) / 2, y + 16 + i * 14],
        ],
        { width: 3, colour: "#1f5f6e" },
      );
    }
  }

  /** A tape standing or lying: marks along it, a longer one at each fifth. */
  tape(x: number, y: number, length: number, upright: boolean): void {
    const at = (along: number, off: number): Point => (upright ? [x + off, y + along] : [x + along, y + off]);
    this.shape([at(0, 0), at(length, 0), at(length, 28), at(0, 28)], { width: 3, fill: "#f4d35e" });
    for (let i = 0, along = 12; along < length; i += 1, along += 14) {
      this.line([at(along, 0), at(along, i % 5 === 0 ? 20 : 11)], { width: 2 });
    }
  }

  stone(x: number, y: number, rx: number, ry: number): void {
    const corners = 9;
    const points = Array.from({ length: corners }, (_, i): Point => {
      const angle = (i / corners) * 2 * Math.PI + this.between(-0.2, 0.2);
      const far = this.between(0.82, 1.08);
      return [x + rx * far * Math.cos(angle), y + ry * far * Math.sin(angle)];
    });
    this.shape(points, { fill: "#d8d0c0", width: 4 });
    this.line(
      [
        [x - rx * 0.4, y - ry * 0.2],
        [x, y + ry * 0.1],
        [x + rx * 0.3, y - ry * 0.1],
      ],
      { width: 2 },
    );
  }

  #wavering(points: readonly Point[]): string {
    const out: Point[] = [];
    for (const [i, [x, y]] of points.entries()) {
      const before = points[i - 1];
      if (before !== undefined) {
        const pieces = Math.max(1, Math.round(Math.hypot(x - before[0], y - before[1]) / 70));
        for (let n = 1; n < pieces; n += 1) {
          const t = n / pieces;
          out.push([before[0] + (x - before[0]) * t + this.between(-1.6, 1.6), before[1] + (y - before[1]) * t + this.between(-1.6, 1.6)]);
        }
      }
      out.push([x, y]);
    }
    return out.map(([x, y], i) => `${i === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
  }

  #add(path: string, width: number, fill: string, colour: string, dash: string | undefined): void {
    const dashed = dash === undefined ? "" : ` stroke-dasharray="${dash}"`;
    this.#parts.push(
      `<path d="${path}" fill="${fill}" stroke="${colour}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"${dashed}/>`,
    );
  }
}

export interface Stroke {
  readonly width?: number;
  readonly dash?: string;
  readonly fill?: string;
  readonly colour?: string;
}
