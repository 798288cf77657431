import type { BorneBy, ToleranceSheet, Verdict, Weight } from "../job/index.ts";
import type { QuantityKind } from "../units/index.ts";
import type { Carried } from "./carried.ts";
import type { DeviationObserved, EventsObserved } from "./kept.ts";

/**
 * What the owner's questions read of one job: plain rows, a function of its ledger alone, made once for each head and kept beside it.
 * Instants are milliseconds, days 'YYYY-MM-DD', money hundredths of the company's currency; values are integers in the fixed unit of
 * their kind. People, phones and instruments stand by their ids; names are put in where a person may read them.
 */
export interface JobObserved {
  readonly job: string;
  readonly title: string;
  /** Id of the tolerance sheet; '' where none was taken over. */
  readonly sheet: string;
  readonly opened: number;
  /** The day on which it was signed for, else that of the last covering; absent while something is open. */
  readonly installed?: string;
  /** The last day on which anything was entered. */
  readonly until: string;
  /** Who led it: whoever entered most coverings, the first of them where two did. Absent while nothing is covered. */
  readonly foreman?: string;
  /** As the job names its crew, the newest. */
  readonly crew: readonly string[];
  readonly coverings: readonly CoveringObserved[];
  readonly findings: readonly FindingObserved[];
  readonly readings: readonly ReadingObserved[];
  readonly pictures: readonly PictureObserved[];
  readonly reworks: readonly ReworkObserved[];
  readonly callbacks: readonly CallbackObserved[];
  readonly parts: readonly PartObserved[];
  /** What readings and pictures carry, in the place of the rows themselves where a question was given no more. */
  readonly carried?: Carried;
  /** How steps and coverings went, and what deviates from the design, likewise in the place of the findings. */
  readonly events?: EventsObserved;
  readonly deviations?: readonly DeviationObserved[];
  /** Time that the phones were in hand: each pause under five minutes between two entries of a phone counts. Milliseconds. */
  readonly phoneTime: number;
}

/** One covering that the sheet has. */
export interface CoveringObserved {
  readonly covering: string;
  /** When it happened, and who entered it; absent while open. */
  readonly at?: number;
  readonly person?: string;
  readonly shown?: "clear" | "on word" | "not yet";
  /** Follows from a later entry, or had happened before the record began: nothing was shown. */
  readonly unseen?: true;
  /** Opened up again afterwards. */
  readonly openedAgain: boolean;
}

/**
 * What one check, or one item that no check speaks for, came to: asked for, first value, and last. What is asked only of those who
 * have it is here once it was entered.
 */
export interface FindingObserved {
  readonly check: string;
  readonly of: "check" | "picture" | "reading" | "answer" | "tag set";
  readonly step: string;
  readonly tag?: string;
  readonly weight: Weight;
  readonly holds?: string;
  readonly kind?: QuantityKind;
  /** Its verdict on the first entries alone: before any second reading, rework or word. */
  readonly first: Verdict;
  readonly firstValue?: number;
  /** Its verdict now. */
  readonly verdict: Verdict;
  readonly value?: number;
  /** Expanded doubt U (k = 2) of `value`. */
  readonly doubt?: number;
  readonly aim?: number;
  readonly lower?: number;
  readonly upper?: number;
  /** What the value is a deviation from: its aim. Absent where there is none, and then it is in no chart. */
  readonly deviation?: number;
  readonly at?: number;
  readonly person?: string;
  readonly instrument?: string;
  readonly reworked: boolean;
  /** Entries of it were made after the covering that it holds. */
  readonly afterCovering: boolean;
  readonly passage?: "concession" | "departure" | "go-ahead" | "does not apply" | "rework";
  /** It said not yet: from the first entry that read outside or too close to call until it passed; milliseconds. */
  readonly waited?: number;
}

/** One reading as typed. `step` is its smallest mark as typed; value and step are integers in the fixed unit of its kind. */
export interface ReadingObserved {
  readonly entry: string;
  readonly item: string;
  readonly step: string;
  readonly tag?: string;
  readonly typed: string;
  readonly unit: string;
  readonly kind: QuantityKind;
  readonly value?: number;
  readonly resolution?: number;
  /** Standard uncertainty of the reading. */
  readonly u?: number;
  readonly at: number;
  readonly person: string;
  readonly phone: string;
  readonly instrument?: string;
  readonly setUp?: string;
  /** The check that reads it together with other places around one rim. */
  readonly around?: string;
  /** The value that the design or the sheet's aim asks for, where this one item is checked alone. */
  readonly nominal?: number;
  readonly afterCovering: boolean;
  /** Read again by someone else, without sight of the first: the entry that it repeats. */
  readonly blindOf?: string;
}

export interface PictureObserved {
  readonly entry: string;
  readonly item: string;
  readonly step: string;
  /** SHA-256 of the bytes. */
  readonly photo: string;
  /** As media found it: 16 hex digits. */
  readonly likeness?: string;
  readonly at: number;
  readonly person: string;
  readonly afterCovering: boolean;
}

export interface ReworkObserved {
  /** Item or check. */
  readonly about: string;
  readonly step: string;
  readonly at: number;
  readonly person: string;
  readonly minutes: number;
}

export interface CallbackObserved {
  readonly entry: string;
  readonly symptom: string;
  readonly day: string;
  readonly cause?: string;
  readonly confirmed: boolean;
  readonly part?: string;
  readonly borneBy?: BorneBy;
  readonly minutes?: number;
  readonly travelMinutes?: number;
  readonly partsCost?: number;
  readonly recovered?: number;
}

/** One bought part of the job. `lot`: the maker's lot, where its card or an entry says it. */
export interface PartObserved {
  readonly part: string;
  readonly serial?: string;
  readonly lot?: string;
  readonly from: string;
  /** Replaced or named as the part of a confirmed callback; absent: still in place on the job's `until`. */
  readonly failed?: string;
  readonly why?: "under warranty" | "sold" | "callback";
}

/** What the company itself keeps: who was taught what, the tape studies, the checks of its instruments. From the company's ledger. */
export interface CompanyObserved {
  readonly taught: readonly Taught[];
  readonly studies: readonly TapeStudy[];
  readonly instrumentChecks: readonly InstrumentCheck[];
  /** The company's tolerance sheets of now, for saying which limits a study leaves undecided. */
  readonly sheets: readonly ToleranceSheet[];
}

export interface Taught {
  readonly entry: string;
  readonly day: string;
  readonly persons: readonly string[];
  readonly step: string;
  readonly note?: string;
}

/** Two or three people, five marks, each twice, blind: every reading of it. */
export interface TapeStudy {
  readonly entry: string;
  readonly day: string;
  readonly instrument: string;
  /** What it rested on: a placing of the tolerance sheet. */
  readonly placing: string;
  readonly readings: readonly StudyReading[];
}

export interface StudyReading {
  readonly person: string;
  readonly mark: string;
  /** 1 or 2. */
  readonly trial: number;
  /** Micrometres. */
  readonly value: number;
}

export interface InstrumentCheck {
  readonly entry: string;
  /** The instrument of the tolerance sheet, or one of the company's own. */
  readonly instrument: string;
  readonly at: number;
  readonly person: string;
  readonly way: InstrumentCheckWay;
  /** What was seen: micrometres over `distance` (micrometres), and what is allowed there. */
  readonly off: number;
  readonly distance: number;
  readonly allowed: number;
}

/** Level turned end for end; laser read both ways at two distances; hook of a tape pushed and pulled against a rule. */
export const instrumentCheckWays = ["level turned", "laser two ways", "tape hook"] as const;
export type InstrumentCheckWay = (typeof instrumentCheckWays)[number];
