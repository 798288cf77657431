import type { SetOutPlace } from "../geometry/index.ts";
import type { CementTableName } from "../plumbing/index.ts";
import type { QuantityKind } from "../units/index.ts";
import { oncePer } from "./once-per.ts";
import type { CallbackAsked } from "./sheet-callbacks.ts";
import type { Check, Weighted } from "./sheet-check.ts";
import type { Words } from "./words.ts";

export * from "./sheet-callbacks.ts";
export * from "./sheet-check.ts";
export type { Words } from "./words.ts";

/**
 * A tolerance sheet: the versioned list of one kind of installation. It is data and nothing else: every step, picture,
 * reading, answer, limit and word stands in its file, and no id of it stands in code. Ids are kebab-case with a hyphen.
 */
export interface ToleranceSheet {
  readonly format: 1;
  readonly id: string;
  readonly version: number;
  readonly title: Words;
  readonly switches: readonly Switch[];
  /** The published table that the company takes set and cure times from where the can says nothing; A where it chose none. */
  readonly cureTable?: CementTableName;
  /** Figures of the design and of kit cards that limits and checks use, with the words that ask for them. */
  readonly figures: readonly FigureAsked[];
  readonly instruments: readonly Instrument[];
  readonly placings: readonly Placing[];
  readonly tagSets: readonly TagSet[];
  readonly coverings: readonly Covering[];
  readonly cautions: readonly Caution[];
  readonly steps: readonly Step[];
  /** What must be entered before something that is no covering, such as digging: never called clear. */
  readonly beforehand?: readonly Beforehand[];
  readonly items: readonly Item[];
  readonly oneOf: readonly OneOf[];
  readonly checks: readonly Check[];
  /** What to look at first when a customer calls about something, by the symptom. */
  readonly callbacks?: readonly CallbackAsked[];
}

/** Something that the design says yes or no to, such as a make-up valve. */
export interface Switch {
  readonly id: string;
  readonly title: Words;
  /** What holds while the design does not say. */
  readonly standard: boolean;
}

/** Steps whose entries are due before something begins. */
export interface Beforehand {
  readonly id: string;
  /** 'before digging'. */
  readonly title: Words;
  readonly steps: readonly string[];
}

export interface FigureAsked {
  /** camelCase key, such as `basinDepth`. */
  readonly id: string;
  readonly title: Words;
  /** `text`: a fact in words, such as which way a nut tightens; no limit can use it. */
  readonly kind: QuantityKind | "text";
  /** Absent for text. */
  readonly unit?: string;
  /** From the design itself or from a kit card. */
  readonly from: "design" | "kit card";
}

export interface Instrument {
  readonly id: string;
  readonly title: Words;
  /** Half-width of the permitted error of tape or rod, micrometres; absent: OIML R 35 class II at the length read. */
  readonly permittedError?: number;
  /** Has no length scale of its own that could be wrong (shims, counted things). */
  readonly exact?: boolean;
  /** Finest mark as usually read, micrometres; what 'can it be decided?' assumes. */
  readonly resolution: number;
  readonly line?: "laser" | "string with line level" | "spirit level";
  /** How the sheet wants the receiver set; what 'can it be decided?' assumes. A reading that does not say counts as coarse. */
  readonly receiver?: "fine" | "coarse";
  /** A spirit level that is turned end for end: its own error cancels. */
  readonly turnedEndForEnd?: boolean;
}

/** What tape or rod rests on; half-width of a rectangle, micrometres. */
export interface Placing {
  readonly id: string;
  readonly title: Words;
  readonly halfWidth: number;
}

export interface TagSet {
  readonly id: string;
  readonly title: Words;
  /** Fewer tags than this and the coverings say not yet. */
  readonly least: number;
  /** The coverings that may hide a tag of this set; each tag names one of them. */
  readonly coverings: readonly string[];
}

export interface Covering {
  readonly id: string;
  /** The act itself, as a verb: 'backfill the basin'. */
  readonly title: Words;
  /** When it has happened: 'basin backfilled'. */
  readonly done: Words;
  readonly cautions: readonly string[];
  /** What stands open in the ground until it has happened: 'the trench'. */
  readonly leavesOpen?: Words;
}

export interface Caution {
  readonly id: string;
  readonly text: Words;
}

export interface Step {
  readonly id: string;
  /** Printed number. */
  readonly number: number;
  readonly title: Words;
  readonly cautions: readonly string[];
  /** Done by the office, before or after the site. */
  readonly office?: boolean;
  /** What the record says about the whole step, such as where its numbered places lie. */
  readonly note?: Words;
  /** At its end the customer signs, declines, or is not reached. */
  readonly signed?: boolean;
}

/** What a point that was tied to marks can be on the plan. `basin`: the middle of it. */
export const drawnAs = ["joint", "crossing", "splice", "outlet", "lid", "basin"] as const;
export type DrawnAs = (typeof drawnAs)[number];

/** Moments of a job that a sheet can name: the water ran for the first time. */
export const jobMoments = ["first running"] as const;
export type JobMoment = (typeof jobMoments)[number];

export type SetOutItem = SetOutPlace | "finished grade";

/** What is looked at before the crew leaves for the night. */
export const nightMatters = ["holes", "pump"] as const;
export type NightMatter = (typeof nightMatters)[number];

export interface Item extends Weighted {
  readonly id: string;
  readonly step: string;
  readonly kind: "picture" | "reading" | "answer";
  readonly title: Words;
  /** What settles it, in one line for the one who takes it. */
  readonly prompt?: Words;
  /** Tag set whose every tag repeats this item. */
  readonly tags?: string;
  /** Asked only while no tag of this set is named: the answer 'none here'. */
  readonly whenNoTagOf?: string;
  readonly mayNotApply?: boolean;
  /** The covering that must already have happened when this is entered. */
  readonly needsHidden?: string;
  /** Cautions that appear with this item. */
  readonly cautions?: readonly string[];
  /** Not counted in the budget of a job: values typed, leak tests, return visit. */
  readonly apart?: boolean;
  /** What its first entry is the moment of. */
  readonly marks?: JobMoment;
  /** Depths of water that it wins over the basin's plan area, micrometres. */
  readonly wins?: { readonly lower: number; readonly upper: number };

  // readings
  readonly quantity?: QuantityKind;
  /** The unit that a bare number means, per company units. */
  readonly unit?: { readonly inch: string; readonly metric: string };
  readonly signed?: boolean;
  readonly instrument?: string;
  readonly placing?: string;
  /** A second surface that the reading ends on, such as running water. */
  readonly placingAlso?: string;
  /** Read from a set-up's level line. */
  readonly inSetUp?: boolean;
  /** The place that its rod reading is of: one that is set out, or the hard point at finished grade that their heights stand over. */
  readonly setOut?: SetOutItem;
  /** What it says of the ground as it is left for the night. */
  readonly tonight?: NightMatter;
  /** How deep what its tag names lies under the ground; without a tag, the whole run. */
  readonly buriedDepth?: boolean;
  /** Both its ends lie on one plane, on which a card can be laid: a length in a photo can stand beside it. */
  readonly onOnePlane?: boolean;
  /** Reads the height mark: first and last of a set-up. */
  readonly heightMark?: boolean;
  /** A swing tie: taken from a fixed mark, which its entry names. */
  readonly fromMark?: boolean;
  /** A swing tie: what it locates, where no tag says it: 'centre of the lid'. */
  readonly locates?: Words;
  /** A swing tie: as what its point stands on the plan; absent: a buried point. */
  readonly drawnAs?: DrawnAs;

  // answers
  readonly choices?: readonly Choice[];
}

/** What an answer means where a check or a limit goes by it. */
export const choiceMeanings = [
  "rigid PVC",
  "flexible PVC",
  "ABS to PVC transition",
  "humid",
  "dry air",
  "water outside",
  "make-up shut",
  "make-up open",
  "no rain",
  "rain",
  "pump off",
  "pump ran",
  "pump ran in part",
  "sealant",
  "patch primer",
  "foam",
] as const;
export type ChoiceMeaning = (typeof choiceMeanings)[number];

export interface Choice {
  readonly id: string;
  readonly title: Words;
  readonly accepts: boolean;
  readonly means?: readonly ChoiceMeaning[];
  /** Caution that this choice brings. */
  readonly caution?: string;
}

/** Groups of items, satisfied by any one whole group. Each item in a group holds only through its group. */
export interface OneOf {
  readonly id: string;
  readonly step: string;
  readonly title: Words;
  readonly holds: string;
  readonly groups: readonly { readonly title: Words; readonly items: readonly string[] }[];
}

/** The tag set whose tags repeat a check: that of the items it reads. */
export const tagSetOf: (items: readonly Item[], check: Pick<Check, "items">) => string | undefined = oncePer(
  (items: readonly Item[], check: Pick<Check, "items">) =>
    items.find((item) => check.items.includes(item.id) && item.tags !== undefined)?.tags,
);

/** The item of this name. */
export const itemNamed = oncePer((sheet: Pick<ToleranceSheet, "items">, id: string): Item | undefined =>
  sheet.items.find((item) => item.id === id),
);
