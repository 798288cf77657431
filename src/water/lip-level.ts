import { faultIn, firstOrder, refused, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/**
 * A lip out of level: what the customer sees.
 *
 *   r = ((h + d/2) / (h - d/2))^1.5        d = 2 h (r^⅔ - 1) / (r^⅔ + 1)
 *
 *   h  head over the lip's middle, m (`head`)
 *   d  lip out of level, end to end, m (`outOfLevel`; either way alike)
 *   r  flow at the low end over flow at the high end, by length of lip (`ratio`)
 *
 * Range: d < 2 h; beyond it the high end runs dry. Source: Francis at both ends over one still water level; own.
 * Expected accuracy: the doubt of the head carries over; 1/8 in at 0.68 in head is about 32 %.
 */
export type LipFlow =
  | { readonly answer: "runs all along"; readonly ratio: Uncertain }
  /** `dryShare`: part of the lip from the high end that no water reaches. */
  | { readonly answer: "high end dry"; readonly dryShare: number };

/** Flow at the low end over flow at the high end. Refuses a head that is not above zero. */
export function lipFlowRatio(head: Uncertain, outOfLevel: Uncertain): Outcome<LipFlow> {
  const fault = faultIn("lip", { head: [head, "positive"], outOfLevel: [outOfLevel, "finite"] });
  if (fault) return refused(fault);
  const h = head.value;
  const half = Math.abs(outOfLevel.value) / 2;
  if (half >= h) return ok({ answer: "high end dry", dryShare: (half - h) / (2 * half) });
  const [low, high] = [h + half, h - half];
  const ratio = (low / high) ** 1.5;
  const sign = outOfLevel.value < 0 ? -1 : 1;
  const terms = [
    { times: 1.5 * ratio * (1 / low - 1 / high), of: head },
    { times: sign * 0.75 * ratio * (1 / low + 1 / high), of: outOfLevel },
  ];
  return ok({ answer: "runs all along", ratio: firstOrder(ratio, terms) });
}

/** End-to-end difference at which the flow ratio is just `ratio` (above 1), metres: a limit that comes from the design's flow. */
export function outOfLevelForRatio(head: Uncertain, ratio: number): Outcome<Uncertain> {
  const fault = faultIn("lip", { head: [head, "positive"], ratio: [ratio, "finite"], ratioAboveOne: [ratio - 1, "positive"] });
  if (fault) return refused(fault);
  const power = Math.cbrt(ratio * ratio);
  const perHead = (2 * (power - 1)) / (power + 1);
  return ok(firstOrder(head.value * perHead, [{ times: perHead, of: head }]));
}
