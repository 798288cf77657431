import { fitToSheet, onSheet } from "../../geometry/index.ts";
import type { DrawnAs, PlaceOnPlan } from "../../job/index.ts";
import { type Outcome, ok } from "../../outcome/index.ts";
import type { DrawingView, DrawnShape, PaperPoint } from "../model-drawn.ts";
import type { SayArithmetic } from "../say-arithmetic.ts";
import { basinBounds, basinEdge, basinShapes, type DrawnBasin } from "./plan-basin.ts";
import { dimensions } from "./plan-lettering.ts";
import { AWAY, balloon, freestCorner, markSign, northArrow, pointSign } from "./plan-signs.ts";
import { scaleBar, scaleSaid, scalesFor, type Units } from "./scale-said.ts";
import { at, direction, onPaper, placedAt, shifted } from "./strokes.ts";

export interface DrawnMark extends PlaceOnPlan {
  readonly letter: string;
}
export interface DrawnPoint extends PlaceOnPlan {
  readonly number: string;
  readonly name: string;
  readonly drawnAs: DrawnAs;
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
  readonly basin?: DrawnBasin;
  /** Degrees of the line of the first two marks as said, and north in their axes. */
  readonly north?: { readonly bearing: string; readonly along: { readonly x: number; readonly y: number } };
  readonly units: Units;
}

const WIDTH = 172;
const TALLEST = 136;
const LOWEST = 60;
/** Free on every side for letters, and below for the bar. */
const MARGIN = { side: 13, top: 10, bottom: 19 } as const;
const PER_METRE = 1e6;

/** Ellipses are drawn so many times as large, until the largest can be seen: half axis, millimetres. */
const enlargements = [1, 2, 5, 10, 20] as const;
const LARGEST = 20;
const SEEN = 2.6;

type Place = Pick<PlaceOnPlan, "x" | "y">;
const inMetres = ({ x, y }: Place) => ({ x: x / PER_METRE, y: y / PER_METRE });

/** The corners of the box round an ellipse's larger axis: never smaller than the ellipse. */
const bounds = ({ x, y, ellipse: { major } }: PlaceOnPlan): readonly Place[] => [
  { x: x - major, y: y - major },
  { x: x + major, y: y + major },
];

const middleOf = (places: readonly PaperPoint[]): PaperPoint =>
  at(places.reduce((sum, { x }) => sum + x, 0) / places.length, places.reduce((sum, { y }) => sum + y, 0) / places.length);

/** How tall the paper has to be for what is drawn, at the largest scale that the tallest paper allows. */
function sheetFor({ marks, points, basin, units }: PlanToDraw) {
  const all = [...[...marks, ...points].flatMap(bounds), ...(basin ? basinBounds(basin) : [])].map(inMetres);
  const across = (WIDTH - 2 * MARGIN.side) / 1000;
  const most = fitToSheet(all, across, (TALLEST - MARGIN.top - MARGIN.bottom) / 1000, scalesFor(units));
  if (!most.ok) return most;
  const ys = all.map(({ y }) => y);
  const needed = ((Math.max(...ys) - Math.min(...ys)) * 1000) / most.value.scale.ratio;
  const height = Math.min(TALLEST, Math.max(LOWEST, Math.ceil(needed + MARGIN.top + MARGIN.bottom)));
  const fit = fitToSheet(all, across, (height - MARGIN.top - MARGIN.bottom) / 1000, scalesFor(units));
  return fit.ok ? ok({ fit: fit.value, height }) : fit;
}

/** A direction of the plan's axes as it goes on paper. */
const onPaperAlong = ({ x, y }: Place): PaperPoint => ({ x, y: -y });

function scaleLine(toDraw: PlanToDraw, scale: string, times: number, say: SayArithmetic): string {
  const [first = "", second = ""] = toDraw.marks.map(({ letter }) => letter);
  const line = { first, second, bearing: toDraw.north?.bearing ?? "" };
  return say("plan.scale", {
    scale,
    north: say(toDraw.north === undefined ? "plan.north-unknown" : "plan.north", line),
    ellipses: say(times === 1 ? "plan.ellipses" : "plan.ellipses-larger", { times: String(times) }),
  });
}

/**
 * Marks, the basin's outline, buried points with their ellipses, and the distances that locate them, at the largest usual scale that
 * fits. The first mark to the second lies level. Refuses what no scale can hold.
 */
export function planDrawing(toDraw: PlanToDraw, say: SayArithmetic): Outcome<DrawingView> {
  const { marks, points, ties, basin, north, units } = toDraw;
  const sheet = sheetFor(toDraw);
  if (!sheet.ok) return sheet;
  const { fit, height } = sheet.value;
  const paper = (place: Place): PaperPoint => {
    const { x, y } = onSheet(fit, inMetres(place));
    return at(MARGIN.side + x * 1000, MARGIN.top + y * 1000);
  };
  const toPaper = 1000 / PER_METRE / fit.scale.ratio;
  const signed = [...marks.map((mark) => [mark.letter, mark] as const), ...points.map((point) => [point.number, point] as const)];
  const places = new Map(signed.map(([sign, place]) => [sign, paper(place)]));
  const middle = middleOf([...places.values()]);
  const largest = Math.max(...signed.map(([, { ellipse }]) => ellipse.major)) * toPaper;
  const times = enlargements.find((one) => largest * one >= SEEN) ?? LARGEST;

  const ellipse = (place: PlaceOnPlan): DrawnShape => ({
    shape: "ellipse",
    stroke: "ellipse",
    placed: placedAt(paper(place), onPaperAlong({ x: place.ellipse.along.x / 1e6, y: place.ellipse.along.y / 1e6 })),
    rx: onPaper(place.ellipse.major * toPaper * times),
    ry: onPaper(place.ellipse.minor * toPaper * times),
  });
  /** Letters stand away from the middle of the drawing, where the lines are fewest. */
  const out = (place: PaperPoint): PaperPoint => direction(middle, place);
  const measured = ties.flatMap(({ from, to, text }) => {
    const [start, end] = [places.get(from), places.get(to)];
    return start === undefined || end === undefined ? [] : [{ from: start, to: end, text }];
  });
  const signs = [...places.values()].flatMap((place) => [place, shifted(place, out(place), AWAY)]);
  const occupied = [...signs, ...(basin ? basinEdge(basin).map(paper) : [])];
  const shapes: readonly DrawnShape[] = [
    ...(basin ? basinShapes(basin, paper, toPaper) : []),
    ...dimensions(measured, occupied),
    ...signed.filter(([, place]) => place.ellipse.major > 0).map(([, place]) => ellipse(place)),
    ...[...places].flatMap(([sign, place]) => balloon(place, out(place), sign)),
    ...marks.map((mark) => markSign(paper(mark))),
    ...points.flatMap((point) => pointSign(point.drawnAs, paper(point))),
    ...(north ? northArrow(freestCorner(WIDTH, height, occupied, measured), onPaperAlong(north.along), say("plan.north-letter")) : []),
    ...scaleBar(fit.scale, units, MARGIN.side, height - 5),
  ];
  const names = (list: readonly string[]): string => (list.length === 0 ? say("plan.none") : list.join("; "));
  return ok({
    width: WIDTH,
    height,
    title: say("plan.title"),
    says: say("plan.says", {
      marks: names(marks.map(({ letter }) => letter)),
      points: names(points.map(({ number, name }) => `${number} ${name}`)),
    }),
    scale: scaleLine(toDraw, scaleSaid(fit.scale, say), times, say),
    shapes,
  });
}
