import type { DrawnShape, PaperPoint } from "../model-drawn.ts";
import { measure, readable } from "./dimension.ts";
import { at, direction, LETTERS, line, shifted, upFrom, words } from "./strokes.ts";

/** A distance between two places on paper with its figure. */
export interface Measured {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly text: string;
}

const apart = (a: PaperPoint, b: PaperPoint): number => Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
const between = (from: PaperPoint, to: PaperPoint, share: number): PaperPoint =>
  at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);

/** How far a place is from a line between two others, millimetres. */
export function offLine(place: PaperPoint, { from, to }: Omit<Measured, "text">): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((place.x - from.x) * dx + (place.y - from.y) * dy) / square));
  return apart(place, at(from.x + dx * share, from.y + dy * share));
}

/** Mean width of a letter or figure, as a share of its height. */
const LETTER_WIDTH = 0.56;
const CLEAR = 0.75;
/** Beyond this nothing is gained by standing farther off. */
const FAR_ENOUGH = 9;
/** A line that runs through letters counts as much as something that stands so near them. */
const LINE_NEAR = 1.9;
const shares = [0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.26, 0.74, 0.2, 0.8] as const;

interface Lettering {
  readonly foot: PaperPoint;
  readonly along: PaperPoint;
  readonly half: number;
  /** Places along the middle of its letters. */
  readonly samples: readonly PaperPoint[];
}

function letteringAt({ from, to, text }: Measured, share: number, above: boolean): Lettering {
  const along = readable(direction(from, to));
  const up = upFrom(along);
  const half = (text.length * LETTERS * LETTER_WIDTH) / 2;
  const foot = shifted(between(from, to, share), up, above ? CLEAR : -CLEAR - LETTERS * 0.75);
  const middle = shifted(foot, up, LETTERS * 0.36);
  return { foot, along, half, samples: [-1, -0.5, 0, 0.5, 1].map((way) => shifted(middle, along, way * half)) };
}

/** Each figure where it stands freest: off everything that has its place already and off the other lines. */
function placedFigures(all: readonly Measured[], occupied: readonly PaperPoint[]): readonly Lettering[] {
  const taken = [...occupied];
  return all.map((one) => {
    const others = all.filter((other) => other !== one);
    const room = ({ samples }: Lettering): number =>
      Math.min(
        FAR_ENOUGH,
        ...samples.flatMap((sample) => [
          ...taken.map((place) => apart(place, sample)),
          ...others.map((other) => {
            const off = offLine(sample, other);
            return off >= LINE_NEAR ? FAR_ENOUGH : off + LINE_NEAR;
          }),
        ]),
      );
    const choices = [true, false].flatMap((above) => shares.map((share) => letteringAt(one, share, above)));
    const best = choices.reduce((a, b) => (room(b) > room(a) + 1e-9 ? b : a));
    taken.push(...best.samples);
    return best;
  });
}

/** The paper behind letters, so that no line runs through them. */
function behind({ foot, along, half }: Lettering): DrawnShape {
  const up = upFrom(along);
  const corner = (way: number, high: number): PaperPoint => shifted(shifted(foot, along, way * (half + 0.3)), up, high);
  const [low, top] = [-0.35, LETTERS * 0.82];
  return line("bare", [corner(-1, low), corner(1, low), corner(1, top), corner(-1, top), corner(-1, low)], "paper");
}

/** Dimension lines with their figures, none through another's letters. */
export function dimensions(all: readonly Measured[], occupied: readonly PaperPoint[]): readonly DrawnShape[] {
  const figures = placedFigures(all, occupied);
  return [
    ...all.flatMap(({ from, to }) => measure(from, to)),
    ...figures.map(behind),
    ...figures.map(({ foot, along }, i) => words(foot, all[i]?.text ?? "", { anchor: "middle", along })),
  ];
}
