import { CsvError, parse } from "csv-parse/browser/esm/sync";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

/** Lines of one table: a day of an office that moves in from spreadsheets. */
export const MOST_LINES = 500;

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

/** A table's heads and its lines that are not empty. Refuses `table-unreadable`, `table-empty`, `table-too-long`. */
export function parsedTable(bytes: Uint8Array): Outcome<TableText> {
  const text = textOfTable(bytes);
  const { delimiter, from } = delimiterOf(text);
  let rows: readonly Parsed[];
  try {
    const options = { bom: true, delimiter, info: true, relax_column_count: true, skip_empty_lines: true, to: MOST_LINES + 2 };
    rows = parse(text.slice(from), options as never) as unknown as readonly Parsed[];
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    return refuse("table-unreadable", "file", { line: String((thrown as { lines?: number }).lines ?? ""), why: thrown.code });
  }
  const [head, ...lines] = rows.filter(({ record }) => record.some((cell) => cell.trim() !== ""));
  if (head === undefined || lines.length === 0) return refuse("table-empty", "file", {});
  if (lines.length > MOST_LINES) return refuse("table-too-long", "file", { most: MOST_LINES });
  const before = from > 0 ? 1 : 0;
  return ok({ heads: head.record, lines: lines.map(({ record, info }) => ({ line: info.lines + before, cells: record })) });
}
