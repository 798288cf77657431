import { certain, rectangular, type Uncertain, unfit, withSource } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/**
 * Hazen-Williams C, without unit. For rigid PVC the published design figure is 150 (range 150 to 160, design 150; others print 145
 * and 140). For flexible pipe no published C was found: the cautious end of what is commonly said, from memory. A ribbed bore does
 * not follow Hazen-Williams at all; its C is a stand-in with a wide doubt, and the pipe's own paper goes before it.
 */
export const hazenWilliamsCoefficients = {
  "rigid PVC": {
    design: 150,
    halfWidth: 10,
    source: "C-factor table for PE and PVC pipe, design 150 (seen, quoted); half-width own: others print 140 and 145",
  },
  "flexible PVC, smooth bore": { design: 140, halfWidth: 10, source: "common practice 140 to 150, no source, from memory; half-width own" },
  "flexible, ribbed bore": { design: 100, halfWidth: 20, source: "common practice 100 to 120, no source, from memory; half-width own" },
} as const;
export type PipeLining = keyof typeof hazenWilliamsCoefficients;

/** C of a kind of pipe, with its doubt; `typed` from the pipe's own paper takes the place of the default. */
export function pipeCoefficient(lining: PipeLining, typed?: number): Outcome<Uncertain> {
  const { design, halfWidth } = hazenWilliamsCoefficients[lining];
  const value = typed ?? design;
  const bad = unfit("pipe", "positive", { coefficient: value });
  return bad ?? ok(withSource(certain(value), `coefficient:${lining}`, rectangular(halfWidth)));
}
