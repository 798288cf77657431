import type { PictureAxis, PictureMark, PictureView } from "../picture/view.ts";
import type { ControlPicture } from "../question.ts";
import type { QualitySpeaking } from "./speaking.ts";

/** An axis of values, and where a value lies on it. */
export interface Scaled {
  readonly axis: PictureAxis;
  readonly of: (value: number) => number;
}

/** Words at a point or a line leave this share of all points free before the next: those between have none. */
const APART = 0.15;

/** The places that may have words, of places in their order. */
function worded(places: readonly number[], points: number): ReadonlySet<number> {
  const kept = new Set<number>();
  let last = Number.NEGATIVE_INFINITY;
  for (const place of places) {
    if (place - last < points * APART) continue;
    kept.add(place);
    last = place;
  }
  return kept;
}

/** Vertical lines among points that stand in their order: between the last before each and the first after it; what falls together is one. */
function marksAmong({ points, marks }: ControlPicture, { say }: QualitySpeaking): readonly PictureMark[] {
  const places = new Map(marks.map(({ at, says }) => [points.filter((point) => point.at < at).length + 0.5, say(says)] as const));
  const said = worded(
    [...places.keys()].sort((a, b) => a - b),
    points.length,
  );
  return [...places].map(([at, label]) => ({ is: "across", axis: "x", at, look: "dotted", label: said.has(at) ? label : "" }));
}

/** A line without the points that lie straight between two of the same height: limits that never change are two points, however many jobs. */
const straightened = (points: readonly { readonly x: number; readonly y: number }[]) =>
  points.filter(({ y }, i) => points[i - 1]?.y !== y || points[i + 1]?.y !== y);

/** Values in their order with centre line and limits; what breaks a rule is a hollow diamond. */
export function control(picture: ControlPicture, value: Scaled, speaking: QualitySpeaking): Omit<PictureView, "title"> {
  const { word, name } = speaking;
  const { points } = picture;
  const line = (of: (point: (typeof points)[number]) => number | undefined) =>
    straightened(
      points.flatMap((point) => {
        const y = of(point);
        return y === undefined ? [] : [{ x: point.x, y: value.of(y) }];
      }),
    );
  const lower = line((point) => point.lower);
  const out = points.filter(({ breaks }) => breaks !== undefined);
  const said = worded(
    out.map(({ x }) => x),
    points.length,
  );
  const months = points.every(({ label }) => label.of === "month");
  return {
    x: months
      ? { label: word("column.month"), is: "figures", whole: true, places: points.map(({ label }) => name(label)) }
      : { label: word("picture-order"), is: "figures", whole: true },
    y: value.axis,
    marks: [
      ...marksAmong(picture, speaking),
      { is: "line", look: "dashed", points: line(({ centre }) => centre) },
      { is: "line", look: "dotted", points: line(({ upper }) => upper) },
      ...(lower.length === 0 ? [] : [{ is: "line", look: "dotted", points: lower } as const]),
      {
        is: "line",
        look: "whole",
        circles: true,
        points: points.map((point) => ({ x: point.x, y: value.of(point.value), ...(point.breaks === undefined ? {} : { bare: true }) })),
      },
      {
        is: "points",
        shape: "diamond",
        filled: false,
        points: out.map((point) => ({ x: point.x, y: value.of(point.value), ...(said.has(point.x) ? { label: name(point.label) } : {}) })),
      },
    ],
    key: [
      { sign: "dashed", says: word("picture-centre") },
      { sign: "dotted", says: word("picture-limits") },
      ...(out.length === 0 ? [] : [{ sign: "diamond", filled: false, says: word("picture-breaks") } as const]),
    ],
  };
}
