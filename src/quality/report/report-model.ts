import type { AnswerView } from "../view/index.ts";

/** The view model of the company owner's printed report: text that is ready to print, and pictures as data. */
export interface ReportModel {
  readonly format: 1;
  readonly language: "en" | "es";
  readonly paper: "letter" | "a4";
  readonly words: {
    readonly page: string;
    readonly of: string;
    readonly decides: string;
    readonly standsOut: string;
    readonly counted: string;
    readonly cut: string;
  };
  readonly company: { readonly name: string; readonly lines: readonly string[] };
  readonly title: {
    /** What the document is called outside the page. */
    readonly document: string;
    readonly page: string;
    /** 'November 2026'. */
    readonly month: string;
    /** Milliseconds: the document's own date. */
    readonly at: number;
  };
  /** What the whole report rests on, and what it does not say. */
  readonly notes: readonly string[];
  /** What stands out in any of its questions, with the question; says so where nothing does. */
  readonly first: readonly { readonly question: string; readonly text: string }[];
  readonly nothingFirst: string;
  readonly answers: readonly AnswerView[];
}
