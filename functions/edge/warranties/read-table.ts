import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { type DayOrder, readDay } from "#core/reading/index.ts";
import { isoDay } from "#core/units/index.ts";
import { lastDayOfCover } from "#core/warranty/index.ts";
import { type OldWarranty, oldWarranty, read } from "#core/wire/index.ts";
import { rowsOfTable } from "../tables/parsed.ts";

/** A row of the table: what it says, or why it does not read. */
export interface TableRow {
  readonly line: number;
  readonly read: Outcome<OldWarranty>;
}

const columns = ["number", "customer", "address", "part", "start", "end", "months", "note", "paper"] as const;
type Column = (typeof columns)[number];

/** The heads of the columns, as companies write them, without accents. */
const heads: Readonly<Record<string, Column>> = {
  number: "number",
  numero: "number",
  customer: "customer",
  cliente: "customer",
  address: "address",
  direccion: "address",
  part: "part",
  pieza: "part",
  start: "start",
  comienzo: "start",
  end: "end",
  fin: "end",
  months: "months",
  meses: "months",
  note: "note",
  nota: "note",
  paper: "paper",
  papel: "paper",
};
const MOST_ROWS = 2000;

const plain = (head: string): string => head.normalize("NFD").replaceAll(/\p{M}/gu, "").trim().toLowerCase();

type Cells = Readonly<Partial<Record<Column, string>>>;

/** The last day: as written, else so many months from the start. */
function endOf(cells: Cells, start: Outcome<{ year: number; month: number; day: number }>, order: DayOrder) {
  const months = (cells.months ?? "").trim();
  if ((cells.end ?? "").trim() !== "" || months === "") return readDay(cells.end ?? "", { order, place: "end" });
  if (!/^\d{1,4}$/.test(months)) return refuse("reading-not-understood", "months", { found: months }, 1);
  return start.ok ? ok(lastDayOfCover(start.value, Number(months))) : start;
}

function rowOf(cells: Cells, order: DayOrder): Outcome<OldWarranty> {
  const start = readDay(cells.start ?? "", { order, place: "start" });
  if (!start.ok) return start;
  const end = endOf(cells, start, order);
  if (!end.ok) return end;
  const optional = Object.fromEntries(
    (["note", "paper"] as const).flatMap((name) => (cells[name]?.trim() ? [[name, cells[name].trim()]] : [])),
  );
  const typed = Object.fromEntries((["number", "customer", "address", "part"] as const).map((name) => [name, (cells[name] ?? "").trim()]));
  const row = { ...typed, start: isoDay(start.value), end: isoDay(end.value), ...optional };
  const shaped = read(oldWarranty, row, "request-shape", "");
  if (!shaped.ok || row.start <= row.end) return shaped;
  return refuse("reading-out-of-range", "end", { found: row.end });
}

const missing = (column: Column): Refusal => refuse("request-shape", `csv/${column}`, { why: "no such column" }).refusal;

/**
 * The rows of a CSV of old warranties. Commas, semicolons or tabs; quoted fields; a byte order mark; days as ISO, with
 * strokes in the company's order, or as Excel counts them. Refuses a table that is none (`table-unreadable`), has no such columns (`request-shape`), or is too long (`batch-size`);
 * a row that does not read is told with its line and takes no other with it.
 */
export function readWarrantyTable(csv: string, order: DayOrder): Outcome<readonly TableRow[]> {
  const table = rowsOfTable(csv, MOST_ROWS, "csv");
  if (!table.ok) return table;
  const [head, ...rows] = table.value;
  const names = (head?.cells ?? []).map((one) => heads[plain(one)]);
  const lacking = (["number", "customer", "address", "part", "start"] as const).find((column) => !names.includes(column));
  if (lacking !== undefined) return { ok: false, refusal: missing(lacking) };
  if (!names.includes("end") && !names.includes("months")) return { ok: false, refusal: missing("end") };
  if (rows.length > MOST_ROWS) return refuse("batch-size", "csv", { entries: rows.length, most: MOST_ROWS });
  const seen = new Set<string>();
  return ok(
    rows.map(({ cells: record, line }) => {
      const cells: Cells = Object.fromEntries(names.flatMap((name, index) => (name === undefined ? [] : [[name, record[index] ?? ""]])));
      const one = rowOf(cells, order);
      const key = one.ok ? JSON.stringify([one.value.number, one.value.part]) : "";
      const isTwice = one.ok && seen.has(key);
      seen.add(key);
      return { line, read: isTwice ? refuse("request-shape", "number", { why: "twice in this table" }) : one };
    }),
  );
}
