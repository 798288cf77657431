import type { Figures } from "../outcome/index.ts";
import type { FlowCause } from "../plumbing/index.ts";
import type { QuantityKind } from "../units/index.ts";
import type { FloatOccasion, WaterToLeave } from "../water/index.ts";
import type { About } from "./fact.ts";
import type { Weight } from "./sheet.ts";

export const verdicts = ["within", "outside", "too close to call", "not taken", "could not be taken", "does not apply"] as const;
export type Verdict = (typeof verdicts)[number];

/** A sentence before its language: a key of the dictionary in `src/record` and the figures that it prints. */
export interface Message {
  readonly key: string;
  readonly figures: Figures;
}

export const message = (key: string, figures: Message["figures"] = {}): Message => ({ key, figures });

/** The outcome of one check, or of one item that no check reads. Integers in the fixed unit of its kind. */
export interface Finding {
  readonly step: string;
  /** Id of the check, or of the item where the item itself is what is found. */
  readonly check: string;
  readonly of: "check" | "picture" | "reading" | "answer" | "tag set";
  readonly tag?: string;
  readonly verdict: Verdict;
  readonly weight: Weight;
  /** The covering that it can hold, with weight `holds`. */
  readonly holds?: string;
  readonly kind?: QuantityKind;
  readonly value?: number;
  /** Expanded doubt U (k = 2), that of a limit derived from the design in it. */
  readonly doubt?: number;
  readonly aim?: number;
  readonly lower?: number;
  readonly upper?: number;
  /** The three largest contributors to the doubt, by the role of a reading's source, or `limit`: name and their standard uncertainty. */
  readonly contributors?: readonly { readonly name: string; readonly u: number }[];
  /** Verdict so far: the height mark has not been read again. */
  readonly soFar?: boolean;
  /** Met from this instant on (cure, a ticket's end), milliseconds. */
  readonly from?: number;
  /** Entries that it rests on, ids in order. */
  readonly entries: readonly string[];
  /** Items that it waits for. */
  readonly missing?: readonly About[];
  /** Figures of design or kit card that it waits for. */
  readonly unknown?: readonly string[];
  /** What a bad value costs or what goes with it: gallons lost to the tilt, millilitres. */
  readonly costs?: { readonly kind: QuantityKind; readonly value: number };
  /** How much water to leave inside so that the basin rests, and what for. */
  readonly leaves?: ToLeave;
  /** What it wins, least and most. */
  readonly wins?: { readonly kind: QuantityKind; readonly lower: number; readonly upper: number };
  /** Who is asked: the figures are printed beside the sheet's, and no verdict word. */
  readonly asks?: "electrician";
  /** The place that its value speaks of, where it is one of several: that which moved most (below zero: it went down). */
  readonly place?: About;
  /** Of `entries`, those that are evidence and yet do not count in its figures: from a set-up that did not close, say. */
  readonly aside?: readonly string[];
  /** What would explain a flow that is not the expected one, likeliest first, each cause alone: to look by, no proof. */
  readonly explains?: readonly FlowExplained[];
  /** What lets it pass in spite of its verdict. */
  readonly by?: Passage;
  /** Earlier series, before rework: the values that no longer count. */
  readonly beforeRework?: readonly { readonly value: number; readonly verdict: Verdict }[];
  readonly says: Message;
}

/** How much water to leave inside on one occasion. */
export interface ToLeave {
  readonly occasion: FloatOccasion;
  readonly answer: WaterToLeave["answer"];
  /** Above the floor, micrometres: the doubt of what lifts it is in it. */
  readonly depth: number;
  /** That depth in water, millilitres, where the basin's size is known. */
  readonly volume?: number;
}

/** How far off one cause alone would have to be for the measured flow to be that of the design. Integers in the fixed unit of `kind`. */
export interface FlowExplained {
  readonly cause: FlowCause;
  readonly kind: QuantityKind;
  /** Static head; head that a blockage takes; share of air; share of the head that the card gives; C. */
  readonly wouldBe?: number;
  /** That less what was assumed. */
  readonly off?: number;
  /** Blockage: the bore that the whole line would have to have, as a share of its own. Millionths. */
  readonly boreShare?: number;
  /** `off` in the size of what is ordinary for this cause, millionths: the ranking goes by it. */
  readonly times: number;
  /** No size of this cause gives the measured flow. */
  readonly cannot?: "wrong direction" | "not possible";
}

/** Why something clears although it is not `within`. */
export interface Passage {
  readonly way: "concession" | "departure" | "go-ahead" | "does not apply" | "rework";
  readonly entry: string;
  readonly confirmed?: boolean;
}

/** One reason why a covering is not yet clear, or what is missing, with its ways out. About nothing: the customer's signature. */
export interface Line {
  readonly about: About;
  readonly step: string;
  readonly verdict: Verdict;
  readonly reason: Message;
  readonly waysOut: readonly WayOut[];
  /** Clears by itself at this instant. */
  readonly from?: number;
}

export const waysOut = [
  "take it",
  "take it again",
  "does not apply",
  "could not be taken",
  "name it",
  "rework it",
  "call the office",
  "go-ahead by telephone",
  "ask for the figure",
  "wait",
] as const;
export type WayOut = (typeof waysOut)[number];

/** What a covering has. Only a covering is ever called clear. */
export interface Clearance {
  readonly covering: string;
  readonly state: "clear" | "on word" | "not yet";
  /** Entry of the go-ahead on whose word it reads clear. */
  readonly onWord?: readonly string[];
  readonly lines: readonly Line[];
  /** About when it will happen, as last announced; absent once it has happened. */
  readonly announced?: { readonly entry: string; readonly about: number };
  /** When it has happened: what was shown then, and what is known now. */
  readonly covered?: CoveredState;
}

export interface CoveredState {
  readonly entry?: string;
  /** Phone's clock, corrected by its skew; milliseconds. */
  readonly at: number;
  /** Nobody said covered: it follows from an entry that needs it hidden. */
  readonly noLaterThan: boolean;
  /** It had happened before the record began. */
  readonly beforeRecord?: true;
  /** What the phone showed. */
  readonly shown?: "clear" | "on word" | "not yet";
  /** Lines that the phone showed as holding. */
  readonly shownLines?: readonly string[];
  /** Clear when covered, doubted by what is known now. */
  readonly laterDoubted: boolean;
}

/** What is due before something that is no covering, such as digging: entered or missing, never clear. */
export interface BeforehandState {
  /** Id in the sheet's `beforehand`. */
  readonly id: string;
  readonly state: "everything entered" | "missing";
  readonly missing: readonly Line[];
}

export interface LeftToDo {
  readonly entry: string;
  readonly text: string;
  readonly by: string;
  readonly about?: About;
  readonly done: boolean;
}

export interface HandingOver {
  readonly state: "everything entered" | "missing";
  readonly missing: readonly Line[];
  readonly leftToDo: readonly LeftToDo[];
}

/** What a check's own figures make of its finding. */
export type CheckPart = Pick<Finding, "verdict" | "says"> & Partial<Finding>;
