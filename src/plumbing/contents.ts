import { firstOrder, subtract, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";

/**
 * Water in a full pipe, cubic metres: V = π/4 d² L; in trade units 0.0408 d² gallons a foot (d in inches; exactly 0.0407999).
 * `bore` and `length` in metres, the pipe's own length, not the equivalent one. Source: the definition; factor SEEN in a chart.
 */
export function pipeContents(bore: Uncertain, length: Uncertain): Outcome<Uncertain> {
  const bad = unfit("contents", "positive", { bore }) ?? unfit("contents", "not negative", { length });
  if (bad) return bad;
  const area = (Math.PI * bore.value * bore.value) / 4;
  return ok(
    firstOrder(area * length.value, [
      { times: area, of: length },
      { times: (2 * area * length.value) / bore.value, of: bore },
    ]),
  );
}

export interface DrainingLine {
  /** Metres. */
  readonly bore: Uncertain;
  /** From the pump to the outlet. */
  readonly length: Uncertain;
  /** The part of it that lies below the basin's water at rest: it stays full. */
  readonly belowWater: Uncertain;
  /** From the pump to the check valve, where there is one. */
  readonly toCheckValve?: Uncertain;
}

export interface DrainBack {
  /** All that the line holds, cubic metres. */
  readonly contents: Uncertain;
  /** What runs back into the basin when the pump stops and nothing holds it: everything above the basin's water. */
  readonly withoutCheckValve: Uncertain;
  /** What still runs back below the valve; what stands above it stays. Absent where no valve was named. */
  readonly withCheckValve?: Uncertain;
  /** What the valve keeps in the line, and frost finds there. */
  readonly kept?: Uncertain;
}

const notLonger = (name: string, part: Uncertain, whole: Uncertain) =>
  part.value > whole.value ? refuse("pipe-part-longer", `drainBack/${name}`) : undefined;

/** The part of the line between the basin's water and the valve; none where the valve sits under water. */
function betweenWaterAndValve(toValve: Uncertain, belowWater: Uncertain): Uncertain {
  const between = subtract(toValve, belowWater);
  return between.value > 0 ? between : { value: 0, parts: new Map() };
}

/**
 * What drains back through the pump when it stops, with and without a check valve, cubic metres. The pool behind the lip is not in
 * it: it follows through the pipe where the pipe ends under its surface, until air gets in. Refuses a part longer than the whole.
 */
export function drainBack(line: DrainingLine): Outcome<DrainBack> {
  const { bore, length, belowWater, toCheckValve } = line;
  const bad =
    unfit("drainBack", "not negative", { belowWater, ...(toCheckValve && { toCheckValve }) }) ??
    unfit("drainBack", "positive", { length }) ??
    notLonger("belowWater", belowWater, length) ??
    (toCheckValve && notLonger("toCheckValve", toCheckValve, length));
  if (bad) return bad;
  const contents = pipeContents(bore, length);
  if (!contents.ok) return contents;
  const free = pipeContents(bore, subtract(length, belowWater));
  if (!free.ok) return free;
  const both = { contents: contents.value, withoutCheckValve: free.value };
  if (toCheckValve === undefined) return ok(both);
  const below = pipeContents(bore, betweenWaterAndValve(toCheckValve, belowWater));
  if (!below.ok) return below;
  return ok({ ...both, withCheckValve: below.value, kept: subtract(free.value, below.value) });
}
