import { expanded, type Uncertain } from "../../doubt/index.ts";
import type { HeadOverFlow, LineCurves } from "../../job/index.ts";
import type { Refusal } from "../../outcome/index.ts";
import { gallonsPerMinute, litresPerMinute } from "../../plumbing/index.ts";
import { toInteger } from "../../tolerance/index.ts";
import { feet, fixedPerSi } from "../../units/index.ts";
import type { DrawingView, DrawnShape, Stroke } from "../model-drawn.ts";
import type { DesignSayer } from "../say-design.ts";
import type { SayDesignPage } from "../say-design-page.ts";
import { type Axis, axisFor, type Plot, plotOn } from "./axes.ts";
import { at, circle, line, wordsThrough } from "./strokes.ts";

export interface CurveSaying {
  readonly say: SayDesignPage;
  readonly sayer: DesignSayer;
  readonly refusal: (refusal: Refusal) => string;
  readonly units: "inch" | "metric";
}

const WIDTH = 84;
const frame = { left: 9.5, right: 82, top: 5, bottom: 38 } as const;
/** Room above the highest head that must be seen. */
const ABOVE = 1.06;
const LEGEND_STEP = 3.5;

function axesOf({ pump, system, wanted, works }: LineCurves, { say, units }: CurveSaying): { readonly flow: Axis; readonly head: Axis } {
  const inch = units === "inch";
  const flows = [system?.curve.at(-1)?.flow, pump?.card.at(-1)?.flow, wanted?.value, ...works.map(({ flow }) => flow.value)];
  const heads = [...(pump?.card ?? []).map(({ head }) => head), ...works.map(({ head }) => head.value)];
  // without a pump nothing bounds the heads but the system's own
  const least = pump === undefined ? (system?.curve.at(-1)?.head ?? 0) : (system?.staticHead.value ?? 0);
  return {
    flow: axisFor(
      Math.max(...flows.map((one) => one ?? 0)),
      inch ? gallonsPerMinute(1) : litresPerMinute(1),
      say("curve.flow", { unit: inch ? "gpm" : "L/min" }),
    ),
    head: axisFor(ABOVE * Math.max(...heads, least), inch ? feet(1) : 1, say("curve.head", { unit: inch ? "ft" : "m" })),
  };
}

/** As much of a rising curve as lies below `most`, its last point on the edge. */
function below(curve: HeadOverFlow, most: number): HeadOverFlow {
  const over = curve.findIndex(({ head }) => head > most);
  const [last, next] = [curve[over - 1], curve[over]];
  if (over < 0 || next === undefined) return curve;
  if (last === undefined) return [];
  const share = (most - last.head) / (next.head - last.head);
  return [...curve.slice(0, over), { flow: last.flow + share * (next.flow - last.flow), head: most }];
}

const drawn = (stroke: Stroke, curve: HeadOverFlow, { place }: Plot): readonly DrawnShape[] =>
  curve.length < 2
    ? []
    : [
        line(
          stroke,
          curve.map(({ flow, head }) => place(flow, head)),
        ),
      ];

/** A point with the bars of its doubt, and hair lines to both axes. */
function workingAt({ flow, head }: LineCurves["works"][number], plot: Plot, ends: { flow: number; head: number }): readonly DrawnShape[] {
  const bar = (value: Uncertain, most: number): readonly [number, number] => [
    Math.max(0, value.value - expanded(value)),
    Math.min(most, value.value + expanded(value)),
  ];
  const [flows, heads] = [bar(flow, ends.flow), bar(head, ends.head)];
  return [
    line("dimension", [plot.place(flow.value, 0), plot.place(flow.value, head.value), plot.place(0, head.value)]),
    line("outline", [plot.place(flows[0], head.value), plot.place(flows[1], head.value)]),
    line("outline", [plot.place(flow.value, heads[0]), plot.place(flow.value, heads[1])]),
    circle("outline", plot.place(flow.value, head.value), 0.95, "ink"),
  ];
}

type Sample = (x: number, y: number) => readonly DrawnShape[];
const stretch =
  (stroke: Stroke): Sample =>
  (x, y) => [line(stroke, [at(x, y), at(x + 8, y)])];
const withRing: Sample = (x, y) => [...stretch("ground")(x, y), circle("outline", at(x + 4, y), 0.75, "paper")];
const dot: Sample = (x, y) => [
  line("outline", [at(x + 2, y), at(x + 6, y)]),
  line("outline", [at(x + 4, y - 1.3), at(x + 4, y + 1.3)]),
  circle("outline", at(x + 4, y), 0.95, "ink"),
];

interface Said {
  readonly sample: Sample;
  readonly text: string;
}

function legendOf({ pump, system, advised, works, wanted }: LineCurves, { say, sayer }: CurveSaying): readonly Said[] {
  const text = (kind: "flow" | "length", of: Uncertain): string => {
    const perSi = fixedPerSi(kind);
    return sayer.withDoubt(kind, toInteger(of.value * perSi), toInteger(expanded(of) * perSi));
  };
  return [
    ...(pump ? [{ sample: withRing, text: say("curve.pump") }] : []),
    ...(system ? [{ sample: stretch("buried"), text: say("curve.system") }] : []),
    ...(advised ? [{ sample: stretch("advised"), text: say("curve.advised", { size: advised.size }) }] : []),
    ...(wanted ? [{ sample: stretch("wish"), text: say("curve.wanted", { flow: text("flow", wanted) }) }] : []),
    ...works.map(({ flow, head }) => ({
      sample: dot,
      text: say("curve.works", { flow: text("flow", flow), head: text("length", head) }),
    })),
  ];
}

const percent = (share: number): string => String(Math.round(share * 100));

/**
 * The pump's curve through its card's points, what it works against, and where the two meet, with its doubt; nothing of it rests on
 * colour. No drawing where neither curve is known. `notes` names what is missing.
 */
export function curveDrawing(
  curves: LineCurves,
  saying: CurveSaying,
): { readonly drawing?: DrawingView; readonly notes: readonly string[] } {
  const { pump, system, advised, works, wanted, outcome, needs, refusal } = curves;
  const { say, sayer } = saying;
  const waits = needs.map(sayer.figure).join("; ");
  const notes = [
    ...(needs.length === 0 ? [] : [say(pump || system ? "curve.waits" : "curve.none", { needs: waits })]),
    ...(refusal === undefined ? [] : [saying.refusal(refusal)]),
  ];
  if (pump === undefined && system === undefined) return { notes };
  const axes = axesOf(curves, saying);
  const plot = plotOn(frame, axes.flow, axes.head);
  const ends = { flow: axes.flow.end * axes.flow.perUnit, head: axes.head.end * axes.head.perUnit };
  const legend = legendOf(curves, saying);
  const stretches = pump?.stretches ?? [];
  const joined = stretches.flat();
  const legendTop = frame.bottom + 10;
  return {
    notes,
    drawing: {
      width: WIDTH,
      height: Math.ceil(legendTop + (legend.length - 1) * LEGEND_STEP + 2),
      title: say("curve.title"),
      says: say("curve.says", { figures: legend.map(({ text }) => text).join("; ") }),
      scale: [
        ...(outcome === undefined || outcome === "one point" ? [] : [`${sayer.answer(outcome)}.`]),
        ...(pump ? [say("curve.tolerance", { head: percent(pump.tolerance.head), flow: percent(pump.tolerance.flow) })] : []),
      ].join(" "),
      shapes: [
        ...plot.shapes,
        ...(wanted ? [line("wish", [plot.place(wanted.value, 0), plot.place(wanted.value, ends.head)])] : []),
        ...(system ? drawn("buried", below(system.curve, ends.head), plot) : []),
        ...(advised ? drawn("advised", below(advised.curve, ends.head), plot) : []),
        ...drawn("ground", joined, plot),
        ...(pump?.card ?? []).map(({ flow, head }) => circle("outline", plot.place(flow, head), 0.75, "paper")),
        ...works.flatMap((one) => workingAt(one, plot, ends)),
        ...legend.flatMap(({ sample, text }, i) => {
          const y = legendTop + i * LEGEND_STEP;
          return [...sample(2, y), wordsThrough(at(12, y), text, { size: 2.1 })];
        }),
      ],
    },
  };
}
