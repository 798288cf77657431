import type { QuantityKind } from "../units/index.ts";

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
  /** Figures of the design and of kit cards that limits and checks use, with the words that ask for them. */
  readonly figures: readonly FigureAsked[];
  readonly instruments: readonly Instrument[];
  readonly placings: readonly Placing[];
  readonly tagSets: readonly TagSet[];
  readonly coverings: readonly Covering[];
  readonly cautions: readonly Caution[];
  readonly steps: readonly Step[];
  readonly items: readonly Item[];
  readonly oneOf: readonly OneOf[];
  readonly checks: readonly Check[];
}

export interface Words {
  readonly en: string;
  readonly es?: string;
}

/** Something that the design says yes or no to, such as a make-up valve. */
export interface Switch {
  readonly id: string;
  readonly title: Words;
  /** What holds while the design does not say. */
  readonly standard: boolean;
}

export interface FigureAsked {
  /** camelCase key, such as `basinDepth`. */
  readonly id: string;
  readonly title: Words;
  readonly kind: QuantityKind;
  readonly unit: string;
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
}

/** `holds` can stop a covering, `asked` is missed when absent, `if you have it` and `open` never are. */
export type Weight = "holds" | "asked" | "if you have it" | "open";

/** 'common practice' (no source), 'own' (our choice), or a publication. */
export type Source = string;

interface Weighted {
  readonly weight: Weight;
  /** With weight `holds`: the covering held, or `by tag`: the one that the tag names. */
  readonly holds?: string;
  readonly switches?: { readonly on?: readonly string[]; readonly off?: readonly string[] };
  readonly source?: Source;
}

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
  /** Reads the height mark: first and last of a set-up. */
  readonly heightMark?: boolean;

  // answers
  readonly choices?: readonly Choice[];
}

export interface Choice {
  readonly id: string;
  readonly title: Words;
  readonly accepts: boolean;
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

export const checkFunctions = [
  "single value",
  "out of level",
  "fourth place",
  "moved since",
  "steady",
  "level along a lip",
  "at least one of",
  "time passed since",
] as const;
export type CheckFunction = (typeof checkFunctions)[number];

/** A number in the fixed unit of the check's kind, or a named function of design, kit card and typed values, plus an offset. */
export type LimitFigure =
  | number
  | { readonly function: LimitFunction; readonly figure?: string; readonly item?: string; readonly offset?: number };

export const limitFunctions = ["design figure", "rim below finished grade", "cord reach", "as typed"] as const;
export type LimitFunction = (typeof limitFunctions)[number];

export interface Check extends Weighted {
  readonly id: string;
  readonly step: string;
  readonly title: Words;
  readonly function: CheckFunction;
  /**
   * The items it reads. single value: mean of them. out of level, fourth place: four places in order around the rim.
   * moved since: places now. steady: two of them. level along a lip: the two gaps. time passed since: the instant.
   */
  readonly items: readonly string[];
  /** single value: the mean of these is taken off. moved since: the same places before, in the same order. */
  readonly minus?: readonly string[];
  /** out of level: along = from places 1, 4 to 2, 3 (quarter points: 1 to 3); across = from 1, 2 to 4, 3 (2 to 4). */
  readonly way?: "along" | "across";
  readonly places?: "corners" | "quarter points";
  /** time passed since: the item whose entry must come after. steady: none. */
  readonly until?: string;
  /** steady: least time between the two, milliseconds. */
  readonly apart?: number;
  readonly kind: QuantityKind;
  readonly aim?: LimitFigure;
  readonly lower?: LimitFigure;
  readonly upper?: LimitFigure;
  readonly rule?: "guarded" | "simple acceptance";
  /** Nominal size of bought stock, micrometres: no limit may sit on it. */
  readonly stock?: number;
  /** A named figure printed beside the verdict. */
  readonly costs?: "water lost to tilt";
  /** Never a verdict on the work: printed beside the figure with who decides. */
  readonly asks?: "electrician";
}
