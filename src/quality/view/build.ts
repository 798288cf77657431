import { message } from "../../job/index.ts";
import type { Answer, Column, Row, Table } from "../question.ts";
import type { AnswerView, TableView } from "./answer-view.ts";
import { cellText, figureText } from "./cells.ts";
import { pictureView } from "./pictures.ts";
import type { QualitySpeaking } from "./speaking.ts";

/** As many rows as a page shows; the CSV has them all. */
export const SHOWN_ROWS = 40;

const inNumbers = ({ kind }: Column): boolean => kind !== "label" && kind !== "word" && kind !== "day";

const headOf = ({ id }: Column, { word }: QualitySpeaking): string => word(`column.${id}`);

const noteOf = ({ note }: Row, { word }: QualitySpeaking): string => (note === undefined ? "" : word(`note.${note.replaceAll(" ", "-")}`));

function tableView({ id, columns, rows }: Table, speaking: QualitySpeaking, most: number): TableView {
  return {
    id,
    title: speaking.word(`table.${id}`),
    heads: columns.map((column) => ({ text: headOf(column, speaking), number: inNumbers(column) })),
    rows: rows.slice(0, most).map((row) => ({
      cells: columns.map(({ kind }, i) => cellText(kind, row.cells[i], speaking)),
      note: noteOf(row, speaking),
    })),
    cut: Math.max(0, rows.length - most),
  };
}

function heldText({ held }: Answer, { say, language }: QualitySpeaking): string {
  if (held.rule === "none") return "";
  return say(
    message(`held-by-${held.rule.toLowerCase()}`, { comparisons: held.comparisons, alpha: figureText(held.alpha * 100, language) }),
  );
}

/** An answer in words, in the reader's language and units. */
export function answerView(answer: Answer, speaking: QualitySpeaking, most: number = SHOWN_ROWS): AnswerView {
  const { say, word, name } = speaking;
  return {
    id: answer.id,
    title: word(`title.${answer.id}`),
    decides: word(answer.decides),
    tooFew: answer.tooFew === undefined ? "" : say(answer.tooFew),
    says: answer.says.map(say),
    signals: answer.signals.map(({ about, says }) => say({ ...says, figures: { about: name(about), ...says.figures } })),
    held: heldText(answer, speaking),
    counted: answer.counted.map(say),
    pictures: answer.pictures.flatMap((picture) => pictureView(picture, speaking) ?? []),
    tables: answer.tables.map((table) => tableView(table, speaking, most)),
  };
}

/** A whole table for a spreadsheet: an interval's ends in columns of their own, values as they are kept. */
export function tableLines({ columns, rows }: Table, speaking: QualitySpeaking): readonly (readonly (string | number | undefined)[])[] {
  const ends = columns.map((_, i) => rows.some((row) => row.cells[i]?.low !== undefined || row.cells[i]?.high !== undefined));
  const [from, to] = [speaking.word("csv-low"), speaking.word("csv-high")];
  const heads = columns.flatMap((column, i) => {
    const head = column.kind === "share" ? `${headOf(column, speaking)} (0-1)` : headOf(column, speaking);
    return ends[i] ? [head, `${head}: ${from}`, `${head}: ${to}`] : [head];
  });
  const lines = rows.map((row) => [
    ...columns.flatMap(({ kind }, i) => {
      const cell = row.cells[i];
      const value = kind === "word" || cell?.label !== undefined ? cellText(kind, cell, speaking) : cell?.value;
      return ends[i] ? [value, cell?.low, cell?.high] : [value];
    }),
    noteOf(row, speaking),
  ]);
  return [[...heads, speaking.word("csv-note")], ...lines];
}
