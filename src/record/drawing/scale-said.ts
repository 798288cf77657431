import type { DrawingScale, drawingScales } from "../../geometry/index.ts";
import type { DrawnShape } from "../model-drawn.ts";
import type { SayArithmetic } from "../say-arithmetic.ts";
import { at, line, wordsThrough } from "./strokes.ts";

export type Units = "inch" | "metric";

export const scalesFor = (units: Units): keyof typeof drawingScales => (units === "inch" ? "inches" : "metric");

/** 'Scale 1/2 in = 1 ft (1 : 24)' */
export function scaleSaid({ ratio, said }: DrawingScale, say: SayArithmetic): string {
  if (said === undefined) return say("scale.metric", { ratio: String(ratio) });
  return say("scale.inch", { inches: said.inches, feet: String(said.feet), ratio: String(Math.round(ratio * 10) / 10) });
}

const FOOT = 0.3048;
const LONGEST = 34;
const steps = [1, 2, 5, 10, 20, 50, 100, 200] as const;

/** A bar of a round length, half of it filled, so that a copy of any size can still be measured. */
export function scaleBar({ ratio }: DrawingScale, units: Units, x: number, y: number): readonly DrawnShape[] {
  const unit = units === "inch" ? FOOT : 1;
  const millimetres = (length: number): number => (length * unit * 1000) / ratio;
  const length = steps.findLast((step) => millimetres(step) <= LONGEST) ?? 1;
  const [half, end] = [x + millimetres(length) / 2, x + millimetres(length)];
  const box = (from: number, to: number) => [at(from, y), at(to, y), at(to, y + 1.2), at(from, y + 1.2), at(from, y)];
  return [
    line("outline", box(x, half), "ink"),
    line("outline", box(half, end), "paper"),
    wordsThrough(at(x, y - 1.7), "0", { anchor: "middle", size: 2 }),
    wordsThrough(at(end, y - 1.7), `${length} ${units === "inch" ? "ft" : "m"}`, { anchor: "middle", size: 2 }),
  ];
}
