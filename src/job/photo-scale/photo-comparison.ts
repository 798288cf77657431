import { agreeWithinDoubt, expanded, type Uncertain } from "../../doubt/index.ts";
import type { RefusalCode } from "../../outcome/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import type { SeenSpot, Whats } from "../fact.ts";
import type { Finding } from "../finding.ts";
import { type Live, whatOf } from "../live.ts";
import { readingsOf } from "../measured.ts";
import { oncePer } from "../once-per.ts";
import { lookAt } from "../picture-facts/looks.ts";
import { type CardCorners, photosRead } from "../picture-facts/photo-read.ts";
import { type Instance, seriesOf } from "../series.ts";
import { itemNamed, type ToleranceSheet } from "../sheet.ts";
import { factsOf, type JobState } from "../state.ts";
import { type PhotoMeasured, photoMeasured } from "./photo-measured.ts";
import { isMeasurable, photoNeeds, photoPlacing } from "./photo-needs.ts";

/** Why a photo does not tell whether the tape was read right. */
export type CannotTell =
  | { readonly why: "no reading" | "not flat" | "card elsewhere" | "card not found" | "not shown" }
  | { readonly why: "too doubtful" | "tape too rough"; readonly needed: number }
  | { readonly why: "refused"; readonly code: RefusalCode };

/** Micrometres; `doubt`: U of k = 2. */
export interface ComparedLength {
  readonly value: number;
  readonly doubt: number;
}

/** A length in a photo beside what the tape said. It takes no reading's place and holds nothing. */
export interface PhotoComparison {
  /** Of the measured photo, and of the reading that it stands beside. */
  readonly entry: string;
  readonly item: string;
  readonly tag?: string;
  readonly photo: string;
  readonly reading?: string;
  readonly tape?: ComparedLength;
  readonly measured?: ComparedLength;
  readonly says: "agree" | "disagree" | "cannot tell";
  readonly because?: CannotTell;
  /** How often this reading was measured in photos, where that was more than once; taken back or not, the newest that counts is compared. */
  readonly times?: number;
}

type Words = Whats["photo-measured"];

/** Own: a corner that whoever read the photo saw farther off than this share of its code's side is another corner. */
const SAME_CORNER = 0.2;
const PER_PIXEL = 1000;

const squared = ([x, y]: readonly [number, number], [u, v]: readonly [number, number]): number => (x - u) * (x - u) + (y - v) * (y - v);
const inPixels = ([x, y]: SeenSpot): readonly [number, number] => [x / PER_PIXEL, y / PER_PIXEL];

function liesThere(corners: Words["codes"][number]["corners"], seen: CardCorners): boolean {
  const own = corners.map(inPixels);
  const sides = seen.map((corner, i) => squared(corner, seen[(i + 1) % 4] as CardCorners[number]));
  const allowed = SAME_CORNER * SAME_CORNER * Math.min(...sides);
  return own.every((corner, i) => squared(corner, seen[i] as CardCorners[number]) <= allowed);
}

/** What media, which looked at the same photo by itself, speaks against; where it has not looked yet, nothing does. */
function againstSecondLook(state: JobState, { photo, codes }: Words): "card elsewhere" | "card not found" | undefined {
  const seen = photosRead(state, "all").get(photo)?.corners;
  if (seen === undefined) return undefined;
  if (seen.length === 0) return "card not found";
  return codes.some(({ corners }) => seen.some((other) => liesThere(corners, other))) ? undefined : "card elsewhere";
}

/** Whether somebody looked at a picture of this photo and said that it does not show what it is for. */
const isSaidNotToShow = (state: JobState, photo: string): boolean =>
  factsOf(state, "picture-taken").some(({ id, what }) => what.photo === photo && lookAt(state, id)?.what.says === "does not show it");

const compared = (length: Uncertain): ComparedLength => ({
  value: Math.round(length.value * fixedPerSi("length")),
  doubt: Math.ceil(expanded(length) * fixedPerSi("length")),
});

/** By the words of an entry, for the placing of the item that they are of. */
const measuredOnce = oncePer((what: object, placing: number) => photoMeasured(what as Words, placing));

function judged(
  state: JobState,
  sheet: ToleranceSheet,
  fact: Live,
  instance: Instance,
): Omit<PhotoComparison, "entry" | "item" | "tag" | "photo"> {
  const what = whatOf(fact, "photo-measured");
  const { item } = instance;
  const reading = readingsOf(state, instance).at(-1);
  const tape = reading && compared(reading.value);
  const beside = reading && tape ? { reading: reading.fact.id, tape } : {};
  const found = measuredOnce(what, photoPlacing(sheet, item));
  const cannot = (because: CannotTell, one?: PhotoMeasured) => ({
    ...beside,
    ...(one === undefined ? {} : { measured: { value: one.length.micrometres, doubt: one.length.doubt } }),
    says: "cannot tell" as const,
    because,
  });
  if (!found.ok) return cannot({ why: "refused", code: found.refusal.code });
  const { plane, length } = found.value;
  const against = againstSecondLook(state, what);
  if (against !== undefined) return cannot({ why: against });
  if (isSaidNotToShow(state, what.photo)) return cannot({ why: "not shown" });
  if (!plane.flat) return cannot({ why: "not flat" }, found.value);
  const needed = photoNeeds(sheet, item.id);
  if (length.doubt > needed) return cannot({ why: "too doubtful", needed }, found.value);
  if (reading === undefined || tape === undefined) return cannot({ why: "no reading" }, found.value);
  if (tape.doubt > needed) return cannot({ why: "tape too rough", needed }, found.value);
  const { agrees } = agreeWithinDoubt(reading.value, length.length);
  return { ...beside, measured: { value: length.micrometres, doubt: length.doubt }, says: agrees ? "agree" : "disagree" };
}

/** The newest that counts of each reading: whoever measures anew in a better photo need not take back the first. */
const newestOf = (state: JobState): readonly (Live & { readonly what: Words })[] => [
  ...new Map(factsOf(state, "photo-measured").map((fact) => [`${fact.what.item} ${fact.what.tag ?? ""}`, fact])).values(),
];

/**
 * Whether what was measured shows how it is now: a photo that was taken back as a picture shows nothing any more, and one that was
 * entered before rework shows what was there before, whenever somebody measured in it.
 */
function showsNow(state: JobState, { position, what: { photo } }: Live & { readonly what: Words }, after: number): boolean {
  const pictures = state.facts.filter(({ kind, what }) => kind === "picture-taken" && what.photo === photo);
  if (pictures.length > 0 && !pictures.some(({ standing }) => standing === "counts")) return false;
  return Math.min(position, ...pictures.map((picture) => picture.position)) > after;
}

/**
 * The length that was last measured in a photo beside each reading, and the last reading of its item: they agree where they differ by
 * no more than the expanded doubt of their difference (|E_n| of at most 1, ISO 13528). What was measured before rework, or before
 * it was opened up again, is not compared with what was read after it.
 */
export const photoComparisons = oncePer((state: JobState, _: "all"): readonly PhotoComparison[] =>
  newestOf(state).flatMap((fact) => {
    const { item: id, tag, photo } = fact.what;
    const item = state.sheet && itemNamed(state.sheet, id);
    if (state.sheet === undefined || item === undefined || !isMeasurable(state.sheet, item)) return [];
    const instance: Instance = tag === undefined ? { item } : { item, tag };
    if (!showsNow(state, fact, seriesOf(state, instance).cut?.position ?? -1)) return [];
    const times = state.facts.filter(({ kind, what }) => kind === "photo-measured" && what.item === id && what.tag === tag).length;
    const often = times > 1 ? { times } : {};
    return [
      { entry: fact.id, item: id, ...(tag === undefined ? {} : { tag }), photo, ...often, ...judged(state, state.sheet, fact, instance) },
    ];
  }),
);

/** Those that do not agree, of the readings on which the findings that hold a covering rest. */
export const disagreeingOn = (state: JobState, all: readonly Finding[], covering: string): readonly PhotoComparison[] =>
  photoComparisons(state, "all").filter(
    ({ says, reading }) =>
      says === "disagree" && reading !== undefined && all.some(({ holds, entries }) => holds === covering && entries.includes(reading)),
  );
