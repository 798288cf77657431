import type { DrawnShape, PaperPoint } from "../model-drawn.ts";
import { at, line, words, wordsThrough } from "./strokes.ts";

/** One axis of a drawing: from nothing to its last mark. */
export interface Axis {
  /** In the unit that is printed. */
  readonly step: number;
  readonly end: number;
  /** SI per printed unit. */
  readonly perUnit: number;
  readonly label: string;
}

const MOST_MARKS = 8;

/** An axis that holds `most` (SI), its marks 1, 2 or 5 times a power of ten apart, at most eight of them. */
export function axisFor(most: number, perUnit: number, label: string): Axis {
  const span = most / perUnit;
  const power = 10 ** Math.floor(Math.log10(span / MOST_MARKS));
  const step = ([1, 2, 5, 10].find((times) => span <= MOST_MARKS * times * power) ?? 10) * power;
  return { step, end: Math.ceil(span / step - 1e-9) * step, perUnit, label };
}

/** Where on the paper the axes lie, millimetres. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Plot {
  /** SI along and up, to paper. */
  readonly place: (along: number, up: number) => PaperPoint;
  readonly shapes: readonly DrawnShape[];
}

const SIZE = 2;

/** As the mark is said: no more digits than its step has. */
const marked = (value: number, step: number): string => value.toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));

const marksOf = ({ step, end }: Axis): readonly number[] => Array.from({ length: Math.round(end / step) + 1 }, (_, i) => i * step);

/** A frame with its grid, marks and labels. */
export function plotOn(frame: Frame, along: Axis, up: Axis): Plot {
  const { left, right, top, bottom } = frame;
  const x = (value: number): number => left + ((right - left) * value) / (along.end * along.perUnit);
  const y = (value: number): number => bottom - ((bottom - top) * value) / (up.end * up.perUnit);
  const columns = marksOf(along).map((value) => ({ at: x(value * along.perUnit), text: marked(value, along.step) }));
  const rows = marksOf(up).map((value) => ({ at: y(value * up.perUnit), text: marked(value, up.step) }));
  return {
    place: (flow, head) => at(x(flow), y(head)),
    shapes: [
      ...columns.map((one) => line("grid", [at(one.at, top), at(one.at, bottom)])),
      ...rows.map((one) => line("grid", [at(left, one.at), at(right, one.at)])),
      line("outline", [at(left, top), at(left, bottom), at(right, bottom)]),
      ...columns.map((one) => words(at(one.at, bottom + 3), one.text, { anchor: "middle", size: SIZE })),
      ...rows.map((one) => wordsThrough(at(left - 1.2, one.at), one.text, { anchor: "end", size: SIZE })),
      words(at(right, bottom + 6), along.label, { anchor: "end", size: SIZE }),
      words(at(left - 8, top - 2), up.label, { size: SIZE }),
    ],
  };
}
