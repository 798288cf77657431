import type { PhotoFacts, PhotoNote, Taken } from "./facts.ts";

/** Milliseconds since 1970 UTC between which the picture was taken, by the camera's own clock, and what says so. */
export interface TakenMoment {
  readonly earliest: number;
  readonly latest: number;
  /** The offset's own tag, the satellites' time, the site's zone that was handed in, or nothing: then every zone is open. */
  readonly settledBy: "tag" | "satellite" | "site" | "nothing";
}

const MINUTE_MS = 60_000;
/** The camera drops the fractions of a second. */
const REST_OF_SECOND_MS = 999;
/** Minutes east of UTC between which every offset of the world lies. */
const WORLD = [-12 * 60, 14 * 60] as const;

/** When a picture was taken. A wall clock whose zone is unknown spans every zone of the world: 26 hours. */
export function momentOf(taken: Taken): TakenMoment {
  const { offset, offsetFrom = "tag" } = taken;
  return offset === undefined ? spanning(taken, WORLD, "nothing") : spanning(taken, [minutesOf(offset)], offsetFrom);
}

/**
 * The same for a picture of a site whose possible offsets are known, in minutes east of UTC (two in the hour that happens
 * twice). What the camera itself says about its zone comes first.
 */
export function momentAt(taken: Taken, siteOffsets: readonly number[]): TakenMoment {
  const known = taken.offset !== undefined || siteOffsets.length === 0;
  return known ? momentOf(taken) : spanning(taken, siteOffsets, "site");
}

function spanning({ text }: Taken, offsets: readonly number[], settledBy: TakenMoment["settledBy"]): TakenMoment {
  const asUtc = Date.parse(`${text}Z`);
  return {
    earliest: asUtc - Math.max(...offsets) * MINUTE_MS,
    latest: asUtc - Math.min(...offsets) * MINUTE_MS + REST_OF_SECOND_MS,
    settledBy,
  };
}

function minutesOf(offset: string): number {
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return offset.startsWith("-") ? -minutes : minutes;
}

type Noted = Pick<PhotoFacts, "taken" | "position" | "notes">;

/** What the camera wrote and could not be used tells most, then that its notes were not read whole. */
function why(notes: readonly PhotoNote[], about: "time" | "position"): PhotoNote {
  const missing: PhotoNote = `${about}-missing`;
  const own = notes.find((note) => note.startsWith(`${about}-`) && note !== missing);
  return own ?? notes.find((note) => note.startsWith("metadata-")) ?? missing;
}

/** Why the camera gives no time; undefined where it gives one. */
export const whyNoTime = ({ taken, notes }: Noted): PhotoNote | undefined => (taken === null ? why(notes, "time") : undefined);

/** Why the camera gives no place; undefined where it gives one. */
export const whyNoPosition = ({ position, notes }: Noted): PhotoNote | undefined =>
  position === null ? why(notes, "position") : undefined;
