import type { PictureView } from "../picture/view.ts";
import type { QuestionId } from "../question.ts";

/** One table as text; `cut`: how many rows the whole table has more. */
export interface TableView {
  readonly id: string;
  readonly title: string;
  readonly heads: readonly { readonly text: string; readonly number: boolean }[];
  readonly rows: readonly RowView[];
  readonly cut: number;
}

export interface RowView {
  readonly cells: readonly string[];
  /** 'too few to tell', 'stands out', in the reader's language; empty where there is nothing to say. */
  readonly note: string;
}

/** The answer to one question in the reader's language, as screens and the printed report show it. */
export interface AnswerView {
  readonly id: QuestionId;
  readonly title: string;
  /** The decision that it serves, and what would change it. */
  readonly decides: string;
  /** Said before anything else; empty where there is enough to tell. */
  readonly tooFew: string;
  readonly says: readonly string[];
  readonly signals: readonly string[];
  /** The error rate that holds for all its comparisons together. */
  readonly held: string;
  readonly counted: readonly string[];
  readonly pictures: readonly PictureView[];
  readonly tables: readonly TableView[];
}
