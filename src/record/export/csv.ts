import { guarded } from "../../job/index.ts";

/** One cell: text as somebody typed it, or a number of the program's own. */
export type Cell = string | number | undefined;

function cellText(cell: Cell): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : "";
  // a sign before it makes it text everywhere; reading it back takes the sign away again
  const text = guarded(cell);
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** One line of a CSV as RFC 4180 has it, its end included. Text that would be a formula is guarded by an apostrophe. */
export const csvLine = (cells: readonly Cell[]): string => `${cells.map(cellText).join(",")}\r\n`;

/** What stands before a table so that spreadsheets read it as UTF-8. */
export const CSV_MARK = "\ufeff";
