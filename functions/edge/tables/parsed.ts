import { CsvError, parse } from "csv-parse/browser/esm/sync";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

/** Lines of one table: a day of an office that moves in from spreadsheets. */
export const MOST_LINES = 500;

/** Cells of one line: far more than a table of jobs has columns (own). Every head is compared with every name of the tolerance sheet. */
const MOST_CELLS = 500;
/** Signs of one line, some ten times the longest that fits into a job (own). */
const MOST_SIGNS = 200_000;

export interface TableText {
  readonly heads: readonly string[];
  readonly lines: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/** The text of a file as spreadsheets save it: UTF-8 with or without its mark, UTF-16 with it, else the western code page. */
export function textOfTable(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: false }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** The sign between cells: what the file says of itself, else the one of which its first line has most outside quotation marks. */
export function delimiterOf(text: string): { readonly delimiter: string; readonly from: number } {
  const said = /^sep=(.)\r?\n/i.exec(text);
  if (said?.[1] !== undefined) return { delimiter: said[1], from: said[0].length };
  const counts = new Map([",", ";", "\t"].map((sign) => [sign, 0]));
  let quoted = false;
  for (const sign of text) {
    if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === "\n" || sign === "\r")) break;
    else if (!quoted && counts.has(sign)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  }
  const [delimiter = ","] = [...counts].reduce((best, one) => (one[1] > best[1] ? one : best));
  return { delimiter, from: 0 };
}

interface Parsed {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/** Every row of a table that is not empty, `most` and one more at the most, with its line in the file. `place`: what a refusal names. Refuses `table-unreadable`. */
export function rowsOfTable(
  text: string,
  most: number,
  place: string,
): Outcome<readonly { readonly line: number; readonly cells: readonly string[] }[]> {
  const { delimiter, from } = delimiterOf(text);
  const before = from > 0 ? 1 : 0;
  try {
    const options = {
      bom: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      to: most + 2,
      max_record_size: MOST_SIGNS,
    };
    const rows = parse(text.slice(from), options as never) as unknown as readonly Parsed[];
    // a sheet that was once wider is saved with thousands of empty cells behind each line
    const said = rows.flatMap(({ record, info }) => {
      const filled = record.findLastIndex((cell) => cell.trim() !== "") + 1;
      return filled === 0 ? [] : [{ line: info.lines + before, cells: record.slice(0, Math.max(filled, MOST_CELLS)) }];
    });
    const long = said.find(({ cells }) => cells.length > MOST_CELLS);
    if (long) return refuse("table-unreadable", place, { line: String(long.line), why: "CELLS" });
    return ok(said);
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    return refuse("table-unreadable", place, { line: String((thrown as { lines?: number }).lines ?? ""), why: thrown.code });
  }
}

/** A table's heads and its lines that are not empty. Refuses `table-unreadable`, `table-empty`, `table-too-long`. */
export function parsedTable(bytes: Uint8Array): Outcome<TableText> {
  const rows = rowsOfTable(textOfTable(bytes), MOST_LINES, "file");
  if (!rows.ok) return rows;
  const [head, ...lines] = rows.value;
  if (head === undefined || lines.length === 0) return refuse("table-empty", "file", {});
  if (lines.length > MOST_LINES) return refuse("table-too-long", "file", { most: MOST_LINES });
  return ok({ heads: head.cells, lines });
}
