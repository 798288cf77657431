import fc from "fast-check";
import ICAL from "ical.js";
import { expect, it } from "vitest";
import { jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { warrantyCalendar } from "#core/record/index.ts";
import { type CalendarEvent, calendarFile, readTerms, warrantyClocks } from "#core/warranty/index.ts";
import { damagedText, damagedValue, hostileSigns } from "../../helpers/damage.ts";
import { fuzz, patience } from "../../helpers/fuzz.ts";
import { bench, book } from "../../helpers/job.ts";

const STAMP = Date.UTC(2026, 4, 12, 14, 4, 5);

/** What a text comes back as: RFC 5545 has no control signs in a text, and one end of a line; half a sign is none. */
const asRead = (text: string): string =>
  text
    .toWellFormed()
    .replaceAll(/\r\n?|[\u0085\u2028\u2029]/g, "\n")
    .replaceAll(/(?![\t\n])\p{Cc}/gu, "");

/** The rules that a forgiving reader does not ask for (RFC 5545, 3.1), whoever's notion of a line it is. */
function wellMade(file: string): void {
  expect(file.endsWith("\r\n")).toBe(true);
  expect(file.replaceAll("\r\n", "")).not.toMatch(/(?!\t)[\p{Cc}\u2028\u2029]/u);
  for (const line of file.split("\r\n")) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
}

/** The reader does not know this property, newer than it is, and leaves its text escaped. */
const plain = (escaped: string): string => escaped.replaceAll(/\\(.)/g, (_, sign: string) => (sign === "n" ? "\n" : sign));

const eventsIn = (file: string) => new ICAL.Component(ICAL.parse(file)).getAllSubcomponents("vevent");

const texts = ["Winter service: Elm Street 4", "a, b; c\\d: e\\n", "x\r\nEND:VEVENT\r\nBEGIN:VEVENT", `${"ñ".repeat(40)}水🪨`, ""];
const text = damagedText(texts, ["\\", "\\n", ";", ",", ":", "\r\nX:", " ", "BEGIN:VALARM", ...hostileSigns], 6);
const day = fc
  .date({ min: new Date("1970-01-01T00:00:00Z"), max: new Date("9999-12-30T00:00:00Z"), noInvalidDate: true })
  .map((at) => ({ year: at.getUTCFullYear(), month: at.getUTCMonth() + 1, day: at.getUTCDate() }));
const event: fc.Arbitrary<CalendarEvent> = fc.record(
  { uid: fc.uuid(), day, summary: text, description: text },
  { requiredKeys: ["uid", "day", "summary"] },
);

it(
  "whatever the texts, another reader has the same events and the same words",
  async () => {
    let cleaned = 0;
    await fuzz({
      kind: "calendars",
      inputs: fc.tuple(text, fc.array(event, { maxLength: 4 })),
      read([name, events]) {
        const file = calendarFile({ name, stamp: STAMP, events });
        wellMade(file);
        const whole = new ICAL.Component(ICAL.parse(file));
        expect(plain(String(whole.getFirstPropertyValue("name") ?? ""))).toBe(asRead(name));
        expect(
          eventsIn(file).map((one) => [
            one.getFirstPropertyValue("uid"),
            one.getFirstPropertyValue("summary"),
            one.getFirstPropertyValue("description") ?? "",
          ]),
        ).toEqual(events.map(({ uid, summary, description = "" }) => [uid, asRead(summary), asRead(description)]));
        expect(eventsIn(file).map((one) => String(one.getFirstPropertyValue("dtstart")))).toEqual(
          events.map((one) =>
            [String(one.day.year).padStart(4, "0"), ...[one.day.month, one.day.day].map((part) => String(part).padStart(2, "0"))].join("-"),
          ),
        );
        cleaned += events.some(({ summary }) => asRead(summary) !== summary) ? 1 : 0;
        return "taken";
      },
      least: { taken: 1, refused: 0 },
    });
    expect(cleaned).toBeGreaterThan(20);
  },
  patience(10),
);

const terms: Json = {
  text: { en: ["Terms"], es: ["Condiciones"] },
  terms: [
    { part: "Pump", months: 24, starts: "handover", register: { days: 30, with: "its maker" }, services: ["winter"] },
    { part: "Labour", months: 1200, starts: "first running", replacement: "new term", newOwner: "passes on when told", newOwnerDays: 30 },
  ],
  services: [
    { kind: "return visit", daysAfter: 30, within: 14 },
    { kind: "winter", month: 10, day: 31 },
    { kind: "spring", month: 2, day: 29 },
    { kind: "yearly" },
  ],
  acceptedByUseAfterDays: 60,
};
const after = [
  { kind: "delivered-unsigned", what: { how: "by hand", day: "2026-06-10", to: "the house", because: "vacant" } },
  { kind: "in-use", what: { since: "9999-12-31", how: "seen" } },
  { kind: "part-replaced", what: { part: "Pump", day: "2027-01-01", why: "under warranty" } },
  { kind: "part-registered", what: { part: "Pump", day: "2026-07-01" } },
  { kind: "cover-started", what: { rule: "invoice paid", day: "2026-05-01", part: "Pump" } },
  { kind: "new-owner", what: { day: "2026-09-09" } },
  { kind: "service-done", what: { service: "winter", date: "2026-11-01" } },
];

it(
  "the calendar of a job with damaged terms and facts is a calendar",
  async () => {
    let events = 0;
    await fuzz({
      kind: "calendars of jobs",
      inputs: fc.tuple(damagedValue([terms], 3), fc.array(damagedValue(after, 1), { maxLength: 5 }), fc.constantFrom("en", "es"), text),
      read([own, facts, language, title]) {
        const entered = book(bench());
        for (const fact of facts) {
          const { kind, what } = (fact ?? {}) as { readonly kind?: unknown; readonly what?: Json };
          if (typeof kind === "string") entered.enter(kind, what as never);
        }
        const clocks = { ...warrantyClocks(jobState(entered.ledger())), language: language as "en" };
        const file = warrantyCalendar({ job: "job-one", title, clocks, terms: readTerms(own as Json), stamp: STAMP });
        wellMade(file);
        const found = eventsIn(file);
        expect(new Set(found.map((one) => one.getFirstPropertyValue("uid"))).size).toBe(found.length);
        for (const one of found) expect(String(one.getFirstPropertyValue("dtend"))).toMatch(/^\d{4}-\d{2}-\d{2}$/);
        events += found.length;
        return "taken";
      },
      least: { taken: 1, refused: 0 },
    });
    expect(events).toBeGreaterThan(100);
  },
  patience(20),
);
