import { unfit } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { inches, metres, toInches } from "../units/index.ts";

/** Nominal sizes as pipe and fittings are sold by, smallest first. A name, not a measure: no part of a 2 in pipe is 2 in wide. */
export const pipeSizes = ["1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"] as const;
export type PipeSize = (typeof pipeSizes)[number];

/** The nominal size as a number of inches, for tables that give sizes from and to. */
export const nominalInches: Readonly<Record<PipeSize, number>> = {
  "1/2": 0.5,
  "3/4": 0.75,
  "1": 1,
  "1-1/4": 1.25,
  "1-1/2": 1.5,
  "2": 2,
  "2-1/2": 2.5,
  "3": 3,
  "4": 4,
};

/** Half of a tenth of a millimetre: what is left when 1-1/2 in was kept as whole micrometres or typed as 38.1 mm. */
const SAME_WITHIN = 5e-5;

/** The pipe size that a design figure of kind length names, metres (0.0381 is `1-1/2`). Refuses what is no size of the list. */
export function pipeSizeOf(nominal: number): Outcome<PipeSize> {
  const bad = unfit("pipe", "positive", { size: nominal });
  if (bad) return bad;
  const size = pipeSizes.find((name) => Math.abs(inches(nominalInches[name]) - nominal) <= SAME_WITHIN);
  return size === undefined ? refuse("pipe-size-unknown", "pipe/size", { found: toInches(metres(nominal)).toFixed(3) }) : ok(size);
}

/** The next larger size; undefined for the largest. */
export const nextPipeSize = (size: PipeSize): PipeSize | undefined => pipeSizes[pipeSizes.indexOf(size) + 1];
