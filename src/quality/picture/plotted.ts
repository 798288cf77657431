import { dashes } from "./sign.ts";
import type { LineLook, PictureAxis, PictureMark, PictureView, PointShape, Spot } from "./view.ts";

type Options = Readonly<Record<string, unknown>>;

/** What is needed of Observable Plot (handed in: the core has no package), 0.6. */
export interface Plotting<Drawn> {
  readonly plot: (options: Options) => Drawn;
  readonly dot: (data: readonly unknown[], options: Options) => unknown;
  readonly ruleX: (data: readonly unknown[], options: Options) => unknown;
  readonly ruleY: (data: readonly unknown[], options: Options) => unknown;
  readonly tickX: (data: readonly unknown[], options: Options) => unknown;
  readonly tickY: (data: readonly unknown[], options: Options) => unknown;
  readonly line: (data: readonly unknown[], options: Options) => unknown;
  readonly rectY: (data: readonly unknown[], options: Options) => unknown;
  readonly barX: (data: readonly unknown[], options: Options) => unknown;
  readonly text: (data: readonly unknown[], options: Options) => unknown;
}

export interface PlotSize {
  /** CSS pixels. */
  readonly width: number;
  readonly language: "en" | "es";
}

const ROW = 34;
const ROOM = 76;
const USUAL_HEIGHT = 260;
/** A letter's share of a line at the size of the labels, and the widest that names may take. */
const LETTER = 6.4;
/** What a tick's figure takes along the axis, and what a name takes: twice what is written, since a scale may draw more than it is asked for. */
const [TICK, TICK_NAME] = [72, 150];
const WIDEST_NAMES = 0.42;

const dashed = (look: LineLook): Options => (dashes[look] === "" ? {} : { strokeDasharray: dashes[look] });

/** The picture by Observable Plot as one SVG in black ink. */
export function plotted<Drawn>(plotting: Plotting<Drawn>, view: PictureView, { width, language }: PlotSize, document?: unknown): Drawn {
  const names = view.y.names ?? [];
  const longest = Math.max(0, ...names.map((name) => name.length));
  const left = view.y.is === "names" ? Math.min(longest * LETTER + 18, width * WIDEST_NAMES) : 56;
  const fits = Math.max(6, Math.floor((left - 14) / LETTER));
  return plotting.plot({
    ...(document === undefined ? {} : { document }),
    width,
    height: view.y.is === "names" ? names.length * ROW + ROOM : USUAL_HEIGHT,
    marginLeft: left,
    marginRight: 24,
    marginTop: 36,
    marginBottom: 44,
    ariaLabel: view.title,
    style: { fontSize: "12px", background: "none" },
    x: scale(
      view.x,
      language,
      Math.min(8, Math.max(2, Math.floor((width - left - 24) / (view.x.places === undefined ? TICK : TICK_NAME)))),
    ),
    y: { ...scale(view.y, language, 6), ...(view.y.is === "names" ? { tickFormat: (name: string) => cut(name, fits) } : {}) },
    marks: view.marks.flatMap((mark) => drawnMark(plotting, mark, view)),
  });
}

const cut = (name: string, letters: number): string => (name.length > letters ? `${name.slice(0, letters - 1)}…` : name);

function scale({ label, is, names = [], reach, share, whole, places }: PictureAxis, language: string, ticks: number): Options {
  const domain = reach === undefined ? {} : { domain: is === "moments" ? reach.map((at) => new Date(at)) : reach };
  if (is === "names")
    return { type: "band", domain: names, label: label === "" ? null : label, labelArrow: "none", tickSize: 0, padding: 0.35 };
  const month = new Intl.DateTimeFormat(language, { year: "2-digit", month: "short", timeZone: "UTC" });
  const number = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  return {
    type: is === "moments" ? "utc" : "linear",
    ...domain,
    label: label === "" ? null : label,
    labelArrow: "none",
    ticks: is === "moments" ? Math.min(ticks, 5) : ticks,
    nice: reach === undefined && is === "figures" && places === undefined,
    tickFormat: (value: number | Date) => {
      if (is === "moments") return month.format(value as Date);
      if (places !== undefined) return places[Number(value) - 1] ?? "";
      if (share) return `${number.format(Math.round(Number(value) * 100))} %`;
      return whole && !Number.isInteger(value) ? "" : number.format(Number(value));
    },
  };
}

const dotted = (symbol: PointShape, filled: boolean): Options => ({
  x: "x",
  y: "y",
  symbol,
  r: 4.5,
  stroke: "black",
  strokeWidth: 1.5,
  fill: filled ? "black" : "white",
});

const moment = (axis: PictureAxis, spot: Spot): unknown => (axis.is === "moments" ? new Date(Number(spot)) : spot);

function drawnMark<Drawn>(plotting: Plotting<Drawn>, mark: PictureMark, { x, y }: PictureView): readonly unknown[] {
  switch (mark.is) {
    case "points": {
      const data = mark.points.map((point) => ({ ...point, x: moment(x, point.x), y: moment(y, point.y) }));
      const labels = data.filter(({ label }) => label !== undefined);
      return [
        plotting.dot(data, dotted(mark.shape, mark.filled)),
        ...(labels.length === 0 ? [] : [plotting.text(labels, { x: "x", y: "y", text: "label", dy: -11, fill: "black" })]),
      ];
    }
    case "intervals":
      return [
        plotting.ruleY(mark.intervals, { x1: "from", x2: "to", y: "at", stroke: "black", strokeWidth: 1.5 }),
        plotting.tickX(mark.intervals, { x: "from", y: "at", stroke: "black", insetTop: 4, insetBottom: 4 }),
        plotting.tickX(mark.intervals, { x: "to", y: "at", stroke: "black", insetTop: 4, insetBottom: 4 }),
      ];
    case "line": {
      const data = mark.points.map((point) => ({ x: moment(x, point.x), y: point.y }));
      const circled = mark.circles ? data.filter((_, i) => !mark.points[i]?.bare) : [];
      return [
        plotting.line(data, {
          x: "x",
          y: "y",
          stroke: "black",
          strokeWidth: 1.4,
          ...(mark.steps ? { curve: "step-after" } : {}),
          ...dashed(mark.look),
        }),
        ...(circled.length === 0 ? [] : [plotting.dot(circled, dotted("circle", true))]),
      ];
    }
    case "across": {
      const at = moment(mark.axis === "x" ? x : y, mark.at);
      const line = { stroke: "black", strokeWidth: 1.2, ...dashed(mark.look) };
      const words = { text: [mark.label], fill: "black", stroke: "white", strokeWidth: 3, paintOrder: "stroke" };
      return mark.axis === "x"
        ? [plotting.ruleX([at], line), plotting.text([at], { x: [at], frameAnchor: "top", dy: -17, ...words })]
        : [plotting.ruleY([at], line), plotting.text([at], { y: [at], frameAnchor: "right", textAnchor: "end", dy: -7, ...words })];
    }
    case "bars": {
      const look = { stroke: "black", fill: "#8a8a8a", fillOpacity: 0.35 };
      const labels = mark.bars.filter(({ label }) => label !== undefined);
      if (mark.along === "y")
        return [
          plotting.barX(mark.bars, { x: "value", y: "at", ...look }),
          ...(labels.length === 0
            ? []
            : [plotting.text(labels, { x: "value", y: "at", text: "label", textAnchor: "start", dx: 5, fill: "black" })]),
        ];
      const half = halfStep(mark.bars.map(({ at }) => Number(at)));
      const data = mark.bars.map((bar) => ({ ...bar, from: Number(bar.at) - half, to: Number(bar.at) + half }));
      return [plotting.rectY(data, { x1: "from", x2: "to", y: "value", ...look })];
    }
  }
}

/** Four tenths of the least distance between two bars. */
function halfStep(at: readonly number[]): number {
  const sorted = [...at].sort((a, b) => a - b);
  const steps = sorted.slice(1).map((one, i) => one - (sorted[i] ?? one));
  return 0.4 * Math.min(...steps.filter((step) => step > 0), steps.some((step) => step > 0) ? Number.POSITIVE_INFINITY : 1);
}
