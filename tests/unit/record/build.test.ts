import { describe, expect, it } from "vitest";
import type { Check, JobLedger, ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { exceptionRank, isException, type RecordModel } from "#core/record/index.ts";
import { answerItem, type Book, bench, book, inch, lengthItem, minute, pictureItem, start } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const words = (en: string) => ({ en });
const check = (id: string, more: Partial<Check> & Pick<Check, "function" | "items">): Check => ({
  id,
  step: "step-one",
  title: words(`${id} title`),
  kind: "length",
  weight: "holds",
  holds: "bury-it",
  ...more,
});
/** The same ledger with the names that were typed with some entries. */
const named = ({ entries, versions }: JobLedger, who: Readonly<Record<string, Json>>): JobLedger => ({
  entries: entries.map((entry) => (who[entry.id] === undefined ? entry : { ...entry, who: who[entry.id] as Json })),
  versions,
});
const pit = lengthItem("pit-depth");
const sheet: ToleranceSheet = bench({
  items: [pit, pictureItem("pit-seen"), answerItem("pit-dry")],
  checks: [check("pit-check", { function: "single value", items: ["pit-depth"], aim: 10 * inch, lower: 8 * inch })],
});
const finding = (model: RecordModel, id: string, tag?: string) => {
  const found = model.findings.find((view) => view.check === id && view.tag === tag);
  if (found === undefined) throw new Error(`no finding ${id}`);
  return found;
};
const whole = (b: Book): void => {
  b.read("pit-depth", "10 1/16");
  b.picture("pit-seen");
  b.answer("pit-dry", "is-dry");
};

describe("a covering that only follows from a later entry", () => {
  const later = bench({ ...sheet, items: [...sheet.items, answerItem("top-seen", { holds: "close-it", needsHidden: "bury-it" })] });

  it("is said to be covered with no clearance shown, and never on a not-yet", () => {
    const b = book(later);
    whole(b);
    b.answer("top-seen", "is-dry");
    const model = recordOf(b.ledger());
    expect(model.coverings[0]).toMatchObject({ state: "covered; nobody said so, no clearance was shown", tone: "undecided" });
    expect(model.exceptions.map(({ title }) => title)).toContain("bury-it");
    expect(model.standing).toContain("1 of 2 coverings done: 1 with no clearance shown.");
    expect(JSON.stringify(model.coverings)).not.toContain("on a not yet");
  });

  it("stands apart from one that was covered on a not yet", () => {
    const b = book(later);
    b.covered("bury-it", "not yet", { lines: ["pit-depth: not taken"] });
    expect(recordOf(b.ledger()).coverings[0]).toMatchObject({ state: "covered on a not yet", tone: "outside" });
  });
});

describe("left to do", () => {
  it("names who does it and the day, and the finding that it names says so", () => {
    const b = book(sheet);
    const left = b.enter("left-to-do", { text: "Depth", by: "2026-06-20", about: { check: "pit-check" } });
    const people = { someone: { name: "Ada Brook", role: "office" } } as const;
    const ledger = named(b.ledger(), { [left]: { name: "Ada Brook" } });
    const inFull = recordOf(ledger, { people });
    expect(inFull.leftToDo).toEqual([{ text: "Depth", by: "Ada Brook, by 20 June 2026", state: "open" }]);
    expect(finding(inFull, "pit-check").says).toMatch(/ Left to do: Ada Brook, by 20 June 2026\.$/);
    expect(finding(inFull, "pit-seen").says).not.toContain("Left to do");
    const customer = recordOf(ledger, { people, edition: "customer" });
    expect(customer.leftToDo[0]?.by).toBe("office, A. B., by 20 June 2026");
    expect(recordOf(b.ledger()).leftToDo[0]?.by).toBe("nobody named, by 20 June 2026");
  });

  it("says so of every finding of a whole step", () => {
    const b = book(sheet);
    b.enter("left-to-do", { text: "All of it", by: "2026-06-20", about: { step: "step-one" } });
    expect(recordOf(b.ledger()).findings.filter(({ says }) => !says.includes("by 20 June 2026"))).toEqual([]);
  });
});

describe("corrected, withdrawn and moved entries", () => {
  const b = book(sheet);
  const wrong = b.read("pit-depth", "10 1/16");
  b.enter("corrected", { entry: { id: wrong, digest: wrong }, reason: "Read the wrong mark.", replace: { typed: "9 1/2" } });
  const twice = b.answer("pit-dry", "is-wet");
  b.enter("corrected", { entry: { id: twice, digest: twice }, reason: "Entered twice.", withdrawn: true });
  const foreign = b.read("pit-depth", "4 4/16");
  b.enter("moved-out", { entries: [{ id: foreign, digest: foreign }], to: "job-two", reason: "Neighbour's pit." });
  const company = recordOf(b.ledger());

  it("keep what was first typed beside what it became, with the reason", () => {
    const [corrected, moved] = company.steps[0]?.readings ?? [];
    expect(corrected?.typed).toBe("10 1/16 in");
    expect(corrected?.corrected).toBe("corrected to 9 1/2 in by someone: Read the wrong mark.");
    expect(corrected?.aside).toBeUndefined();
    expect(moved).toMatchObject({ typed: "4 4/16 in", aside: "moved to another job by someone: Neighbour's pit." });
    expect(company.corrections.map(({ title, was, became }) => [title, was, became])).toEqual([
      ["pit-depth", "10 1/16 in", "corrected to 9 1/2 in by someone: Read the wrong mark."],
      ["pit-dry", "wet", "withdrawn by someone: Entered twice."],
      ["pit-depth", "4 4/16 in", "moved to another job by someone: Neighbour's pit."],
    ]);
    expect(finding(company, "pit-check").value).toBe("9 1/2 in");
  });

  it("another job's entry stays out of the customer's pages", () => {
    const customer = recordOf(b.ledger(), { edition: "customer" });
    expect(customer.steps[0]?.readings.map(({ typed }) => typed)).toEqual(["10 1/16 in"]);
    expect(JSON.stringify(customer)).not.toContain("4 4/16");
    expect(customer.corrections).toHaveLength(3);
  });
});

describe("what is not measured against a limit", () => {
  it("is never called within: taken, as asked, looked at or not", () => {
    const b = book(bench({ ...sheet, items: [...sheet.items, lengthItem("pit-width", { weight: "asked" })] }));
    whole(b);
    b.read("pit-width", "20 0/16");
    const model = recordOf(b.ledger());
    const word = (id: string) => [finding(model, id).verdict, finding(model, id).verdictWord, finding(model, id).tone];
    expect(word("pit-check")).toEqual(["within", "within", "within"]);
    expect(word("pit-dry")).toEqual(["within", "as asked", "within"]);
    expect(word("pit-seen")).toEqual(["within", "taken", "apart"]);
    expect(word("pit-width")).toEqual(["within", "taken", "within"]);
    const numbers = Object.fromEntries(model.numbers.map(({ label, text }) => [label, text]));
    expect(numbers).toMatchObject({
      "Measured against a limit": "1: 1 within, 0 outside, 0 too close to call",
      Answers: "1 as asked, 0 otherwise",
      Pictures: "1: 0 looked at, 1 not yet looked at",
      "Readings without a limit": "1",
    });
  });

  it("wiring has both figures beside each other and no verdict", () => {
    const cord = check("cord-check", {
      function: "single value",
      items: ["cord-run"],
      upper: { function: "cord reach" },
      asks: "electrician",
    });
    const { holds: _, ...asked } = { ...cord, weight: "asked" as const };
    const b = book(bench({ items: [lengthItem("cord-run", { weight: "asked" })], checks: [asked] }));
    b.enter("design-set", { figures: { cordLength: { typed: "20", unit: "ft" }, basinDepth: { typed: "28", unit: "in" } } });
    b.read("cord-run", "13 ft 9 0/16");
    const model = recordOf(b.ledger());
    const view = finding(model, "cord-check");
    expect(view.says).toMatch(
      /^cord-check title: measured 13 ft 9 in ± .*; the cord less its slack reaches .*\. Ask the electrician: a licensed person decides\.$/,
    );
    expect([view.verdictWord, view.tone]).toEqual(["beside its figure", "apart"]);
    expect(`${view.says} ${view.verdictWord}`).not.toMatch(/within|outside|the limit/);
    expect(model.numbers[0]?.text).toMatch(/^0: 0 within/);
  });
});

describe("what else was entered", () => {
  it("a note for the record without a step has its own place, one with a step stands there", () => {
    const b = book(sheet);
    b.enter("note-for-record", { text: "Old pipe under the steps." });
    b.enter("note-for-record", { text: "Clay below.", step: "step-one" });
    b.enter("note-for-office", { text: "Invoice later." });
    const model = recordOf(b.ledger());
    expect(model.notes).toEqual([expect.stringMatching(/^Old pipe under the steps\. \(someone, 1 June 2026, /)]);
    expect(model.steps[0]?.notes).toEqual([expect.stringMatching(/^Clay below\. /)]);
    expect(JSON.stringify(model)).not.toContain("Invoice later");
  });

  it("visits, design with its changes, callbacks, services and kinds that nobody knows are printed", () => {
    const b = book(sheet);
    const begun = b.enter("visit-begun", { note: "Rain." });
    b.enter("visit-ended", { staysOpen: "Pit, fenced." });
    b.enter("visit-begun", {});
    b.enter("design-set", { figures: { depthWanted: { typed: "4", unit: "ft" } } });
    const changed = b.enter("design-set", { figures: { depthWanted: { typed: "5", unit: "ft" } }, reason: "Longer way." });
    b.enter("callback-opened", { symptom: "Loses water." });
    b.enter("service-done", { service: "Pump washed", date: "2026-06-03" });
    b.enter("moon-seen", { phase: "full" });
    const who = { [begun]: { names: ["Ada Brook"] }, [changed]: { asked: "Cy Dell", agreed: "Ada Brook" } };
    const model = recordOf(named(b.ledger(), who));
    expect(model.visits.map(({ people, says }) => [people, says])).toEqual([
      ["Ada Brook", "Rain. Stays open: Pit, fenced."],
      ["someone", ""],
    ]);
    expect(model.visits[1]?.ended).toBe("not said");
    expect(model.design).toEqual([{ label: "Depth wanted", text: "5 ft" }]);
    expect(model.accepted).toMatchObject([
      { title: "Depth wanted: 4 ft, now 5 ft", kind: "design changed", says: "Longer way. Asked for by Cy Dell. Agreed by Ada Brook." },
    ]);
    expect(model.others.map(({ text }) => text)).toEqual([
      "Callback opened: Loses water.",
      "Service done: Pump washed, 3 June 2026",
      "an entry of a kind that this program does not know (moon-seen)",
    ]);
  });

  it("a photo received otherwise says how and from whom", () => {
    const b = book(sheet);
    const what = { item: "pit-seen", photo: "c".repeat(64), bytes: 1, type: "image/jpeg", how: "by e-mail" };
    const got = b.enter("received-otherwise", what);
    const model = recordOf(named(b.ledger(), { [got]: { name: "Cy Dell" } }));
    expect(model.steps[0]?.pictures[0]?.caption).toBe("received otherwise: by e-mail, from Cy Dell");
  });

  it("a phone whose clock was far off says by how much", () => {
    const b = book(sheet);
    b.picture("pit-seen");
    const ledger = b.ledger();
    const off = 3 * 60 * minute;
    const slow = ledger.entries.map((entry) => ({ ...entry, made: entry.made - off, sent: (entry.sent ?? 0) - off }));
    expect(recordOf({ ...ledger, entries: slow }).steps[0]?.pictures[0]?.when).toContain(", the phone's clock 3 h off, received ");
    expect(recordOf(ledger).steps[0]?.pictures[0]?.when).not.toContain("clock");
  });
});

describe("whose word it was", () => {
  it("stands with a covering that the phone showed clear on a go-ahead", () => {
    const b = book(sheet);
    const word = b.enter("go-ahead", { covering: "bury-it", reason: "Rain comes.", role: "office" });
    b.covered("bury-it", "on word");
    const ledger = named(b.ledger(), { [word]: { name: "Ada Brook" } });
    expect(recordOf(ledger).coverings[0]?.state).toBe("the phone showed clear, on the word of Ada Brook");
    expect(recordOf(ledger, { edition: "customer" }).coverings[0]?.state).toBe("the phone showed clear, on the word of office, A. B.");
    expect(recordOf(ledger).standing).toContain("1 clear on somebody's word");
  });
});

describe("the warranty", () => {
  const settings = { warranty: { terms: [{ part: "Pump", months: 12, starts: "first running" }] } };
  const running = bench({ ...sheet, items: [pictureItem("falls-run", { marks: "first running" })], checks: [] });

  it("starts when the water first ran, where the tolerance sheet marks that entry", () => {
    const b = book(running);
    b.picture("falls-run", {}, { at: start });
    b.picture("falls-run", {}, { at: start + 24 * 60 * minute });
    expect(recordOf(b.ledger(), { settings }).warranty.terms[0]?.ends).toBe("last day 1 June 2027");
  });

  it("says that its start is not in the record where it is not", () => {
    expect(recordOf(book(running).ledger(), { settings }).warranty.terms[0]?.ends).toBe("start not in this record");
  });
});

describe("the customer's edition", () => {
  it("names whoever is met on site by role and initials, and says what the attached ledger leaves out", () => {
    const b = book(sheet);
    const ledger = b.ledger();
    const [opened] = ledger.entries;
    const who = { [opened?.id ?? ""]: { customer: "Cy Dell", onSite: { name: "Eve Fenn", phone: "555-0100" } } };
    const line = (edition: "customer" | "company") =>
      recordOf(named(ledger, who), { edition }).title.lines.find(({ label }) => label === "Contact on site")?.text;
    expect(line("company")).toBe("Eve Fenn, 555-0100");
    expect(line("customer")).toBe("contact on site, E. F.");
    const { proof } = recordOf(named(ledger, who), { edition: "customer" });
    expect(proof.withheld).toMatch(/^Withheld from the attached ledger: .* of 1 entries\./);
    expect(recordOf(named(ledger, who)).proof.withheld).toBe("Nothing is withheld from the attached ledger.");
  });
});

describe("exceptions", () => {
  const plain = { step: "s", check: "c", of: "check", weight: "asked", entries: [], says: { key: "", figures: {} } } as const;

  it("are what is outside, undecided, decided upon, missing or was so before rework, in that order", () => {
    const rank = (more: Partial<Parameters<typeof exceptionRank>[0]>) => exceptionRank({ ...plain, verdict: "within", ...more });
    expect([
      rank({ verdict: "outside" }),
      rank({ verdict: "too close to call" }),
      rank({ verdict: "could not be taken" }),
      rank({ by: { way: "go-ahead", entry: "e" } }),
      rank({ verdict: "not taken" }),
      rank({ beforeRework: [{ value: 1, verdict: "outside" }] }),
    ]).toEqual([0, 1, 2, 3, 4, 5]);
    expect(isException({ ...plain, verdict: "within" })).toBe(false);
    expect(isException({ ...plain, verdict: "not taken", weight: "if you have it" })).toBe(false);
    expect(isException({ ...plain, verdict: "does not apply", by: { way: "does not apply", entry: "e" } })).toBe(false);
  });

  it("a job with nothing entered lists everything that was asked", () => {
    expect(recordOf(book(sheet).ledger()).exceptions.map(({ verdictWord }) => verdictWord)).toEqual(Array(3).fill("not taken"));
  });
});
