import { type LevelLine, type NonEmpty, readingUncertainty, subtract, type Uncertain } from "#core/doubt/index.ts";
import type { Place } from "#core/geometry/index.ts";
import { inches } from "#core/units/index.ts";

export interface RimTaken {
  /** Inches below the line, corners in order around from the one at the origin. */
  readonly rods: NonEmpty<number>;
  readonly line?: LevelLine;
  /** Inches, half-width. */
  readonly placing?: number;
  /** Inches below the line at the height mark. */
  readonly mark?: number;
}

export const side = inches(45);
const corners = [
  [0, 0],
  [side, 0],
  [side, side],
  [0, side],
] as const;

export function rod(
  reading: string,
  value: number,
  { line = { kind: "laser", receiver: "fine" }, placing = 1 / 16 }: Partial<RimTaken> = {},
): Uncertain {
  const taken = readingUncertainty({
    reading,
    setUp: "s",
    value: inches(value),
    resolution: inches(1 / 16),
    placingHalfWidth: inches(placing),
    line,
  });
  if (!taken.ok) throw new Error(taken.refusal.code);
  return taken.value;
}

/** A rim 45 in square (common practice for a buried basin), each height over the height mark. */
export function rim(taken: RimTaken): Place[] {
  const mark = rod("mark", taken.mark ?? 40, taken);
  return taken.rods.map((value, i) => {
    const [x, y] = corners[i] ?? [0, 0];
    return { x, y, height: subtract(mark, rod(`r${i}`, value, taken)) };
  });
}
