import type { LineLook, PictureAxis, PictureMark, PictureView, PointShape } from "../picture/view.ts";
import type { BarsPicture, CurvePicture, FunnelPicture, IntervalsPicture, Label, Picture } from "../question.ts";
import { axisUnit } from "./cells.ts";
import { control, type Scaled } from "./control.ts";
import type { QualitySpeaking } from "./speaking.ts";

const looks: readonly LineLook[] = ["whole", "dashed", "dotted"];
const shapes: readonly PointShape[] = ["circle", "square", "triangle", "diamond"];
/** As many names as a picture holds one under the other; the table has them all. */
const MOST_NAMES = 24;

/** The axis on which a picture's values stand, and the values on it. */
function valueAxis({ axis }: Picture, { units, word }: QualitySpeaking): Scaled {
  if (axis.kind === "share") return { axis: { label: "", is: "figures", share: true }, of: drawnAt };
  const { per, sign } =
    axis.kind === "fixed"
      ? axisUnit(axis.quantity, units)
      : axis.kind === "money"
        ? { per: 100, sign: word("currency") }
        : { per: 1, sign: axis.kind === "minutes" ? "min" : "" };
  return {
    axis: { label: sign, is: "figures", ...(axis.kind === "count" ? { whole: true } : {}) },
    of: (value) => drawnAt(value / per),
  };
}

/** Five figures: a hundredth of what can be told apart on a page, in a third of the characters. */
const drawnAt = (value: number): number => Number(value.toPrecision(5));

/** Names one under the other; two that read the same are told apart by their count. */
function namesOf(labels: readonly Label[], { name }: QualitySpeaking): readonly string[] {
  const seen = new Map<string, number>();
  return labels.map((label) => {
    const text = name(label);
    const times = (seen.get(text) ?? 0) + 1;
    seen.set(text, times);
    return times === 1 ? text : `${text} (${times})`;
  });
}

const named = (names: readonly string[]): PictureAxis => ({ label: "", is: "names", names });

function intervals(picture: IntervalsPicture, value: Scaled, speaking: QualitySpeaking): Omit<PictureView, "title"> {
  const points = picture.points.slice(0, MOST_NAMES);
  const names = namesOf(
    points.map(({ label }) => label),
    speaking,
  );
  const at = (i: number): string => names[i] ?? "";
  const against: readonly PictureMark[] =
    picture.against === undefined
      ? []
      : [
          {
            is: "across",
            axis: "x",
            at: value.of(picture.against),
            look: "dashed",
            label: speaking.word(picture.againstIs === undefined ? "picture-together" : "picture-no-change"),
          },
        ];
  return {
    x: value.axis,
    y: named(names),
    marks: [
      ...against,
      { is: "intervals", intervals: points.map(({ low, high }, i) => ({ from: value.of(low), to: value.of(high), at: at(i) })) },
      { is: "points", shape: "circle", filled: true, points: points.map((point, i) => ({ x: value.of(point.value), y: at(i) })) },
    ],
    key: [],
  };
}

function curve(picture: CurvePicture, value: Scaled, { word, name }: QualitySpeaking): Omit<PictureView, "title"> {
  const steps = picture.shape === "steps";
  const lines = picture.lines.slice(0, shapes.length);
  const bands = lines.length === 1 ? lines : [];
  const band = (end: "low" | "high"): readonly PictureMark[] =>
    bands.map(({ points }) => ({
      is: "line",
      look: "dotted",
      steps,
      points: points.flatMap((point) => (point[end] === undefined ? [] : [{ x: point.x, y: value.of(point[end]) }])),
    }));
  return {
    x: { label: word(`axis.${picture.xAxis}`), is: "figures" },
    y: value.axis,
    marks: [
      ...lines.map(
        ({ points }, i): PictureMark => ({
          is: "line",
          look: looks[i % looks.length] ?? "whole",
          steps,
          points: points.map(({ x, y }) => ({ x, y: value.of(y) })),
        }),
      ),
      ...lines.flatMap(({ points }, i): PictureMark[] => {
        const last = points.at(-1);
        return lines.length < 2 || last === undefined
          ? []
          : [{ is: "points", shape: shapes[i] ?? "circle", filled: true, points: [{ x: last.x, y: value.of(last.y) }] }];
      }),
      ...band("low"),
      ...band("high"),
    ],
    key:
      lines.length < 2
        ? [
            ...lines.map(({ label }) => ({ sign: "whole", says: name(label) }) as const),
            ...(bands.some(({ points }) => points.some(({ low }) => low !== undefined))
              ? [{ sign: "dotted", says: word("picture-interval") } as const]
              : []),
          ]
        : lines.map(({ label }, i) => ({ sign: shapes[i] ?? "circle", filled: true, says: name(label) })),
  };
}

function funnel({ points, centre, limits }: FunnelPicture, value: Scaled, { word, name }: QualitySpeaking): Omit<PictureView, "title"> {
  const side = (end: "lower" | "upper"): PictureMark => ({
    is: "line",
    look: "dotted",
    points: limits.map((limit) => ({ x: limit.n, y: value.of(limit[end]) })),
  });
  return {
    x: { label: word("picture-out-of"), is: "figures", whole: true },
    y: value.axis,
    marks: [
      { is: "across", axis: "y", at: value.of(centre), look: "dashed", label: word("picture-together") },
      side("lower"),
      side("upper"),
      {
        is: "points",
        shape: "circle",
        filled: true,
        points: points.map(({ label, n, share }) => ({ x: n, y: value.of(share), ...(points.length > 12 ? {} : { label: name(label) }) })),
      },
    ],
    key: [{ sign: "dotted", says: word("picture-chance") }],
  };
}

function bars(picture: BarsPicture, value: Scaled, speaking: QualitySpeaking): Omit<PictureView, "title"> {
  const shown = picture.bars.slice(0, MOST_NAMES);
  const names = namesOf(
    shown.map(({ label }) => label),
    speaking,
  );
  const expected = shown.flatMap((bar, i) => (bar.expected === undefined ? [] : [{ x: value.of(bar.expected), y: names[i] ?? "" }]));
  return {
    x: value.axis,
    y: named(names),
    marks: [
      { is: "bars", along: "y", bars: shown.map((bar, i) => ({ at: names[i] ?? "", value: value.of(bar.value) })) },
      ...(expected.length === 0 ? [] : [{ is: "points", shape: "diamond", filled: false, points: expected } as const]),
    ],
    key: expected.length === 0 ? [] : [{ sign: "diamond", filled: false, says: speaking.word("picture-expected") }],
  };
}

/** A picture as it will be drawn; undefined where it would be empty. */
export function pictureView(picture: Picture, speaking: QualitySpeaking): PictureView | undefined {
  const heading = speaking.word(`picture.${picture.id}`);
  const title = picture.about === undefined ? heading : `${heading}: ${speaking.name(picture.about)}`;
  const value = valueAxis(picture, speaking);
  switch (picture.draws) {
    case "intervals":
      return picture.points.length === 0 ? undefined : { title, ...intervals(picture, value, speaking) };
    case "control chart":
      return picture.points.length === 0 ? undefined : { title, ...control(picture, value, speaking) };
    case "curve":
      return picture.lines.every(({ points }) => points.length === 0) ? undefined : { title, ...curve(picture, value, speaking) };
    case "funnel":
      return picture.points.length === 0 ? undefined : { title, ...funnel(picture, value, speaking) };
    case "bars":
      return picture.bars.length === 0 ? undefined : { title, ...bars(picture, value, speaking) };
  }
}
