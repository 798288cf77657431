import { describe, expect, it } from "vitest";
import { jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { noticeText } from "#core/record/index.ts";
import { typedDay } from "#core/units/index.ts";
import { readTerms, type WarrantyClocks, warrantyClocks } from "#core/warranty/index.ts";
import { type Office, sendNotice } from "#functions/edge/warranties/notice.ts";
import type { Message } from "#functions/shared/index.ts";
import { bench, book } from "../../helpers/job.ts";

const warranty: Json = {
  terms: [{ part: "Pump", months: 24, starts: "handover", register: { days: 30, with: "its maker" } }],
  services: [
    { kind: "return visit", daysAfter: 35, within: 14 },
    { kind: "winter", month: 10, day: 31 },
  ],
};
/** Handed over on Wednesday, 10 June 2026: to be registered by 10 July, the return visit on 15 July, covered until 10 June 2028. */
function clocks(): WarrantyClocks {
  const b = book(bench());
  b.enter("delivered-unsigned", { how: "by hand", day: "2026-06-10", to: "the house", because: "vacant" });
  return warrantyClocks(jobState(b.ledger()));
}
const job = { title: "Elm Street 4", ownNumber: "26-014", clocks: clocks() };
const old = [
  { number: "19-003", part: "Liner", end: "2026-07-08" },
  { number: "19-004", part: "Liner", end: "2026-07-05" },
  { number: "19-005", part: "Liner", end: "2026-08-06" },
];
const company = { name: "Test Falls", zone: "UTC" };
/** Noon, so that it is the same day from Hawaii to New Zealand's west. */
const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);

describe("what an office is told of its warranties", () => {
  const told = (day: string, language: "en" | "es" = "en") =>
    noticeText({ jobs: [{ ...job, terms: readTerms(warranty) }], old, language, company, at: noon(day) });

  it("names the days of the next thirty, the nearest first, today and the thirtieth among them", () => {
    const lines = (told("2026-07-06")?.text ?? "").split("\n").filter((line) => line.startsWith("- "));
    expect(lines.map((line) => line.replace(/^- [^:]*: /, ""))).toEqual([
      "Last day of cover, Liner: 19-003",
      "Register Pump with its maker: 26-014 Elm Street 4",
      "Return visit: 26-014 Elm Street 4",
    ]);
    expect(lines.map((line) => Number(/\b(8|10|15)\b/.exec(line)?.[1]))).toEqual([8, 10, 15]);
    // the fifth is thirty days before 4 August: what ends on the sixth comes a day later, and what ended that day is still told
    expect(told("2026-07-05")?.text).toContain("19-004");
    expect(told("2026-07-06")?.text).not.toContain("19-005");
    expect(told("2026-07-07")?.text).toContain("19-005");
  });

  it("speaks Spanish, and is silent where no day is near", () => {
    expect(told("2026-07-06", "es")?.text).toContain("Visita de regreso: 26-014 Elm Street 4");
    expect(told("2026-07-06", "es")?.subject).toContain("Garantías");
    // from 7 August the next is the winter service on 31 October
    expect(told("2026-08-07")).toBeUndefined();
    expect(told("2026-10-01")?.text).toContain("Winter service");
  });
});

describe("the mail that tells it", () => {
  const ran = async (
    day: string,
    { officeMail = "office@falls.example", sends = true }: { officeMail?: string | null; sends?: boolean } = {},
  ) => {
    const sent: Message[] = [];
    const office: Office = {
      settings: async () => ({
        name: "Test Falls",
        zone: "UTC",
        units: "inch",
        language: "es",
        warranty,
        ...(officeMail === null ? {} : { officeMail }),
      }),
      language: async () => "es",
      jobs: async () => [{ ...job, callbacks: [] }],
      old: async () => old.map((one) => ({ ...one, customer: "A", address: "B", start: "2019-01-01" })),
      mail: async () => ({ ok: true, value: { sends } }),
      send: async (message) => {
        sent.push(message);
        return { ok: true, value: { eml: "", sent: true } };
      },
    };
    const is = await sendNotice(office, "UTC", typedDay(day) ?? { year: 0, month: 0, day: 0 }, noon(day));
    expect(is).toBe(sent.length === 1);
    return sent;
  };

  it("goes on a Monday, from the office to the office, in the company's language", async () => {
    const [message] = await ran("2026-07-06");
    expect(message).toMatchObject({
      from: { name: "Test Falls", address: "office@falls.example" },
      to: { name: "Test Falls", address: "office@falls.example" },
      language: "es",
      at: noon("2026-07-06"),
    });
    expect(message?.text).toContain("Visita de regreso: 26-014 Elm Street 4");
  });

  it("goes on no other day, to nobody without an address, without a mail service, or where no day is near", async () => {
    for (const day of ["2026-07-05", "2026-07-07", "2026-07-11"]) expect(await ran(day)).toEqual([]);
    expect(await ran("2026-07-06", { officeMail: null })).toEqual([]);
    expect(await ran("2026-07-06", { sends: false })).toEqual([]);
    expect(await ran("2026-08-10")).toEqual([]);
  });
});
