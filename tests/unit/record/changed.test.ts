import { describe, expect, it } from "vitest";
import type { JobLedger } from "#core/job/index.ts";
import { type RecordModel, recordModel } from "#core/record/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { bench, book, lengthItem } from "../../helpers/job.ts";
import { measuredWords } from "../../helpers/photo-measured.ts";
import { ledgerOf } from "../../helpers/record.ts";
import { afterTwoDays, twoDayLedger } from "../../samples/two-day-job.ts";

const whole = twoDayLedger(defaultSheet(), { order: "as listed" });
const first = (count: number): JobLedger => ({ ...whole, entries: whole.entries.slice(0, count) });
const DAY = 86_400_000;

/** The same job with its record in Spanish. */
const inSpanish = (ledger: JobLedger): JobLedger => ({
  ...ledger,
  entries: ledger.entries.map((entry) =>
    entry.kind === "job-opened" ? { ...entry, what: { ...(entry.what as object), language: "es" } } : entry,
  ),
});

function issued(ledger: JobLedger, version: number, change: { edition?: "customer" | "company"; before?: RecordModel } = {}) {
  const { edition = "customer", before } = change;
  return recordModel({
    ...(before === undefined ? {} : { before }),
    ledger: ledgerOf(ledger),
    attached: ledgerOf(ledger, edition),
    edition,
    version,
    issuedAt: afterTwoDays + version * DAY,
    settings: { name: "Stillwater Yard Works" },
    people: { "person-one": { name: "Ravi Santangelo", role: "crew" } },
    photos: {},
  });
}

const count = whole.entries.length;
const lastReading = whole.entries.findLastIndex(({ kind }) => kind === "reading-taken");

describe("what a record says of the version before it", () => {
  it("nothing in a first one", () => {
    expect(issued(whole, 1).changed).toBeUndefined();
  });

  it("nothing but its number where nothing was entered since", () => {
    const before = issued(whole, 1);
    const { changed } = issued(whole, 2, { before });
    expect(changed).toEqual({
      title: "Changed since version 1",
      says: [`That version was issued ${before.title.issued}.`, "No entry was made since."],
      lines: [],
      none: "Nothing that it says is otherwise.",
    });
  });

  it("what a photo measured since beside a reading that stands as it was", () => {
    const b = book(bench({ items: [lengthItem("the-length", { onOnePlane: true })] }));
    b.read("the-length", "20 0/16");
    const before = issued(b.ledger(), 1);
    b.enter("photo-measured", measuredWords());
    const { changed } = issued(b.ledger(), 2, { before });
    expect(changed?.lines).toEqual([{ label: "the-length", text: expect.stringMatching(/^Tape: 20 in ± .* They agree\.$/) }]);
    const same = issued(b.ledger(), 3, { before: issued(b.ledger(), 2) });
    expect(same.changed?.lines).toEqual([]);
  });

  it("every finding that came out otherwise, as it was and as it is, and how many entries came", () => {
    const before = issued(first(lastReading), 1);
    const now = issued(whole, 2, { before });
    const { changed } = now;
    expect(changed?.says[1]).toBe(`Entries made since: ${count - lastReading} (numbers ${lastReading + 1} to ${count}).`);
    const key = ({ step, check, tag = "" }: { step: string; check: string; tag?: string }): string => `${step} ${check} ${tag}`;
    const was = new Map(before.findings.map((one) => [key(one), one]));
    // counted without the view: another verdict, or another figure
    const otherwise = now.findings.filter((one) => {
      const earlier = was.get(key(one));
      return earlier === undefined || earlier.verdictWord !== one.verdictWord || earlier.value !== one.value;
    });
    expect(otherwise.length).toBeGreaterThan(0);
    for (const one of otherwise) {
      const line = changed?.lines.find(({ label }) => label === [one.title, one.tag].filter(Boolean).join(" · "));
      expect(line?.text, one.title).toContain(one.verdictWord);
      const earlier = was.get(key(one));
      if (earlier !== undefined) expect(line?.text).toMatch(new RegExp(`^was ${earlier.verdictWord}.*; now ${one.verdictWord}`));
    }
  });

  it("a correction by the title of what it is about", () => {
    const reading = whole.entries[lastReading];
    if (reading === undefined) throw new Error("no reading");
    const made = reading.made + 60_000;
    const entries = [
      ...whole.entries,
      {
        ...reading,
        id: "corrected-later",
        kind: "corrected",
        run: 9_000,
        made,
        number: count + 1,
        what: { entry: { id: reading.id, digest: reading.digest }, reason: "misread", replace: { typed: "1/64" } },
      },
    ];
    const before = issued(whole, 1);
    const now = issued({ ...whole, entries }, 2, { before });
    expect(now.corrections).toHaveLength(before.corrections.length + 1);
    const { title = "" } = now.corrections.at(-1) ?? {};
    expect(now.changed?.lines.map(({ label }) => label)).toContain(title);
  });

  it("in another language the verdicts alone are compared, and the other edition's words on coverings stay there", () => {
    const before = issued(first(lastReading), 1, { edition: "company" });
    const spanish = issued(inSpanish(whole), 2, { before });
    expect(spanish.changed?.title).toBe("Cambios desde la versión 1");
    expect(spanish.changed?.lines[0]).toEqual({ label: "Edición", text: "era Ejemplar de la empresa; ahora Ejemplar del cliente" });
    expect(issued(whole, 3, { before: issued(inSpanish(whole), 2) }).changed?.lines).toEqual([]);
    const full = issued(whole, 1, { edition: "company" });
    const marked: RecordModel = {
      ...full,
      coverings: full.coverings.map((one) => ({ ...one, state: "on Ravi Santangelo's word", tone: "outside" })),
    };
    const customer = issued(whole, 2, { before: marked });
    expect(customer.changed?.lines.length).toBeGreaterThan(1);
    expect(JSON.stringify(customer.changed)).not.toContain("Santangelo");
  });
});
