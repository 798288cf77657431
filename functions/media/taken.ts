import type { PhotoNote, Taken } from "#core/photo/index.ts";
import { offsetBetween, offsetText, readOffset } from "./offset.ts";
import { readSatellite, type SatelliteRead, type SatelliteTags } from "./satellite.ts";
import { readDate, textOf, type WallClock } from "./wall-clock.ts";

/** The tags that a moment is made of, as the file has them, read without any machine's zone. */
export interface TimeTags extends SatelliteTags {
  readonly original?: unknown;
  readonly digitized?: unknown;
  readonly offsetOriginal?: unknown;
  readonly offsetDigitized?: unknown;
}

export interface TakenRead {
  readonly taken: Taken | null;
  readonly satelliteTime: string | null;
  readonly notes: readonly PhotoNote[];
}

/**
 * The moment of the picture: date as the camera's wall clock, zone only from the date's own offset tag or from the
 * satellites' time. `longitude`, degrees east, where the place is known; it only chooses between two days.
 */
export function readTaken(tags: TimeTags, longitude?: number): TakenRead {
  const notes: PhotoNote[] = [];
  const chosen = chooseDate(tags, notes);
  const satellite = readSatellite(tags, chosen?.clock, longitude);
  const satelliteTime = satelliteText(satellite, notes);
  if (!chosen) return { taken: null, satelliteTime, notes };
  const base = { text: chosen.clock.text, source: chosen.source };
  const offset = offsetOf(tags, chosen);
  if (typeof offset === "number") return { taken: { ...base, offset: offsetText(offset), offsetFrom: "tag" }, satelliteTime, notes };
  if (offset === "not-understood") notes.push("offset-not-understood");
  const told = satellite === undefined ? undefined : offsetBetween(chosen.clock.asUtc, satellite.utc);
  if (told !== undefined) return { taken: { ...base, offset: offsetText(told), offsetFrom: "satellite" }, satelliteTime, notes };
  if (offset === undefined) notes.push("offset-missing");
  return { taken: base, satelliteTime, notes };
}

interface Chosen {
  readonly clock: WallClock;
  readonly source: Taken["source"];
}

/** The exposure's date before the digitising's; never that of the file's last change. */
function chooseDate(tags: TimeTags, notes: PhotoNote[]): Chosen | undefined {
  for (const source of ["original", "digitized"] as const) {
    const clock = readDate(tags[source]);
    if (typeof clock === "object") return { clock, source };
    if (clock !== undefined && !notes.includes(clock)) notes.push(clock);
  }
  if (notes.length === 0) notes.push("time-missing");
  return undefined;
}

function offsetOf(tags: TimeTags, { clock, source }: Chosen): number | "not-understood" | undefined {
  const own = readOffset(source === "original" ? tags.offsetOriginal : tags.offsetDigitized);
  return own === undefined ? readOffset(clock.behind) : own;
}

function satelliteText(satellite: SatelliteRead | undefined, notes: PhotoNote[]): string | null {
  const text = satellite === undefined ? undefined : textOf(satellite.utc);
  if (text === undefined) return null;
  if (satellite?.day === "nearest") notes.push("satellite-date-missing");
  return `${text}Z`;
}
