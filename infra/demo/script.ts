import type { FactKind, Typed } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { SceneName } from "./scenes.ts";
import type { SketchName } from "./sketches.ts";

export interface Reference {
  readonly id: string;
  readonly digest: string;
}
type What = { readonly [key: string]: Json };

/**
 * One thing entered: `12 07:40` is the day of May and the wall clock on site. `value` is the reading as typed, the choice,
 * or the picture's caption. A label lets a later line name this entry.
 */
export type Entered = readonly [time: string, item: string, value: string, tag?: string, label?: string];

/** Any other fact. */
export interface Said {
  readonly time: string;
  readonly kind: FactKind;
  readonly what: What | ((entry: (label: string) => Reference) => What);
  readonly who?: What;
  readonly label?: string;
}

/** A covering done: what the phone showed, and the lines that it held, are worked out on the phone. */
export interface Covered {
  readonly time: string;
  readonly covers: string;
}

export type Line = Entered | Said | Covered;

/** A reading that was measured once more in a photo with a card: the picture of this item and tag, which is rendered and not drawn. */
export interface MeasuredIn {
  readonly time: string;
  readonly item: string;
  readonly tag?: string;
  readonly picture: string;
  /** Of the picture, and so of the card in it. */
  readonly step: string;
  readonly scene: SceneName;
}

export interface JobScript {
  readonly title: string;
  readonly ownNumber: string;
  /** Id of its tolerance sheet; absent: the default one. */
  readonly sheet?: string;
  /** Customer, contact on site, receiver of the record, address. */
  readonly who: Json;
  /** When the office opened it. */
  readonly opened: string;
  readonly figures: Readonly<Record<string, Typed | "unknown">>;
  readonly switches: Readonly<Record<string, boolean>>;
  readonly kitCards: readonly string[];
  /** The fixed mark that each tie was taken from, by item. */
  readonly marks?: Readonly<Record<string, string>>;
  /** On which side what a tie locates was seen to lie, by item and tag: for someone at its first mark who looks to its second. */
  readonly sides?: Readonly<Record<string, "left" | "right">>;
  /** Degrees. */
  readonly latitude: number;
  readonly longitude: number;
  readonly office: readonly Line[];
  readonly crew: readonly Line[];
  /** What the crew measured in its photos after that. */
  readonly measured?: readonly MeasuredIn[];
  /** What the office says once the phone has come back into signal. */
  readonly afterwards: readonly Line[];
}

/** The site's zone: five hours behind UTC in May. */
export const ZONE = "America/Chicago";
export const OFFSET = "-05:00";

/** `12 07:40` as milliseconds since 1970. */
export function moment(time: string): number {
  const [day = 0, hour = 0, minute = 0] = time.split(/[ :]/).map(Number);
  return Date.UTC(2026, 4, day, hour + 5, minute);
}

/** `12 07:40` as the camera's wall clock. */
export function wallClock(time: string): string {
  return `2026-05-${time.replace(" ", "T")}:00`;
}

/** Which sketch is drawn for a step's pictures, and for those that need another. */
export const sketchOfStep: Readonly<Record<string, SketchName>> = {
  "arrive-on-site": "site plan",
  "hole-and-bed": "basin section",
  "basin-set": "basin section",
  "side-wall-fitting": "fitting detail",
  "wet-check": "fitting detail",
  "basin-backfill": "basin section",
  "pipe-glued": "pipe joints",
  "trench-open": "trench section",
  "base-and-spillway": "lip and level",
  "liner-laid": "liner patch",
  "rock-and-foam": "rock work",
  "fill-and-start": "rock work",
  "pump-lid-wash": "lid and plate",
  "walk-through": "rock work",
  "leave-for-night": "trench section",
  "old-wiring": "wall detail",
  "the-old-hole": "basin section",
  "what-is-kept": "rock work",
};
export const sketchOfItem: Readonly<Record<string, SketchName>> = {
  "marks-on-ground": "ground marks",
  "tie-marks": "site plan",
  "outlet-with-lid": "wall detail",
  "height-mark-picture": "wall detail",
};
