import { feet } from "../units/index.ts";

/**
 * Kindsvater-Carter, C_e = C1 h/p + C2 in ft^½/s by L/B, the lip's length over the width of the channel before it. EPA SWMM
 * Reference Manual vol. II table 6-2, which cites USBR 2001 (seen, quoted). `kb` in metres from memory of the curve in the USBR
 * Water Measurement Manual, fig. 7-4: its digits were not seen, and 0.5, 0.7, 0.9 are
 * drawn between the others.
 */
export const kindsvaterCarterTable = [
  { lengthOverWidth: 0.2, c1: -0.0087, c2: 3.152, kb: 0.0024 },
  { lengthOverWidth: 0.4, c1: 0.0317, c2: 3.164, kb: 0.0027 },
  { lengthOverWidth: 0.5, c1: 0.0612, c2: 3.173, kb: 0.003 },
  { lengthOverWidth: 0.6, c1: 0.0995, c2: 3.178, kb: 0.0036 },
  { lengthOverWidth: 0.7, c1: 0.1602, c2: 3.182, kb: 0.0041 },
  { lengthOverWidth: 0.8, c1: 0.2376, c2: 3.189, kb: 0.0042 },
  { lengthOverWidth: 0.9, c1: 0.3447, c2: 3.205, kb: 0.0033 },
  { lengthOverWidth: 1.0, c1: 0.4, c2: 3.22, kb: -0.0009 },
] as const;

export interface KindsvaterCarter {
  readonly c1: number;
  readonly c2: number;
  readonly kb: number;
}

/** Straight between the table's rows. L/B 0.2 to 1; the caller has looked. */
export function kindsvaterCarterAt(lengthOverWidth: number): KindsvaterCarter {
  const above = kindsvaterCarterTable.findIndex((row) => row.lengthOverWidth >= lengthOverWidth);
  const [low, high] = [kindsvaterCarterTable[Math.max(0, above - 1)], kindsvaterCarterTable[above]];
  if (low === undefined || high === undefined) return { c1: Number.NaN, c2: Number.NaN, kb: Number.NaN };
  const span = high.lengthOverWidth - low.lengthOverWidth;
  const t = span === 0 ? 0 : (lengthOverWidth - low.lengthOverWidth) / span;
  return { c1: low.c1 + t * (high.c1 - low.c1), c2: low.c2 + t * (high.c2 - low.c2), kb: low.kb + t * (high.kb - low.kb) };
}

/**
 * Broad-crested coefficient in ft^½/s, Q = C L h^1.5, by head and by the lip's size along the flow. EPA SWMM Reference Manual
 * vol. II table 6-3, after Brater and King (seen, quoted): the two rows of heads that come near a landscape lip.
 */
export const broadCrestedTable = {
  breadths: [0.5, 0.75, 1, 1.5, 2, 3].map(feet),
  rows: [
    { head: feet(0.2), coefficients: [2.8, 2.75, 2.69, 2.62, 2.54, 2.44] },
    { head: feet(0.4), coefficients: [2.92, 2.8, 2.72, 2.64, 2.61, 2.58] },
  ],
} as const;
