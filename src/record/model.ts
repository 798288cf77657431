import type { Verdict } from "../job/index.ts";
import type { BudgetView, ComparedView, GlueSessionView, PaperPoint, PlanView, SectionView, TiedView, TriedView } from "./model-drawn.ts";

/**
 * The record's view model: everything that is printed, as text that is ready to print, in the order of the pages.
 * Templates do no sums and no look-ups. Dates are text in the site's zone with the zone named. Names are already those
 * of the edition (role and initials in the customer's, unless the company says otherwise).
 */
export interface RecordModel {
  readonly format: 1;
  readonly edition: "customer" | "company";
  readonly language: "en" | "es";
  readonly paper: "letter" | "a4";
  /** Headings and fixed words of the templates, by key, in the record's language. */
  readonly words: Readonly<Record<string, string>>;
  readonly company: {
    readonly name: string;
    readonly lines: readonly string[];
    /** Its mark as the company sent it, SHA-256, and the key of what prints of it. */
    readonly mark?: { readonly photo: string; readonly rendition: string };
    /** `#rrggbb`; that of words is absent where it could not be read on white. */
    readonly colours?: { readonly lines: string; readonly words?: string };
  };
  readonly title: {
    readonly record: string;
    readonly job: string;
    readonly ownNumber?: string;
    readonly version: number;
    readonly issued: string;
    /** Milliseconds; the document's own date, never the printer's clock. */
    readonly issuedAt: number;
    readonly lines: readonly LabelledText[];
  };
  /** One sentence: every covering, and what to read first. */
  readonly standing: string;
  /** What was built and what is buried where, for the first page. */
  readonly summary: SummaryView;
  readonly numbers: readonly LabelledText[];
  /** What is otherwise than in the version issued before; absent in a first one. */
  readonly changed?: ChangedView;
  readonly exceptions: readonly ExceptionView[];
  readonly coverings: readonly CoveringView[];
  /** What is due besides coverings: before digging, handing over. Never called clear. */
  readonly due: readonly DueView[];
  readonly steps: readonly StepView[];
  readonly accepted: readonly DecisionView[];
  readonly leftToDo: readonly { readonly text: string; readonly by: string; readonly state: string }[];
  readonly visits: readonly VisitView[];
  /** Notes for the record that belong to no step. */
  readonly notes: readonly string[];
  /** Whatever else was entered: callbacks, service, opened late, versions issued, entries of a kind that is not known. */
  readonly others: readonly OtherView[];
  /** Entries that were corrected, withdrawn or moved. */
  readonly corrections: readonly CorrectionView[];
  readonly papers: readonly LabelledText[];
  readonly paperPictures: readonly PictureView[];
  /** Papers as PDF, in the order of the work; print binds them in where it can. Absent where there are none. */
  readonly enclosures?: readonly EnclosureView[];
  /** The design as it now stands; its changes are among what was decided. */
  readonly design: readonly LabelledText[];
  /** Figures of the design beside what was measured of them. */
  readonly compared: readonly ComparedView[];
  /** Absent where no figure of it can be worked out. */
  readonly budget?: { readonly lines: readonly BudgetView[]; readonly notes: readonly string[] };
  readonly glueSessions: readonly GlueSessionView[];
  /** Start-up and leak tests. */
  readonly tried: readonly TriedView[];
  /** Absent where nothing was tied to marks. */
  readonly plan?: PlanView;
  /** Absent without the rim's height and the basin's depth. */
  readonly section?: SectionView;
  readonly equipment: readonly { readonly part: string; readonly facts: readonly LabelledText[] }[];
  /** How to run it through the year; absent without a tolerance sheet. */
  readonly upkeep?: UpkeepView;
  readonly cautions: readonly string[];
  readonly warranty: { readonly terms: readonly WarrantyTermView[]; readonly text: readonly string[]; readonly note: string };
  readonly signature: readonly LabelledText[];
  readonly proof: {
    readonly head: string;
    readonly entries: number;
    readonly rules: number;
    /** Thumbprint of the key that seals it (RFC 7638). */
    readonly key?: string;
    readonly sheet: string;
    readonly how: readonly string[];
    readonly withheld: string;
  };
  /** Every finding with the sentence that is printed for it. */
  readonly findings: readonly FindingView[];
}

export interface EnclosureView {
  /** SHA-256 of the file. */
  readonly paper: string;
  readonly title: string;
  /** What kind of paper it is, and who added it. */
  readonly says: string;
}

export interface LabelledText {
  readonly label: string;
  readonly text: string;
}

export interface SummaryView {
  readonly built: readonly LabelledText[];
  /** Buried points by their number on the plan, with their distances from the marks. */
  readonly buried: readonly Pick<TiedView, "sign" | "name" | "ties">[];
  /** 'A nail in the sill; B corner of the wall'; empty where nothing was tied. */
  readonly marks: string;
}

export interface UpkeepView {
  /** 'Running it', 'Winter' ..., each with its sentences. */
  readonly parts: readonly { readonly title: string; readonly lines: readonly string[] }[];
  /** What rests on figures and what is common practice. */
  readonly note: string;
}

export interface ChangedView {
  /** 'Changed since version 1' */
  readonly title: string;
  readonly says: readonly string[];
  readonly lines: readonly LabelledText[];
  /** Said where there are no lines. */
  readonly none?: string;
}

/** How a row is drawn: shape and word always say what the tone says. */
export type Tone = "within" | "outside" | "undecided" | "missing" | "apart";

export interface FindingView {
  readonly step: string;
  readonly stepTitle: string;
  readonly check: string;
  readonly title: string;
  readonly tag?: string;
  readonly verdict: Verdict;
  /** As printed, in the record's language: where there was no limit, that it was taken or is as asked. */
  readonly verdictWord: string;
  readonly tone: Tone;
  /** Where it prints: among what was measured or is not as asked, in the list of what is as asked, or under its picture. */
  readonly shown: "table" | "list" | "picture";
  readonly says: string;
  readonly value?: string;
  readonly doubt?: string;
  readonly aim?: string;
  readonly limit?: string;
  readonly source?: string;
  /** Numbers of the ledger's entries that it rests on. */
  readonly entries: readonly number[];
}

export interface StepView {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly cautions: readonly string[];
  /** What the step's numbered places and tags stand for. */
  readonly explains: readonly string[];
  readonly findings: readonly FindingView[];
  /** Readings as first typed: 'rim, place 1: 24 3/8 in, wiped rim, 8:14'. */
  readonly readings: readonly ReadingView[];
  readonly pictures: readonly PictureView[];
  readonly notes: readonly string[];
}

export interface ReadingView {
  readonly title: string;
  readonly typed: string;
  readonly how: string;
  readonly when: string;
  readonly number?: number;
  /** The set-up that it was read from; readings of one set-up follow each other. */
  readonly setUp?: string;
  /** What it was corrected to, by whom and why; it counts as corrected. */
  readonly corrected?: string;
  /** Before rework, withdrawn, moved, or not counted: said in words; such a reading no longer counts. */
  readonly aside?: string;
  /** What a photo with a card in it measured beside it. */
  readonly inPhoto?: string;
}

export interface PictureView {
  readonly title: string;
  readonly caption: string;
  /** SHA-256 of the original, hex. */
  readonly photo: string;
  /** Key of the rendition to print; absent: not at the office yet, or unreadable; `missing` then says which. */
  readonly rendition?: string;
  readonly missing?: string;
  readonly width?: number;
  readonly height?: number;
  /** 'made 12 May 2026 9:14 EDT, received 14 May 2026 7:02 EDT' */
  readonly when: string;
  readonly place: string;
  readonly lookedAt: string;
  readonly alt: string;
  /** The finding that it settles, which prints in the place of its title. */
  readonly finding?: FindingView;
  readonly number?: number;
  /** Absent where nothing was measured in it. */
  readonly measured?: MeasuredPhotoView;
}

/** What was measured in a photo, drawn over it: pixels of the upright original, which is `width` by `height`. */
export interface MeasuredPhotoView {
  readonly width: number;
  readonly height: number;
  /** Fewer than sentences where a line's ends cannot be seen in what prints. */
  readonly lines: readonly PhotoLineView[];
  readonly says: readonly string[];
}

export interface PhotoLineView {
  /** The line, and a tick at each end. */
  readonly strokes: readonly (readonly PaperPoint[])[];
  readonly thick: number;
  /** Light ground of its words. */
  readonly plate: PaperPoint & { readonly width: number; readonly height: number };
  /** Middle of the words' base line, and their size. */
  readonly at: PaperPoint;
  readonly size: number;
  /** '11 1/2 in ± 5/64 in' */
  readonly text: string;
}

export interface DueView {
  readonly title: string;
  readonly state: string;
  readonly tone: Tone;
  readonly lines: readonly string[];
}

export interface VisitView {
  readonly begun: string;
  readonly ended: string;
  readonly people: string;
  /** What stayed open afterwards, and notes of its beginning and end. */
  readonly says: string;
}

export interface OtherView {
  readonly text: string;
  readonly by: string;
  readonly when: string;
  readonly number?: number;
}

export interface CorrectionView {
  readonly title: string;
  /** As first entered; empty where that is no one thing. */
  readonly was: string;
  readonly became: string;
  readonly when: string;
  readonly number?: number;
}

export interface CoveringView {
  readonly title: string;
  readonly state: string;
  readonly tone: Tone;
  readonly when: string;
  readonly clearance: string;
  readonly lines: readonly string[];
}

export interface ExceptionView {
  readonly title: string;
  readonly verdictWord: string;
  readonly tone: Tone;
  readonly says: string;
}

export interface DecisionView {
  readonly title: string;
  readonly kind: string;
  readonly says: string;
  readonly by: string;
  readonly when: string;
}

export interface WarrantyTermView {
  readonly part: string;
  readonly lasts: string;
  readonly starts: string;
  readonly ends: string;
  readonly conditions: string;
}
