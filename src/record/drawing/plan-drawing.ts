import { fitToSheet, onSheet } from "../../geometry/index.ts";
import type { PlaceOnPlan } from "../../job/index.ts";
import { type Outcome, ok } from "../../outcome/index.ts";
import type { DrawingView, DrawnShape, PaperPoint } from "../model-drawn.ts";
import type { SayArithmetic } from "../say-arithmetic.ts";
import { dimension } from "./dimension.ts";
import { scaleBar, scaleSaid, scalesFor, type Units } from "./scale-said.ts";
import { at, circle, direction, line, onPaper, placedAt, shifted, wordsThrough } from "./strokes.ts";

export interface DrawnMark extends PlaceOnPlan {
  readonly letter: string;
}
export interface DrawnPoint extends PlaceOnPlan {
  readonly number: string;
  readonly name: string;
}
/** A distance as measured, from a mark to a mark or a point, by their letters and numbers. */
export interface DrawnTie {
  readonly from: string;
  readonly to: string;
  readonly text: string;
}
export interface PlanToDraw {
  readonly marks: readonly DrawnMark[];
  readonly points: readonly DrawnPoint[];
  readonly ties: readonly DrawnTie[];
  readonly units: Units;
}

const WIDTH = 172;
const HEIGHT = 112;
/** Free on every side for letters, and below for the bar. */
const MARGIN = { side: 14, top: 10, bottom: 16 } as const;
const BALLOON = 2.5;
const AWAY = 6.4;
const PER_METRE = 1e6;

/** Ellipses are drawn so many times as large, until the largest can be seen: half axis, millimetres. */
const enlargements = [1, 2, 5, 10, 20] as const;
const LARGEST = 20;
const SEEN = 2.6;

const between = (from: PaperPoint, to: PaperPoint, share: number): PaperPoint =>
  at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
const apart = (a: PaperPoint, b: PaperPoint): number => Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));

/** Where along a line its figure stands farthest from everything that has its place already; the middle where that is far enough. */
function freest(from: PaperPoint, to: PaperPoint, taken: readonly PaperPoint[]): number {
  const room = (share: number): number => Math.min(FAR_ENOUGH, ...taken.map((place) => apart(place, between(from, to, share))));
  return shares.reduce<number>((best, share) => (room(share) > room(best) ? share : best), 0.5);
}
const FAR_ENOUGH = 13;
const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.27, 0.73] as const;

const inMetres = ({ x, y }: PlaceOnPlan) => ({ x: x / PER_METRE, y: y / PER_METRE });

/** The corners of the box round an ellipse's larger axis: never smaller than the ellipse. */
const bounds = (place: PlaceOnPlan) => {
  const [centre, r] = [inMetres(place), place.ellipse.major / PER_METRE];
  return [
    { x: centre.x - r, y: centre.y - r },
    { x: centre.x + r, y: centre.y + r },
  ];
};

const middleOf = (places: readonly PaperPoint[]): PaperPoint =>
  at(places.reduce((sum, { x }) => sum + x, 0) / places.length, places.reduce((sum, { y }) => sum + y, 0) / places.length);

const triangle = ({ x, y }: PaperPoint): readonly PaperPoint[] => [
  at(x, y - 1.9),
  at(x + 1.65, y + 0.95),
  at(x - 1.65, y + 0.95),
  at(x, y - 1.9),
];

/**
 * Marks, buried points with their ellipses, and the distances that locate them, at the largest usual scale that fits. The first mark
 * to the second lies level; north is not known. Refuses what no scale can hold.
 */
export function planDrawing({ marks, points, ties, units }: PlanToDraw, say: SayArithmetic): Outcome<DrawingView> {
  const inner = { width: WIDTH - 2 * MARGIN.side, height: HEIGHT - MARGIN.top - MARGIN.bottom };
  const fitted = fitToSheet([...marks, ...points].flatMap(bounds), inner.width / 1000, inner.height / 1000, scalesFor(units));
  if (!fitted.ok) return fitted;
  const fit = fitted.value;
  const paper = (place: PlaceOnPlan): PaperPoint => {
    const { x, y } = onSheet(fit, inMetres(place));
    return at(MARGIN.side + x * 1000, MARGIN.top + y * 1000);
  };
  const toPaper = 1000 / PER_METRE / fit.scale.ratio;
  const places = new Map([
    ...marks.map((mark) => [mark.letter, paper(mark)] as const),
    ...points.map((point) => [point.number, paper(point)] as const),
  ]);
  const middle = middleOf([...places.values()]);

  const largest = Math.max(...[...marks, ...points].map(({ ellipse: { major } }) => major)) * toPaper;
  const times = enlargements.find((one) => largest * one >= SEEN) ?? LARGEST;
  const outwards = (place: PaperPoint): PaperPoint => shifted(place, direction(middle, place), AWAY);

  /** Letters stand away from the middle of the drawing, where the lines are fewest. */
  const balloon = (place: PaperPoint, text: string): readonly DrawnShape[] => {
    const out = direction(middle, place);
    const centre = outwards(place);
    return [
      line("hair", [place, shifted(place, out, AWAY - BALLOON)]),
      circle("outline", centre, BALLOON, "paper"),
      wordsThrough(centre, text, { anchor: "middle", size: 2.8, heavy: true }),
    ];
  };

  const ellipse = (place: PlaceOnPlan): DrawnShape => ({
    shape: "ellipse",
    stroke: "ellipse",
    placed: placedAt(paper(place), { x: place.ellipse.along.x / 1e6, y: -place.ellipse.along.y / 1e6 }),
    rx: onPaper(place.ellipse.major * toPaper * times),
    ry: onPaper(place.ellipse.minor * toPaper * times),
  });

  const taken = [...places.values()].flatMap((place) => [place, outwards(place)]);
  const tied = ties.flatMap(({ from, to, text }) => {
    const [start, end] = [places.get(from), places.get(to)];
    if (start === undefined || end === undefined) return [];
    const share = freest(start, end, taken);
    taken.push(between(start, end, share));
    return dimension(start, end, text, share);
  });
  const shapes: readonly DrawnShape[] = [
    ...tied,
    ...points.map(ellipse),
    ...marks.filter(({ ellipse: { major } }) => major > 0).map(ellipse),
    ...marks.flatMap((mark) => [...balloon(paper(mark), mark.letter), line("outline", triangle(paper(mark)), "ink")]),
    ...points.flatMap((point) => [...balloon(paper(point), point.number), circle("outline", paper(point), 0.75, "ink")]),
    ...scaleBar(fit.scale, units, MARGIN.side, HEIGHT - 5),
  ];
  const names = (list: readonly string[]): string => (list.length === 0 ? say("plan.none") : list.join("; "));
  return ok({
    width: WIDTH,
    height: HEIGHT,
    title: say("plan.title"),
    says: say("plan.says", {
      marks: names(marks.map(({ letter }) => letter)),
      points: names(points.map(({ number, name }) => `${number} ${name}`)),
    }),
    scale: say("plan.scale", {
      scale: scaleSaid(fit.scale, say),
      first: marks[0]?.letter ?? "",
      second: marks[1]?.letter ?? "",
      ellipses: say(times === 1 ? "plan.ellipses" : "plan.ellipses-larger", { times: String(times) }),
    }),
    shapes,
  });
}
