import ICAL from "ical.js";
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { warrantyCalendar } from "#core/record/index.ts";
import { typedDay } from "#core/units/index.ts";
import { calendarFile, readTerms, warrantyClocks } from "#core/warranty/index.ts";
import { bench, book, type What } from "../../helpers/job.ts";

const day = (text: string) => typedDay(text) ?? { year: 0, month: 0, day: 0 };
const stamp = Date.UTC(2026, 4, 12, 14, 4, 5, 678);

interface Read {
  readonly uid: string;
  readonly start: string;
  readonly end: string;
  readonly isDate: boolean;
  readonly stamp: string;
  readonly summary: string;
  readonly description: string;
}

/** The events of a file as ical.js reads them. */
function read(text: string): readonly Read[] {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      isDate: event.startDate.isDate,
      stamp: String(component.getFirstPropertyValue("dtstamp")),
      summary: event.summary,
      description: event.description ?? "",
    };
  });
}

/** Every rule of RFC 5545 on lines that a reader may forgive. */
function lines(text: string): readonly string[] {
  expect(text.endsWith("\r\n")).toBe(true);
  expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  const all = text.split("\r\n").slice(0, -1);
  for (const one of all) {
    const bytes = new TextEncoder().encode(one);
    expect(bytes.length, one).toBeLessThanOrEqual(75);
    expect(new TextDecoder("utf-8", { fatal: true }).decode(bytes)).toBe(one);
  }
  return all;
}

const one = (summary: string, description?: string) =>
  calendarFile({
    name: "Elm Street 4",
    stamp,
    events: [{ uid: "job-one-winter-2026@asburied.invalid", day: day("2026-02-28"), summary, ...(description ? { description } : {}) }],
  });

describe("a calendar file", () => {
  it("is, line for line, what the standard asks", () => {
    expect(one("Winter service")).toBe(
      [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Asburied//As-buried records//EN",
        "CALSCALE:GREGORIAN",
        "NAME:Elm Street 4",
        "BEGIN:VEVENT",
        "UID:job-one-winter-2026@asburied.invalid",
        "DTSTAMP:20260512T140405Z",
        "DTSTART;VALUE=DATE:20260228",
        "DTEND;VALUE=DATE:20260301",
        "SUMMARY:Winter service",
        "TRANSP:TRANSPARENT",
        "END:VEVENT",
        "END:VCALENDAR",
        "",
      ].join("\r\n"),
    );
  });

  it.each([
    ["signs with a meaning", 'a, b; c\\d: e\\n "f"'],
    ["new lines", "first\nsecond\nthird"],
    ["forty signs of three octets and seven of four", `${"水".repeat(40)}${"🪨".repeat(7)}`],
    ["two octets across the fold", `${"x".repeat(66)}${"\u00a0é".repeat(20)}`],
    ["a pair across the fold", `${"x".repeat(65)}🪨🪨`],
    ["blanks at the fold", `${"x".repeat(67)}      ${"y".repeat(80)}`],
    ["a hundred lengths", Array.from({ length: 100 }, (_, n) => "ñ".repeat(n)).join(" ")],
  ])("%s come back as they were, within 75 octets a line", (_, text) => {
    const file = one(text, text);
    lines(file);
    expect(read(file)).toMatchObject([{ summary: text, description: text }]);
  });

  it("folds at every place alike: the same text after every number of signs before it", () => {
    for (let before = 0; before < 160; before += 1) {
      const text = `${"a".repeat(before)}é水🪨,;\\ ${"z".repeat(90)}`;
      const file = one(text);
      lines(file);
      expect(read(file)[0]?.summary, String(before)).toBe(text);
    }
  });

  it("control signs and lone halves cannot break it", () => {
    const file = one("a\u0000b\u001bc\r\nd\re\ud800f\u007f");
    lines(file);
    expect(read(file)[0]?.summary).toBe("abc\nd\ne\ufffdf");
    // nobody slips in a line of his own
    expect(read(one("x\r\nEND:VEVENT\r\nBEGIN:VEVENT"))).toHaveLength(1);
  });

  it("a day is a date and ends on the next one, over ends of months and years", () => {
    const days = ["2024-02-28", "2024-02-29", "2026-12-31", "2026-03-08", "2026-11-01"].map(day);
    const file = calendarFile({ name: "x", stamp, events: days.map((of, index) => ({ uid: `${index}`, day: of, summary: "x" })) });
    expect(read(file).map(({ start, end, isDate }) => [start, end, isDate])).toEqual(
      days.map((of) => {
        const start = DateTime.fromObject(of, { zone: "utc" });
        return [start.toISODate(), start.plus({ days: 1 }).toISODate(), true];
      }),
    );
  });
});

describe("the calendar of a job", () => {
  const warranty: Json = {
    terms: [
      { part: "Pump", months: 24, starts: "handover", register: { days: 30, with: "its maker" } },
      { part: "Kept", months: 12, starts: "handover" },
    ],
    services: [
      { kind: "return visit", daysAfter: 30, within: 14 },
      { kind: "winter", month: 10, day: 31 },
      { kind: "spring", month: 4, day: 15 },
      { kind: "yearly" },
    ],
  };
  const made = (language: "en" | "es", at: number, ...entries: readonly (readonly [string, What])[]) => {
    const b = book(bench());
    b.enter("delivered-unsigned", { how: "by hand", day: "2026-06-10", to: "the house", because: "vacant" });
    b.enter("part-kept", { part: "Kept", why: "old" });
    for (const [kind, what] of entries) b.enter(kind, what);
    const clocks = { ...warrantyClocks(jobState(b.ledger())), language };
    const text = warrantyCalendar({ job: "job-one", title: "Elm Street 4", clocks, terms: readTerms(warranty), stamp: at });
    lines(text);
    return read(text);
  };

  it("holds return visit, winter, spring and yearly service, what is to be registered, and last days", () => {
    // handed over on 10 June 2026: 30 days make 10 July, 24 months end on 10 June 2028
    expect(made("en", Date.UTC(2026, 5, 11)).map(({ start, summary }) => `${start} ${summary}`)).toEqual([
      "2026-07-10 Return visit: Elm Street 4",
      "2026-10-31 Winter service: Elm Street 4",
      "2027-04-15 Spring service: Elm Street 4",
      "2027-06-10 Yearly service: Elm Street 4",
      "2027-10-31 Winter service: Elm Street 4",
      "2028-04-15 Spring service: Elm Street 4",
      "2028-06-10 Yearly service: Elm Street 4",
      "2026-07-10 Register Pump with its maker: Elm Street 4",
      "2028-06-10 Last day of cover, Pump: Elm Street 4",
    ]);
  });

  it("speaks Spanish, and says between which days a service counts", () => {
    const [visit] = made("es", Date.UTC(2026, 5, 11));
    expect(visit?.summary).toBe("Visita de regreso: Elm Street 4");
    expect(visit?.description).toBe("Cuenta si se hace entre el 26 de junio de 2026 y el 24 de julio de 2026.");
  });

  it("leaves out what is done or past, and names each event alike when it is made again", () => {
    const later = made(
      "en",
      Date.UTC(2027, 0, 1),
      ["service-done", { service: "return visit", date: "2026-07-12" }],
      ["part-registered", { part: "Pump", day: "2026-07-01" }],
    );
    expect(later.map(({ uid }) => uid)).toEqual([
      "job-one-spring-2027@asburied.invalid",
      "job-one-yearly-2027@asburied.invalid",
      "job-one-winter-2027@asburied.invalid",
      "job-one-spring-2028@asburied.invalid",
      "job-one-yearly-2028@asburied.invalid",
      "job-one-ends-0@asburied.invalid",
    ]);
    const first = made("en", Date.UTC(2026, 5, 11)).map(({ uid }) => uid);
    expect(new Set(first).size).toBe(first.length);
    for (const { uid } of later) expect(first).toContain(uid);
  });

  it("before handing over there is nothing to plan", () => {
    const clocks = warrantyClocks(jobState(book(bench()).ledger()));
    expect(read(warrantyCalendar({ job: "j", title: "t", clocks, terms: readTerms(warranty), stamp }))).toEqual([]);
  });
});
