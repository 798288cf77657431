/** A code as it is printed; millimetres from the paper's upper left corner. */
export interface PrintedCodeView {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly side: number;
}

/** A mark of the ruler; millimetres. */
export interface RulerMarkView {
  readonly side: "left" | "right";
  /** Below the ruler's upper end. */
  readonly at: number;
  readonly long: number;
  readonly label: string;
}

export interface CardView {
  readonly codes: readonly PrintedCodeView[];
  /** 'Step 3', or what stands for any step. */
  readonly step: string;
  /** What the step is called; empty on the card for any step. */
  readonly title: string;
  /** The step's number, printed as large as there is room; empty on the card for any step. */
  readonly mark: string;
}

/** The view model of the cards of a job that lie in pictures: one page each, every place on it in millimetres. */
export interface CardsPageModel {
  readonly format: 1;
  readonly language: "en" | "es";
  readonly paper: "letter" | "a4";
  readonly width: number;
  readonly height: number;
  readonly words: { readonly kind: string; readonly codes: string };
  readonly company: string;
  readonly title: {
    /** What the document is called outside its pages. */
    readonly document: string;
    readonly job: string;
    readonly ownNumber?: string;
    /** Milliseconds: when the job was opened; the document's own date. */
    readonly at: number;
  };
  /** How a card is laid, and what is to be looked at before. */
  readonly how: readonly string[];
  readonly ruler: { readonly x: number; readonly y: number; readonly length: number; readonly marks: readonly RulerMarkView[] };
  readonly cards: readonly CardView[];
}
