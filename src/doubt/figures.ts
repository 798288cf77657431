import { feet, inches } from "../units/index.ts";

/**
 * Half-widths that hold until the company has a study of its own. All are our own values: nobody publishes what a rod on a
 * wiped rim is worth. A study replaces the whole object.
 */
export interface DoubtFigures {
  /** Metres of height per metre of distance. */
  readonly laserSlope: number;
  readonly stringSlope: number;
  readonly spiritLevelSlope: number;
  /** Metres. */
  readonly receiver: { readonly fine: number; readonly coarse: number };
  /** Height of the line of one set-up, metres. It cancels in every difference within the set-up. */
  readonly lineHeight: number;
  /** Distance from instrument to place where none was typed, metres. */
  readonly distance: number;
  /** Largest difference between the first and the last reading of the height mark, metres. */
  readonly closing: { readonly fine: number; readonly coarse: number };
}

export const ownFigures: DoubtFigures = {
  laserSlope: inches(1 / 16) / feet(100),
  stringSlope: inches(1 / 4) / feet(10),
  spiritLevelSlope: 0.0005,
  receiver: { fine: inches(1 / 16), coarse: inches(1 / 8) },
  lineHeight: inches(1 / 8),
  distance: feet(50),
  closing: { fine: inches(3 / 16), coarse: inches(1 / 4) },
};

export type Receiver = keyof DoubtFigures["receiver"];

/** What the tape or rod rests on, and the half-width in metres that it brings (own). `none`: shims under a level. */
export const placingHalfWidths = {
  none: inches(0),
  "hard edge": inches(1 / 16),
  "wiped rim": inches(1 / 16),
  "still water": inches(1 / 16),
  "liner edge": inches(1 / 4),
  "running water": inches(1 / 4),
  turf: inches(1 / 2),
  gravel: inches(1 / 2),
} as const;
export type Placing = keyof typeof placingHalfWidths;
