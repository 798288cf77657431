import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isoDay, typedDay } from "#core/units/index.ts";
import { lastDayOfCover } from "#core/warranty/index.ts";
import { readWarrantyTable } from "#functions/edge/warranties/read-table.ts";

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
/** What a company may have typed; a cell is read without the blanks around it, and an empty one is none. */
const cell = fc
  .string({ unit: "grapheme", minLength: 1, maxLength: 40 })
  .map((text) => text.replaceAll("\u0000", "").trim())
  .filter((text) => text !== "");
const day = fc.date({ min: new Date("2000-01-01T00:00:00Z"), max: new Date("2060-12-31T00:00:00Z"), noInvalidDate: true });
const row = fc.record({
  number: fc.integer({ min: 1, max: 1e9 }),
  customer: cell,
  address: cell,
  part: cell,
  start: day,
  months: fc.integer({ min: 0, max: 480 }),
  note: cell,
});

describe("a table of old warranties", () => {
  it("whatever its cells hold, and whichever sign stands between them, comes back as it was typed", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(row, { minLength: 1, maxLength: 5, selector: ({ number }) => number }),
        fc.constantFrom(",", ";", "\t"),
        fc.constantFrom("\n", "\r\n"),
        fc.boolean(),
        (rows, sign, end, isMarked) => {
          const head = ["number", "customer", "address", "part", "start", "months", "note"].join(sign);
          const lines = rows.map(({ number, customer, address, part, start, months, note }) =>
            [String(number), customer, address, part, start.toISOString().slice(0, 10), String(months), note].map(quoted).join(sign),
          );
          const read = readWarrantyTable(`${isMarked ? "\ufeff" : ""}${[head, ...lines].join(end)}${end}`, "month first");
          const first = (text: string) => typedDay(text) ?? { year: 0, month: 0, day: 0 };
          expect(read.ok && read.value.map((one) => (one.read.ok ? one.read.value : one.read.refusal))).toEqual(
            rows.map(({ number, customer, address, part, start, months, note }) => {
              const iso = start.toISOString().slice(0, 10);
              const last = isoDay(lastDayOfCover(first(iso), months));
              return { number: String(number), customer, address, part, start: iso, end: last, note };
            }),
          );
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  });

  it("never throws: any text at all is a table, or is refused", () => {
    const pieces = fc.constantFrom(
      '"',
      ",",
      ";",
      "\n",
      "\r",
      "\t",
      "number",
      "customer",
      "address",
      "part",
      "start",
      "end",
      "2026-02-30",
      "46023",
      "x",
      "\ufeff",
      "\u0000",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: "binary", maxLength: 200 }),
          fc.array(pieces, { maxLength: 60 }).map((all) => all.join("")),
        ),
        (text) => {
          const read = readWarrantyTable(text, "day first");
          if (!read.ok) expect(["request-shape", "batch-size", "table-unreadable"]).toContain(read.refusal.code);
        },
      ),
      { numRuns: 400, seed: 11 },
    );
  });

  it("a quotation mark that never ends is told with its line", () => {
    const read = readWarrantyTable('number,customer,address,part,start,end\n1,a,b,c,2026-03-04,2027-05-06\n2,"a', "day first");
    expect(!read.ok && read.refusal).toMatchObject({ code: "table-unreadable", place: "csv", figures: { line: "3" } });
  });

  it("goes by the company's order of day and month, and is no longer than it may be", () => {
    const head = "number,customer,address,part,start,end\n";
    const start = (order: "month first" | "day first") => {
      const read = readWarrantyTable(`${head}1,a,b,c,3/4/2026,5/6/2027\n`, order);
      const [first] = read.ok ? read.value : [];
      return first?.read.ok ? [first.read.value.start, first.read.value.end] : undefined;
    };
    expect([start("month first"), start("day first")]).toEqual([
      ["2026-03-04", "2027-05-06"],
      ["2026-04-03", "2027-06-05"],
    ]);
    const many = `${head}${Array.from({ length: 2001 }, (_, n) => `${n},a,b,c,2026-01-01,2027-01-01`).join("\n")}\n`;
    expect(readWarrantyTable(many, "month first")).toMatchObject({ ok: false, refusal: { code: "batch-size" } });
  });
});
