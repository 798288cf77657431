import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, it } from "vitest";
import { columnsOf, readLine, type ToleranceSheet } from "#core/job/index.ts";
import { dayOrders } from "#core/reading/index.ts";
import { csvLine } from "#core/record/index.ts";
import { isoDay, typedDay } from "#core/units/index.ts";
import { parsedTable } from "#functions/edge/tables/parsed.ts";
import { readWarrantyTable } from "#functions/edge/warranties/read-table.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { byteChange, bytesChanged, damagedText, hostileSigns } from "../../helpers/damage.ts";
import { expectRefusal, fuzz, patience } from "../../helpers/fuzz.ts";

const jobs = [
  'number,title,customer,phone,address,crew\n26-1,Elm Street 4,Robin,555-0100,"4 Elm St, Town","Sam; Kim"\n26-2,Oak,,,,\n',
  'sep=;\r\nNúmero;Título;Dirección;Latitud;Longitud\r\n7;"Dos ""aguas""";Calle 4;39,7392;-104,9903\r\n',
  "\ufeffnumber\ttitle\tlocate-called\n1\tPond\t5/4/2026\n2\tPond\t46023\n",
];
const warranties = [
  'number,customer,address,part,start,end,note\n1,Robin,Elm 4,Pump,3/4/2024,3/4/2026,\n2,Kim,Oak 5,Liner,2024-03-04,2034-03-04,"seen; dry"\n',
  "numero;cliente;direccion;pieza;comienzo;meses\n1;Ana;Calle 4;Bomba;4.3.2024;24\n",
];
const pieces = [
  ",",
  ";",
  "\t",
  '"',
  '""',
  "\r\n",
  "\n",
  "sep=",
  'sep="\n',
  "sep=\ud800\n",
  "number",
  "title",
  "constructor",
  "__proto__",
  "46023",
  "2026-02-30",
  "'=",
  ..."=+-@",
  ...hostileSigns,
];
const sheet = defaultSheet();

/** As a spreadsheet may save it: UTF-8, UTF-16 or the western code page, then damaged. */
const bytesOf = (text: string, as: "utf8" | "utf16" | "latin1"): Uint8Array =>
  as === "utf16" ? Buffer.from(`\ufeff${text}`, "utf16le") : Buffer.from(text, as);
const file = (texts: readonly string[]) =>
  fc
    .tuple(damagedText(texts, pieces, 5), fc.constantFrom("utf8", "utf8", "utf16", "latin1"), fc.array(byteChange, { maxLength: 1 }))
    .map(([text, as, changes]) => bytesChanged(bytesOf(text, as as "utf8"), changes));

it(
  "tables of jobs",
  async () => {
    await fuzz({
      kind: "tables of jobs",
      inputs: fc.tuple(file(jobs), fc.constantFrom(...dayOrders), fc.constantFrom(sheet, undefined)),
      read([bytes, order, by]: readonly [Uint8Array, (typeof dayOrders)[number], ToleranceSheet | undefined]) {
        const table = parsedTable(bytes);
        if (!table.ok) return table.refusal;
        const columns = columnsOf(table.value.heads, by);
        expect(columns).toHaveLength(table.value.heads.length);
        for (const { line, cells } of table.value.lines) {
          expect(line).toBeGreaterThan(0);
          const { said, refusals } = readLine(cells, { columns, order, units: "inch", zone: "America/New_York" });
          for (const refusal of refusals) expectRefusal(refusal);
          for (const text of Object.values(said.fields)) expect(text).not.toMatch(/(?![\t\n\r])[\p{Cs}\p{Cc}]/u);
          if (refusals[0]) return refusals[0];
        }
        return "taken";
      },
      least: { taken: 0.1, refused: 0.2 },
    });
  },
  patience(10),
);

it(
  "tables of old warranties",
  async () => {
    await fuzz({
      kind: "tables of old warranties",
      inputs: fc.tuple(damagedText(warranties, pieces, 5), fc.constantFrom(...dayOrders)),
      read([csv, order]) {
        const table = readWarrantyTable(csv, order);
        if (!table.ok) return table.refusal;
        for (const { line, read } of table.value) {
          expect(line).toBeGreaterThan(0);
          if (!read.ok) return read.refusal;
          const { start, end } = read.value;
          expect([start, end].map((day) => isoDay(typedDay(day) ?? { year: 0, month: 0, day: 0 }))).toEqual([start, end]);
        }
        return "taken";
      },
      least: { taken: 0.1, refused: 0.2 },
    });
  },
  patience(10),
);

/** As a spreadsheet cuts a line that takes another sign for the one between cells, and quotation marks for nothing. */
const cellsBy = (line: string, sign: string): readonly string[] =>
  sign === "," ? (parse(line, { record_delimiter: "\r\n" }) as string[][]).flat() : line.split(sign === ";" ? /[;\r\n]/ : /[\t\r\n]/);

it(
  "a table of our own: no cell begins as a formula, whichever sign cuts it, and what we read back is what was typed",
  async () => {
    const head = ["number", "title", "address", "order"];
    const cell = damagedText(
      ["Elm Street 4", "=1+1", "a;=cmd|'x'!A0", "b\t@SUM(A1)", "c\n-1", "'=x", "''+1", "＝1", " =1", '";"=1', '","=1'],
      pieces,
      3,
    )
      .map((text) => text.replaceAll(/[\p{Cs}]/gu, ""))
      .filter((text) => text.length <= 60);
    await fuzz({
      kind: "tables of our own",
      inputs: fc.tuple(cell, cell, cell),
      read([title, address, order]) {
        const line = csvLine(["26-1", title, address, order]);
        for (const sign of [",", ";", "\t"])
          for (const one of cellsBy(line, sign)) expect(one).not.toMatch(/^[\s\u200b\ufeff"]*[=+\-@＝＋－＠]/);
        const table = parsedTable(Buffer.from(`\ufeff${csvLine(head)}${line}`));
        if (!table.ok) return table.refusal;
        const [first] = table.value.lines;
        const columns = columnsOf(table.value.heads, undefined);
        const { said, refusals } = readLine(first?.cells ?? [], { columns, order: "month first", units: "inch", zone: "UTC" });
        if (refusals[0]) return refusals[0];
        // a cell is read without the blanks around it, whatever kind they are; an empty one says nothing
        const typed = (text: string) => text.replaceAll("\u00a0", " ").trim();
        expect([said.fields.title ?? "", said.fields.address ?? "", said.fields.order ?? ""]).toEqual([title, address, order].map(typed));
        return "taken";
      },
      least: { taken: 0.3, refused: 0.02 },
    });
  },
  patience(10),
);

it("a sheet that was once wider, with thousands of empty cells behind every line, is read; one with too many columns is refused", () => {
  const empty = ",".repeat(16_379);
  const table = parsedTable(Buffer.from(`number,title,,${empty}\n1,Elm,${empty}\n2,Oak,aside,${empty}\n`));
  expect(table.ok && table.value.lines.map(({ cells }) => cells.slice(0, 3))).toEqual([
    ["1", "Elm", ""],
    ["2", "Oak", "aside"],
  ]);
  const many = parsedTable(Buffer.from(`number,${"x,".repeat(600)}\n1,2\n`));
  expect(many).toMatchObject({ ok: false, refusal: { code: "table-unreadable", figures: { line: "1" } } });
});

it("what a table may hold is bounded: a million bytes of nothing but signs between cells end soon", { timeout: 60_000 }, () => {
  for (const text of [
    ",".repeat(1_000_000),
    '"'.repeat(1_000_000),
    "\n".repeat(1_000_000),
    "a,".repeat(500_000),
    `${"x".repeat(999_000)}\n1`,
  ] as const) {
    const before = process.cpuUsage();
    const table = parsedTable(Buffer.from(text));
    if (!table.ok) expectRefusal(table.refusal);
    else columnsOf(table.value.heads, sheet);
    const { user } = process.cpuUsage(before);
    expect(user / 1_000).toBeLessThan(5_000);
  }
});
