import type { Figures, RefusalCode } from "../outcome/index.ts";
import type { Exposure } from "./grey.ts";
import type { Likeness } from "./likeness.ts";

/** What a photo's first bytes say it is. */
export type PhotoType = "image/jpeg" | "image/png" | "image/webp" | "image/heic" | "image/avif" | "image/gif";

/** When the camera says the picture was taken: a wall clock, never an instant made with some machine's zone. */
export interface Taken {
  /** `2026-05-04T10:22:31`, the camera's own wall clock. */
  readonly text: string;
  /** `+hh:mm` or `-hh:mm`; absent when the zone is unknown. */
  readonly offset?: string;
  /** The tag of the offset, or the difference to the satellites' time. */
  readonly offsetFrom?: "tag" | "satellite";
  /** Which date it is: of the exposure, or of the digitising. */
  readonly source: "original" | "digitized";
}

/** Degrees in 1e-7, accuracy in millimetres: integers. */
export interface Position {
  readonly latitude: number;
  readonly longitude: number;
  readonly accuracy?: number;
}

/** What was found wanting in the camera's own notes. Each says why something is absent or was put right. */
export type PhotoNote =
  | "metadata-missing"
  | "metadata-broken"
  | "metadata-cut-off"
  | "time-missing"
  | "time-zeros"
  | "time-impossible"
  | "offset-missing"
  | "offset-not-understood"
  | "satellite-date-missing"
  | "position-missing"
  | "position-withheld"
  | "position-zero"
  | "position-broken"
  | "position-unsigned"
  | "orientation-out-of-range";

export interface Rendition {
  /** `column`: as wide as a column of a printed record. Absent in what was read before it was made. */
  readonly name: "screen" | "print" | "column";
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
  readonly sha256: string;
}

/** Why no picture could be made of the bytes. */
export interface Unreadable {
  readonly code: RefusalCode;
  readonly figures: Figures;
  /** The decoder's own words in one line, for the office; empty where no decoder was asked. */
  readonly says: string;
}

type Corner = readonly [x: number, y: number];

/** A code of a card that stands in the picture, not yet compared with any job; corners to the whole pixel of the upright picture. */
export interface CardCodeSeen {
  readonly text: string;
  /** Code upright, from its upper left corner clockwise. */
  readonly corners: readonly [Corner, Corner, Corner, Corner];
}

/** What the machine reads from a photo's bytes: the fact 'picture read by the machine'. Text and integers only. */
export interface PhotoFacts {
  /** SHA-256 of the original bytes, hex. */
  readonly sha: string;
  readonly bytes: number;
  readonly type: PhotoType | null;
  /** Pixels when upright; null where the header could not be read. */
  readonly width: number | null;
  readonly height: number | null;
  /** Orientation 1…8 by which the pixels were turned upright (1 where the container's own turn was used). */
  readonly orientation: number;
  readonly taken: Taken | null;
  /** The satellites' time, `2013-02-07T00:00:02Z`, where the camera kept it. */
  readonly satelliteTime: string | null;
  readonly position: Position | null;
  readonly notes: readonly PhotoNote[];
  /** Thousandths of the Laplacian's variance; null where unreadable. */
  readonly sharpness: number | null;
  /** Thousandths of the edges' strength in their weakest direction; null where unreadable, absent in what was read before it was measured. */
  readonly edges?: number | null;
  readonly exposure: Exposure | null;
  /** SHA-256 of the upright pixels, hex: the same for another file with the same picture. */
  readonly pixels?: string | null;
  readonly likeness?: Likeness | null;
  readonly renditions: readonly Rendition[];
  /** Absent in what was read before cards were looked for, and where that took too long. */
  readonly cards?: readonly CardCodeSeen[];
  readonly unreadable?: Unreadable;
}
