import { type Outcome, ok, type Refusal, refuse } from "../../outcome/index.ts";
import { type DayOrder, readDay, readQuantity } from "../../reading/index.ts";
import { zonedText } from "../../units/index.ts";
import type { Typed } from "../fact.ts";
import { askedOf } from "../measured.ts";
import { type Column, placeOfColumn, type TableField } from "./columns.ts";
import { unguarded } from "./formula.ts";

/** How the cells of a table are read. */
export interface TableAsked {
  readonly columns: readonly Column[];
  readonly order: DayOrder;
  readonly units: "inch" | "metric";
  /** In which days and times stand. */
  readonly zone: string;
}

/** What one line says; what it leaves empty it says nothing of. */
export interface LineSaid {
  readonly fields: Readonly<Partial<Record<TableField, string>>>;
  readonly figures: Readonly<Record<string, Typed | "unknown">>;
  readonly readings: readonly { readonly item: string; readonly typed: string; readonly unit: string }[];
}

const UNKNOWN: ReadonlySet<string> = new Set(["unknown", "no se sabe"]);
/** As long as a cell of each kind may be; as the entries that are made of them. */
const LONGEST: Readonly<Partial<Record<TableField, number>>> = {
  title: 200,
  address: 300,
  heightMark: 200,
  tieMarks: 3000,
  "customer-name": 120,
  "onSite-name": 120,
  "receiver-name": 120,
  "customer-phone": 60,
  "onSite-phone": 60,
  "receiver-phone": 60,
  "customer-contact": 200,
  "onSite-contact": 200,
  "receiver-contact": 200,
};
const LONGEST_ELSE = 80;
const isoInstant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})$/;

/** A day or time of a spreadsheet as an instant with its zone; one that has its zone already stays as it is. */
function instantOf(text: string, { order, zone }: TableAsked, place: string): Outcome<string> {
  if (isoInstant.test(text)) return ok(text);
  const day = readDay(text, { order, place });
  return day.ok ? ok(zonedText(day.value, zone)) : day;
}

function readingOf(column: Column & { is: "reading" }, text: string, asked: TableAsked): Outcome<LineSaid["readings"][number]> {
  const { item } = column;
  const unit = item.unit?.[asked.units] ?? "";
  const typed = item.quantity === "instant" ? instantOf(text, asked, item.id) : ok(text);
  if (!typed.ok) return typed;
  const read = readQuantity(typed.value, { ...askedOf(item, unit), place: item.id });
  return read.ok ? ok({ item: item.id, typed: typed.value, unit }) : read;
}

function figureOf({ figure }: Column & { is: "figure" }, text: string): Outcome<Typed | "unknown"> {
  if (UNKNOWN.has(text.toLowerCase())) return ok("unknown");
  const unit = figure.unit ?? "";
  if (figure.kind === "text") return ok({ typed: text, unit });
  const read = readQuantity(text, { kind: figure.kind, unit, signed: true, place: figure.id });
  return read.ok ? ok({ typed: text, unit }) : read;
}

function fieldFault(field: TableField, text: string): Refusal | undefined {
  const most = LONGEST[field] ?? LONGEST_ELSE;
  return text.length > most ? refuse("table-cell-long", field, { characters: text.length, most }).refusal : undefined;
}

/** Reads the cells of one line. Everything that cannot be taken of it, each with its column as place. */
export function readLine(cells: readonly string[], asked: TableAsked): { readonly said: LineSaid; readonly refusals: readonly Refusal[] } {
  const fields: Partial<Record<TableField, string>> = {};
  const figures: Record<string, Typed | "unknown"> = {};
  const readings: LineSaid["readings"][number][] = [];
  const refusals: Refusal[] = [];
  for (const [i, column] of asked.columns.entries()) {
    const text = unguarded((cells[i] ?? "").replaceAll("\u00a0", " ")).trim();
    if (text === "" || column.is === "unread") continue;
    const place = placeOfColumn(column);
    if (/[\p{Cc}\p{Cs}\ufffd]/u.test(text.replaceAll(/[\n\r\t]/g, " "))) {
      refusals.push(refuse("table-cell-signs", place).refusal);
    } else if (column.is === "field") {
      const fault = fieldFault(column.field, text);
      if (fault) refusals.push(fault);
      else fields[column.field] = text;
    } else if (column.is === "figure") {
      const figure = figureOf(column, text);
      if (figure.ok) figures[column.figure.id] = figure.value;
      else refusals.push(figure.refusal);
    } else {
      const reading = readingOf(column, text, asked);
      if (reading.ok) readings.push(reading.value);
      else refusals.push(reading.refusal);
    }
  }
  if (cells.slice(asked.columns.length).some((cell) => cell.trim() !== "")) refusals.push(refuse("table-cells-more", "").refusal);
  return { said: { fields, figures, readings }, refusals };
}
