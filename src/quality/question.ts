import type { Message } from "../job/index.ts";
import type { CompanyObserved, JobObserved } from "./observation.ts";

/** The owner's questions, in the order in which they are asked. */
export const questionIds = [
  "first-time-right",
  "tape-study",
  "instruments",
  "readings-that-carry-nothing",
  "second-look",
  "cost",
  "worth-of-holds",
  "came-back",
  "look-at-first",
  "foremen",
  "taught",
  "over-time",
  "changed-limit",
  "sampling",
] as const;
export type QuestionId = (typeof questionIds)[number];

/** The parts of a job's rows that a question reads: what an edge has to fetch for it, beside job, title, sheet, days and people. */
export type ObservedPart = "coverings" | "findings" | "readings" | "pictures" | "reworks" | "callbacks" | "parts";

/** A company as the questions see it. */
export interface Observed {
  readonly jobs: readonly JobObserved[];
  readonly company: CompanyObserved;
}

/** What the owner may set; everything has a stated default (`asked.ts`). */
export interface Asking {
  /** The day up to which is counted, 'YYYY-MM-DD'. Handed in: the core knows no present. */
  readonly today: string;
  /** Persons are compared and named only where this is true. */
  readonly persons: boolean;
  /** Chance with which an interval misses, and with which any one question says something of a company where nothing is. */
  readonly alpha: number;
  /** Only jobs installed in these days, both of them counted. */
  readonly from?: string;
  readonly to?: string;
  /** Sampling: how many lie there, how many were looked at, how many of them were off, with what certainty. */
  readonly sample?: { readonly lot: number; readonly looked: number; readonly off: number };
  /** Changed limit: what a limit would be, in the fixed unit of the check's kind. */
  readonly limit?: { readonly check: string; readonly lower?: number; readonly upper?: number };
}

/**
 * The answer to one question. Words are keys of `words-en.ts` / `words-es.ts` with their figures; whoever shows it puts in the
 * names that a `Label` stands for.
 */
export interface Answer {
  readonly id: QuestionId;
  /** `<id>.decides`: the decision it serves and what would change it, one sentence. */
  readonly decides: string;
  /** What it says, the main thing first. */
  readonly says: readonly Message[];
  /** Too few to tell, and what it would take; said before anything else. */
  readonly tooFew?: Message;
  /** What was counted: jobs, coverings, readings ... and what was left out and why. */
  readonly counted: readonly Message[];
  /** What stands out beyond the stated error rate, the strongest first. */
  readonly signals: readonly Signal[];
  /** How many comparisons were made, and by what rule the chance of a false one over all of them is held to alpha. */
  readonly held: { readonly comparisons: number; readonly alpha: number; readonly rule: "Holm" | "Bonferroni" | "none" };
  readonly tables: readonly Table[];
  readonly pictures: readonly Picture[];
}

/** Something that chance alone would not show, at the error rate that its question states. */
export interface Signal {
  readonly about: Label;
  /** Which effect: closed list, also for tests. */
  readonly what: SignalKind;
  /** Chance of it where nothing is, before the number of comparisons is taken into account; 0 where it is no matter of chance. */
  readonly p: number;
  readonly says: Message;
}

export const signalKinds = [
  "step goes wrong more often",
  "foreman goes wrong more often",
  "before and after differ",
  "typed the nominal",
  "equal corners",
  "same set on two jobs",
  "entered within seconds",
  "entered after the covering",
  "picture used again",
  "second look differs",
  "instrument off",
  "instrument drifts",
  "item never finds anything",
  "part fails",
  "comes back by season",
  "holds the rod differently",
] as const;
export type SignalKind = (typeof signalKinds)[number];

/** What a row or a point is about; `id` is that of the sheet, the job, the person ... `text`: shown as it is. */
export interface Label {
  readonly of:
    | "step"
    | "covering"
    | "check"
    | "item"
    | "person"
    | "crew"
    | "instrument"
    | "placing"
    | "part"
    | "job"
    | "month"
    | "day"
    | "word"
    | "text";
  readonly id: string;
  /** The tolerance sheet that it stands in, for steps, coverings, checks, items, instruments and placings. */
  readonly sheet?: string;
}

/** How a cell is printed. `share`: 0 to 1. `fixed`: an integer in the fixed unit of the cell's `kind`. `money`: hundredths. */
export type ColumnKind = "label" | "count" | "number" | "share" | "minutes" | "money" | "fixed" | "day" | "word" | "probability";

export interface Column {
  /** Key of its heading: `column.<id>`. */
  readonly id: string;
  readonly kind: ColumnKind;
}

/** One cell. Absent values print as a dash. */
export interface Cell {
  readonly value?: number | string;
  /** Interval that goes with it, at the answer's alpha. */
  readonly low?: number;
  readonly high?: number;
  /** Kind of quantity for `fixed`. */
  readonly kind?: string;
  readonly label?: Label;
}

export interface Row {
  readonly cells: readonly Cell[];
  /** Said beside the row: too few to tell; stands out. */
  readonly note?: "too few to tell" | "stands out";
}

export interface Table {
  /** Key of its heading: `table.<id>`. */
  readonly id: string;
  readonly columns: readonly Column[];
  /** In the order in which they are shown. */
  readonly rows: readonly Row[];
}

/** What a picture draws, as data; each has its table in the same answer, named by `table`. Titles are `picture.<id>`. */
export type Picture = IntervalsPicture | ControlPicture | CurvePicture | FunnelPicture | BarsPicture;

interface Drawn {
  readonly id: string;
  readonly table: string;
  /** Where an answer has several pictures of one kind: what this one is about, named in its title. */
  readonly about?: Label;
  /** How numbers on the value's axis are printed. */
  readonly axis: { readonly kind: ColumnKind; readonly quantity?: string };
}

/** A point with its interval for each row. `against`: the value of all together. */
export interface IntervalsPicture extends Drawn {
  readonly draws: "intervals";
  readonly points: readonly { readonly label: Label; readonly value: number; readonly low: number; readonly high: number }[];
  readonly against?: number;
  /** What `against` is, where it is not the value of all together. */
  readonly againstIs?: "no change";
}

/** Values in order with centre line and limits, which may change from point to point. */
export interface ControlPicture extends Drawn {
  readonly draws: "control chart";
  readonly chart: "individuals" | "moving range" | "c" | "u" | "p" | "jobs between events";
  readonly points: readonly ControlPoint[];
  /** Vertical lines: a check of the instrument, somebody taught, a change of crew. */
  readonly marks: readonly { readonly at: number; readonly says: Message }[];
}

export interface ControlPoint {
  /** Place in order, from 1. */
  readonly x: number;
  readonly label: Label;
  readonly at: number;
  readonly value: number;
  readonly centre: number;
  readonly lower?: number;
  readonly upper: number;
  /** Which rule it breaks. */
  readonly breaks?: "beyond the limits" | "run on one side";
}

/** Steps of a survival or operating curve, one or more lines. */
export interface CurvePicture extends Drawn {
  readonly draws: "curve";
  readonly shape: "steps" | "smooth";
  /** Heading of the x axis: `axis.<id>`. */
  readonly xAxis: string;
  readonly lines: readonly {
    readonly label: Label;
    readonly points: readonly { readonly x: number; readonly y: number; readonly low?: number; readonly high?: number }[];
  }[];
}

/** A share against the number that it is out of, with the limits that chance alone would keep. */
export interface FunnelPicture extends Drawn {
  readonly draws: "funnel";
  readonly points: readonly { readonly label: Label; readonly n: number; readonly share: number }[];
  readonly centre: number;
  readonly limits: readonly { readonly n: number; readonly lower: number; readonly upper: number }[];
}

export interface BarsPicture extends Drawn {
  readonly draws: "bars";
  readonly bars: readonly { readonly label: Label; readonly value: number; readonly expected?: number }[];
}

/** A question: which parts of the rows it reads, and how it is answered. Pure. */
export interface Question {
  readonly id: QuestionId;
  readonly reads: readonly ObservedPart[];
  /** What it goes by of one job, where that is less than it reads: rows are read some at a time, and only this is held of them. */
  readonly keeps?: (company: CompanyObserved) => (job: JobObserved) => JobObserved;
  readonly answer: (observed: Observed, asking: Asking) => Answer;
}
