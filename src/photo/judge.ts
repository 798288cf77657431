import type { Exposure } from "./grey.ts";

/** Where a picture stops showing anything. All own, from few photographs (`tests/unit/photo/usable` prints them): to be set on the company's own pictures. */
export interface PhotoLimits {
  /** Thousandths of the Laplacian's variance, at a long edge of `GREY_LONG_EDGE`. */
  readonly sharpnessAtLeast: number;
  /** Thousandths of `weakestEdges`, at the same long edge. */
  readonly edgesAtLeast: number;
  /** Shares of clipped pixels in parts per million. */
  readonly darkAtMost: number;
  readonly brightAtMost: number;
  /** Pixels of the upright picture's long edge. */
  readonly longEdgeAtLeast: number;
}

export const ownPhotoLimits: PhotoLimits = {
  sharpnessAtLeast: 3_000,
  edgesAtLeast: 2_500,
  darkAtMost: 900_000,
  brightAtMost: 900_000,
  longEdgeAtLeast: 320,
};

export type PhotoReason = "not-decoded" | "too-small" | "too-dark" | "too-bright" | "blurred";

export type PhotoJudgement = { readonly verdict: "readable" } | { readonly verdict: "unreadable"; readonly reason: PhotoReason };

/** The part of the photo facts that is judged; the phone makes it from its own grey pixels. */
export interface JudgedFacts {
  readonly width: number | null;
  readonly height: number | null;
  readonly sharpness: number | null;
  /** Absent in what was read before it was measured. */
  readonly edges?: number | null;
  readonly exposure: Exposure | null;
}

/**
 * Whether a picture can show anything at all; never whether it shows what was asked for, which is for a person. Dark and
 * bright come before blurred, because a black picture has no edges either and the darkness is what can be put right.
 */
export function judgePhoto(facts: JudgedFacts, limits: PhotoLimits = ownPhotoLimits): PhotoJudgement {
  const { width, height, sharpness, edges, exposure } = facts;
  if (width === null || height === null || sharpness === null || exposure === null) return unreadable("not-decoded");
  if (Math.max(width, height) < limits.longEdgeAtLeast) return unreadable("too-small");
  if (exposure.dark > limits.darkAtMost) return unreadable("too-dark");
  if (exposure.bright > limits.brightAtMost) return unreadable("too-bright");
  if (sharpness < limits.sharpnessAtLeast || (edges ?? limits.edgesAtLeast) < limits.edgesAtLeast) return unreadable("blurred");
  return { verdict: "readable" };
}

const unreadable = (reason: PhotoReason): PhotoJudgement => ({ verdict: "unreadable", reason });
