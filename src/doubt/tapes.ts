import { feet, inches } from "../units/index.ts";

/** Accuracy classes of OIML R 35 (the same in 2004/22/EC MI-008): permitted error a + b L, in mm and mm per metre. */
const tapeClasses = {
  I: { a: 0.1, b: 0.1 },
  II: { a: 0.3, b: 0.2 },
  III: { a: 0.6, b: 0.4 },
} as const;
export type TapeClass = keyof typeof tapeClasses;

/**
 * Permitted error of a tape at `length` metres, as a half-width in metres. L is rounded up to the next whole metre.
 * The length counts without its sign; less than a metre counts as one.
 */
export function tapePermittedError(length: number, tapeClass: TapeClass = "II"): number {
  const { a, b } = tapeClasses[tapeClass];
  // A nanometre of grace: 5 m that came through a conversion must not count as 6.
  const wholeMetres = Math.max(1, Math.ceil(Math.abs(length) - 1e-9));
  return (a + b * wholeMetres) / 1000;
}

/** NIST Handbook 44 section 5.52, metal tapes, maintenance and acceptance alike: up to this length, this half-width (metres). */
export const handbook44Tapes = [
  { upTo: feet(6), halfWidth: inches(1 / 32) },
  { upTo: feet(30), halfWidth: inches(1 / 16) },
  { upTo: feet(55), halfWidth: inches(1 / 8) },
  { upTo: feet(80), halfWidth: inches(3 / 16) },
  { upTo: feet(100), halfWidth: inches(1 / 4) },
] as const;
