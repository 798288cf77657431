import { weakestEdges } from "./edges.ts";
import { type Exposure, exposure, sharpness } from "./grey.ts";

export interface GreyMeasures {
  /** Variance of the Laplacian in thousandths, an integer. */
  readonly sharpness: number;
  /** `weakestEdges` in thousandths, an integer. */
  readonly edges: number;
  readonly exposure: Exposure;
}

/** The measures as the integers that are stored. */
export const measureGrey = (grey: Uint8Array, width: number, height: number): GreyMeasures => ({
  sharpness: Math.round(sharpness(grey, width, height) * 1000),
  edges: Math.round(weakestEdges(grey, width, height) * 1000),
  exposure: exposure(grey),
});
