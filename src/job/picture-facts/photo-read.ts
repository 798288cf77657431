import type { Json } from "../../ledger/index.ts";
import type { Taken } from "../../photo/index.ts";
import { dayNumber, daysInMonth } from "../../units/index.ts";
import { oncePer } from "../once-per.ts";
import { factsOf, type JobState } from "../state.ts";

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
/** A radius beyond this tells nothing: the earth is no larger. */
const EARTH_MM = 20_100_000_000;

/** A place as a phone or a camera gave it: integers of 1e-7 degree, accuracy in millimetres. */
export interface Fix {
  readonly latitude: number;
  readonly longitude: number;
  readonly accuracy?: number;
  /** How old the fix was when the picture was taken, ms. */
  readonly age?: number;
}

/** What media read of one photo, as far as it is in its shape. */
export interface PhotoRead {
  /** The camera's own date, in its shape. */
  readonly taken?: Taken;
  /** The satellites' time, ms, where its date is its own. */
  readonly satellite?: number;
  readonly notes: readonly string[];
  readonly position?: Fix;
  /** The part of the entry that holds the position has been withheld. */
  readonly placeWithheld: boolean;
  readonly unreadable: boolean;
  /** What cards in it say, each once. */
  readonly cards: readonly CardSaid[];
  /** Where each of their codes lies; absent where nobody could look. */
  readonly corners?: readonly CardCorners[];
}

type Pixel = readonly [x: number, y: number];
/** Corners of a card's code as media saw them, whole pixels of the upright picture, code upright, from its upper left one clockwise. */
export type CardCorners = readonly [Pixel, Pixel, Pixel, Pixel];

/** What a card in a photo says of the job whose ledger this is; `nothing`: no card of the company's, or altered, or of another version. */
export interface CardSaid {
  readonly of: "this job" | "another job" | "nothing";
  /** Absent on a card for any step. */
  readonly step?: string;
}

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};
const whole = (value: Json | undefined, least: number, most: number): number | undefined =>
  typeof value === "number" && Number.isSafeInteger(value) && value >= least && value <= most ? value : undefined;

/** A fix, alone or under `position`; undefined where it is none. */
export function fixOf(where: Json | undefined): Fix | undefined {
  const given = fields(fields(where).position ?? where);
  const latitude = whole(given.latitude, -900_000_000, 900_000_000);
  const longitude = whole(given.longitude, -1_800_000_000, 1_800_000_000);
  if (latitude === undefined || longitude === undefined) return undefined;
  const accuracy = whole(given.accuracy, 0, EARTH_MM);
  const age = whole(given.age, 0, Number.MAX_SAFE_INTEGER);
  return { latitude, longitude, ...(accuracy === undefined ? {} : { accuracy }), ...(age === undefined ? {} : { age }) };
}

/** A wall clock's milliseconds as if it were UTC; undefined where it is no date. */
export function wallClock(text: string): number | undefined {
  const parts = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})$/.exec(text);
  if (parts === null) return undefined;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts.slice(1).map(Number);
  if (month < 1 || day < 1 || day > daysInMonth(year, month) || hour > 23 || minute > 59 || second > 59) return undefined;
  return dayNumber({ year, month, day }) * DAY_MS + (hour * 60 + minute) * MINUTE_MS + second * 1000;
}

/** The camera's date as the ledger has it; one that is not in its shape is none. */
function takenOf(json: Json | undefined): Taken | undefined {
  const { text, offset, offsetFrom, source } = fields(json);
  if (typeof text !== "string" || wallClock(text) === undefined) return undefined;
  const known = typeof offset === "string" && /^[+-]\d{2}:\d{2}$/.test(offset);
  return {
    text,
    source: source === "digitized" ? "digitized" : "original",
    ...(known ? { offset, offsetFrom: offsetFrom === "satellite" ? "satellite" : "tag" } : {}),
  };
}

const satelliteOf = (text: Json | undefined): number | undefined =>
  typeof text === "string" && text.endsWith("Z") ? wallClock(text.slice(0, -1)) : undefined;

/** Four codes of one card say the same and count once. */
function cardsOf(json: Json | undefined): readonly CardSaid[] {
  const all = (Array.isArray(json) ? json : []).map((card): readonly [string, CardSaid] => {
    const { of, job, step } = fields(fields(card).says);
    const said: CardSaid = {
      of: of === "this job" || of === "another job" ? of : "nothing",
      ...(typeof step === "string" ? { step } : {}),
    };
    // cards of two other jobs are two cards; what tells nothing is told apart by nothing
    return [said.of === "nothing" ? "" : JSON.stringify([of, job, step]), said];
  });
  return [...new Map(all).values()];
}

const isPixel = (json: Json | undefined): boolean => Array.isArray(json) && json.length === 2 && json.every(Number.isSafeInteger);

function cornersOf(json: Json | undefined): readonly CardCorners[] {
  return (Array.isArray(json) ? json : []).flatMap((card) => {
    const { corners } = fields(card);
    return Array.isArray(corners) && corners.length === 4 && corners.every(isPixel) ? [corners as unknown as CardCorners] : [];
  });
}

/** What the ledger has of each photo that media read, by its hash. */
export const photosRead = oncePer((state: JobState, _: "all"): ReadonlyMap<string, PhotoRead> => {
  const read = factsOf(state, "picture-read").map(({ what, entry }) => {
    const facts = fields(what.facts);
    const taken = takenOf(facts.taken);
    const position = fixOf(entry.where);
    const notes = Array.isArray(facts.notes) ? facts.notes.filter((note): note is string => typeof note === "string") : [];
    const satellite = notes.includes("satellite-date-missing") ? undefined : satelliteOf(facts.satelliteTime);
    const found: PhotoRead = {
      ...(taken === undefined ? {} : { taken }),
      ...(position === undefined ? {} : { position }),
      ...(satellite === undefined ? {} : { satellite }),
      notes,
      // whoever read the photo says why it has no position: with neither, the position has been taken out of the entry
      placeWithheld: position === undefined && facts.position !== undefined && !notes.some((note) => /^(position|metadata)-/.test(note)),
      unreadable: Boolean(facts.unreadable),
      cards: cardsOf(facts.cards),
      ...(Array.isArray(facts.cards) ? { corners: cornersOf(facts.cards) } : {}),
    };
    return [what.photo, found] as const;
  });
  return new Map(read);
});
