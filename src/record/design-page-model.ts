import type { LabelledText, Tone } from "./model.ts";
import type { DrawingView } from "./model-drawn.ts";

/** One figure with its doubt and where most of that comes from. */
export interface DesignFigureView {
  readonly title: string;
  /** '45 gpm ± 3.9 gpm', or the answer that stands in its place. */
  readonly value: string;
  /** 'static head 62 %; the pipe's C 20 %; ...', shares of the variance, largest first; empty where there is no doubt. */
  readonly most: string;
}

/** One question before the dig with its answer. */
export interface DesignQuestionView {
  readonly number: number;
  readonly question: string;
  readonly state: string;
  readonly tone: Tone;
  /** The answer in words; empty where the state says it all. */
  readonly says: string;
  /** What to change and by how much. */
  readonly changes: readonly string[];
  /** Figures that it waits for, by name, in one sentence; empty where it waits for none. */
  readonly missing: string;
  /** What else goes with it: figures of the program's own, what cannot be read, its caution. */
  readonly beside: readonly string[];
  readonly figures: readonly DesignFigureView[];
}

/** Numbers from one place: the design or one kit card. */
export interface NumbersUsedView {
  readonly from: string;
  /** The paper that a kit card was filled from. */
  readonly source: string;
  readonly numbers: readonly LabelledText[];
}

/** The view model of the printed design check: one page, as text that is ready to print. */
export interface DesignPageModel {
  readonly format: 1;
  readonly language: "en" | "es";
  readonly paper: "letter" | "a4";
  readonly words: {
    readonly question: string;
    readonly answer: string;
    readonly figures: string;
    readonly change: string;
    readonly numbers: string;
    readonly cautions: string;
    readonly page: string;
    readonly of: string;
  };
  readonly company: { readonly name: string; readonly lines: readonly string[] };
  readonly title: {
    /** What the document is called outside the page: 'Design check: …'. */
    readonly document: string;
    readonly page: string;
    readonly job: string;
    readonly ownNumber?: string;
    readonly lines: readonly LabelledText[];
    /** Milliseconds: when the design became what it is; the document's own date. */
    readonly at: number;
  };
  /** Which questions come to what, by their numbers. */
  readonly standing: string;
  readonly questions: readonly DesignQuestionView[];
  /** Absent where neither curve is known; `notes` says what it waits for. */
  readonly drawing?: DrawingView;
  readonly notes: readonly string[];
  readonly numbers: readonly NumbersUsedView[];
  readonly cautions: readonly string[];
}
