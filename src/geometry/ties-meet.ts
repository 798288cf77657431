import { combine, total, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { type Mark, planDistance, planVector, type Vector } from "./ties-plan.ts";

/** A mark with its tie. */
export interface Tied {
  readonly mark: Mark;
  readonly distance: Uncertain;
}

/** Where two distances meet: two mirror places, or by how much they miss each other, metres. */
export type Meeting =
  | { readonly kind: "meet"; readonly left: Vector; readonly right: Vector /** Of the crossing angle. */; readonly sine: number }
  | { readonly kind: "miss"; readonly miss: Uncertain };

/** Rounding of the floats must not part two distances that just meet. Metres. */
const FLOAT_DUST = 1e-9;

/** Of the distance of the marks and the two ties, one longer than the other two together. */
const signsOfMiss = [
  [1, -1, -1],
  [-1, 1, -1],
  [-1, -1, 1],
] as const;

/**
 * Two circles about two marks. Too short together: the miss is the gap between them. One far longer: the gap that the shorter
 * leaves to it. The half chord by Heron's product, which loses nothing when the two only just meet.
 */
export function meetingOf(first: Tied, second: Tied): Outcome<Meeting> {
  const between = planDistance(first.mark, second.mark);
  if (!between.ok) return between;
  const three = [between.value, first.distance, second.distance] as const;
  const [d, r, s] = [three[0].value, three[1].value, three[2].value];
  const missed = signsOfMiss.find(([a, b, c]) => total([a * d, b * r, c * s]) > FLOAT_DUST);
  if (missed) return ok({ kind: "miss", miss: combine(three.map((of, i) => ({ times: missed[i] ?? 0, of }))) });
  const chord = Math.sqrt(Math.max(0, (r + s - d) * (r + s + d) * (d - r + s) * (d + r - s))) / (2 * d);
  const along = (d + ((r - s) * (r + s)) / d) / 2;
  const [a, b] = [planVector(first.mark), planVector(second.mark)];
  const unit = { x: (b.x - a.x) / d, y: (b.y - a.y) / d };
  const at = (h: number): Vector => ({ x: a.x + along * unit.x - h * unit.y, y: a.y + along * unit.y + h * unit.x });
  return ok({ kind: "meet", left: at(chord), right: at(-chord), sine: (d * chord) / (r * s) });
}
