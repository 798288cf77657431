import type { PhotoNote, Taken } from "#core/photo/index.ts";

/** The tags that a moment is made of, as text, read without any machine's zone. */
export interface TimeTags {
  readonly original?: unknown;
  readonly digitized?: unknown;
  readonly offsetOriginal?: unknown;
  readonly offsetDigitized?: unknown;
  /** Hours, minutes, seconds in UTC. */
  readonly gpsTime?: unknown;
  /** `YYYY:MM:DD` in UTC. */
  readonly gpsDate?: unknown;
}

export interface TakenRead {
  readonly taken: Taken | null;
  readonly satelliteTime: string | null;
  readonly notes: readonly PhotoNote[];
}

interface WallClock {
  /** Milliseconds as if the wall clock were UTC: for differences only, never an instant. */
  readonly asUtc: number;
  readonly text: string;
}

/** Farthest that a satellites' time may lie off a quarter hour from the wall clock to tell the zone (own). */
const OFF_QUARTER_MS = 120_000;
const QUARTER_MS = 900_000;
const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const LEAST_OFFSET = -12 * 60;
const GREATEST_OFFSET = 14 * 60;

/** The moment of the picture: date as the camera's wall clock, zone only from its own tag or from the satellites' time. */
export function readTaken(tags: TimeTags): TakenRead {
  const notes: PhotoNote[] = [];
  const chosen = chooseDate(tags, notes);
  const satellite = chosen || tags.gpsDate ? readSatellite(tags, chosen?.clock) : undefined;
  const satelliteTime = satellite === undefined ? null : `${textOf(satellite)}Z`;
  if (!chosen) return { taken: null, satelliteTime, notes };
  const base = { text: chosen.clock.text, source: chosen.source };
  const offset = readOffset(chosen.source === "original" ? tags.offsetOriginal : tags.offsetDigitized);
  if (offset === "not-understood") notes.push("offset-not-understood");
  else if (offset !== undefined) return { taken: { ...base, offset, offsetFrom: "tag" }, satelliteTime, notes };
  const fromSatellite = satellite === undefined ? undefined : offsetBetween(chosen.clock.asUtc, satellite);
  if (fromSatellite !== undefined) return { taken: { ...base, offset: fromSatellite, offsetFrom: "satellite" }, satelliteTime, notes };
  if (offset === undefined) notes.push("offset-missing");
  return { taken: base, satelliteTime, notes };
}

function chooseDate(tags: TimeTags, notes: PhotoNote[]): { clock: WallClock; source: Taken["source"] } | undefined {
  const found: PhotoNote[] = [];
  for (const source of ["original", "digitized"] as const) {
    const clock = readDate(tags[source]);
    if (typeof clock === "object") return { clock, source };
    if (clock !== undefined) found.push(clock);
  }
  notes.push(found[0] ?? "time-missing");
  return undefined;
}

const cleaned = (value: unknown): string => (typeof value === "string" ? value.replaceAll("\0", "").trim() : "");

/** `YYYY:MM:DD HH:MM:SS` (Exif 2.32, 4.6.5) as it stands; blanks between colons mean unknown. */
function readDate(value: unknown): WallClock | "time-zeros" | "time-impossible" | undefined {
  const text = cleaned(value);
  if (text.replace(/[:\s]/g, "") === "") return undefined;
  if (/^[0:\s]+$/.test(text)) return "time-zeros";
  const parts = /^(\d{4})[:-](\d{2})[:-](\d{2})[ T](\d{2}):(\d{2}):(\d{2})(?:\.\d+)?$/.exec(text);
  if (!parts) return "time-impossible";
  const [year, month, day, hour, minute, second] = parts.slice(1, 7).map(Number) as [number, number, number, number, number, number];
  const asUtc = Date.UTC(year, month - 1, day, hour, minute, second);
  const clock = { asUtc, text: textOf(asUtc) };
  // A date that rolls over prints as another one: 13 months, 30 February, 24:00, a second of 60.
  const asGiven = `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}:${parts[5]}:${parts[6]}`;
  return year >= 1 && clock.text === asGiven ? clock : "time-impossible";
}

const textOf = (asUtc: number): string => new Date(asUtc).toISOString().slice(0, 19);

/** An offset of quarter hours from −12:00 to +14:00; undefined where the camera says that it does not know. */
function readOffset(value: unknown): string | "not-understood" | undefined {
  const text = cleaned(value);
  if (text.replace(/[:\s]/g, "") === "") return undefined;
  if (text === "Z") return "+00:00";
  const parts = /^([+-])(\d{1,2}):?(\d{2})$/.exec(text);
  if (!parts) return "not-understood";
  const minutes = (parts[1] === "-" ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3]));
  if (Number(parts[3]) > 59 || minutes % 15 !== 0 || minutes < LEAST_OFFSET || minutes > GREATEST_OFFSET) return "not-understood";
  return offsetText(minutes);
}

function offsetText(minutes: number): string {
  const absolute = Math.abs(minutes);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${minutes < 0 ? "-" : "+"}${two(Math.floor(absolute / 60))}:${two(absolute % 60)}`;
}

/** The satellites' time in UTC milliseconds; without its date, the day that brings it nearest the wall clock. */
function readSatellite(tags: TimeTags, clock: WallClock | undefined): number | undefined {
  const ofDay = readTimeOfDay(tags.gpsTime);
  if (ofDay === undefined) return undefined;
  const date = cleaned(tags.gpsDate);
  if (date !== "") {
    const day = readDate(`${date.slice(0, 10)} 00:00:00`);
    return typeof day === "object" ? day.asUtc + ofDay : undefined;
  }
  if (!clock) return undefined;
  const sameDay = Math.floor(clock.asUtc / DAY_MS) * DAY_MS + ofDay;
  const near = [sameDay - DAY_MS, sameDay, sameDay + DAY_MS];
  return near.sort((a, b) => Math.abs(a - clock.asUtc) - Math.abs(b - clock.asUtc))[0];
}

function readTimeOfDay(value: unknown): number | undefined {
  const parts = Array.isArray(value) ? value.map(Number) : [];
  const [hours, minutes, seconds] = parts as [number, number, number];
  if (parts.length !== 3 || !parts.every((part) => Number.isFinite(part) && part >= 0)) return undefined;
  if (hours >= 24 || minutes >= 60 || seconds >= 60) return undefined;
  return Math.floor((hours * 3600 + minutes * 60 + seconds) * 1000);
}

function offsetBetween(wallClock: number, satellite: number): string | undefined {
  const difference = wallClock - satellite;
  const rounded = Math.round(difference / QUARTER_MS) * QUARTER_MS;
  const minutes = rounded / MINUTE_MS;
  if (Math.abs(difference - rounded) > OFF_QUARTER_MS || minutes < LEAST_OFFSET || minutes > GREATEST_OFFSET) return undefined;
  return offsetText(minutes);
}
