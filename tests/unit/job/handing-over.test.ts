import { describe, expect, test } from "vitest";
import { admit, beforehandOf, type Entry, findings, jobState, leftToDoFor, momentOf, type Role } from "#core/job/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { answerItem, type Book, bench, book, lengthItem, pictureItem } from "../../helpers/job.ts";
import { afterTwoDays, twoDayLedger } from "../../samples/two-day-job.ts";

const words = (en: string) => ({ en });
const hour = 3_600_000;
const step = (id: string, number: number, more: object = {}) => ({ id, number, title: words(id), cautions: [], ...more });
const open = { weight: "open", holds: undefined as never } as const;
const asked = { weight: "asked", holds: undefined as never } as const;

const sheet = bench({
  steps: [step("step-one", 0), step("step-two", 1), step("step-later", 2), step("step-last", 3, { signed: true })],
  tagSets: [{ id: "edge-part", title: words("Part"), least: 0, coverings: ["bury-it"] }],
  items: [
    answerItem("way-known", asked),
    answerItem("hole-dry", { step: "step-two" }),
    lengthItem("later-read", { step: "step-later", ...open }),
    lengthItem("later-part", { step: "step-later", tags: "edge-part", ...open }),
    pictureItem("nice-to-have", { step: "step-later", weight: "if you have it", holds: undefined as never }),
    pictureItem("water-runs", { step: "step-last", ...asked, marks: "first running" }),
  ],
  beforehand: [{ id: "before-digging", title: words("before digging"), steps: ["step-one"] }],
});

const asks = (b: Book): readonly string[] =>
  b.handingOver().missing.map(({ about, reason }) => [about.item ?? about.check ?? reason.key, about.tag].filter(Boolean).join(" "));

const begun = (): Book => {
  const b = book(sheet);
  b.tag("edge-part", "A", "bury-it");
  b.answer("way-known", "is-dry");
  b.answer("hole-dry", "is-dry");
  b.picture("water-runs");
  return b;
};

describe("handing over", () => {
  test("what is open is missing until it is entered or left to do, and somebody has to sign, decline or be missed", () => {
    const b = begun();
    expect(asks(b)).toEqual(["later-read", "later-part A", "signature.missing"]);
    b.read({ item: "later-part", tag: "A" }, "3 0/16");
    expect(asks(b)).toEqual(["later-read", "signature.missing"]);
    b.enter("left-to-do", { text: "read it once more", by: "2026-07-01", about: { item: "later-read" } });
    expect(asks(b)).toEqual(["signature.missing"]);
    b.enter("declined", { objection: "wants to see it run a week" });
    expect(b.handingOver()).toMatchObject({ state: "everything entered", missing: [] });
  });

  test("what is left to do may name a whole step, with every tag, and then names nothing of another", () => {
    const b = begun();
    const left = b.enter("left-to-do", { text: "come back", by: "2026-07-01", about: { step: "step-later" } });
    expect(asks(b)).toEqual(["signature.missing"]);
    expect(b.handingOver().leftToDo).toEqual([
      { entry: left, text: "come back", by: "2026-07-01", about: { step: "step-later" }, done: false },
    ]);
    const { state, all } = b.done();
    const named = all.filter((finding) => leftToDoFor(state, finding) === left).map(({ check, tag }) => [check, tag]);
    expect(named).toEqual([
      ["later-read", undefined],
      ["later-part", "A"],
      ["nice-to-have", undefined],
    ]);
    // said to be done: what is still not there is missing again
    b.enter("left-to-do-done", { entry: { id: left, digest: "" } });
    expect(asks(b)).toEqual(["later-read", "later-part A", "signature.missing"]);
    expect(b.done().all.some((finding) => leftToDoFor(b.done().state, finding) !== undefined)).toBe(false);
  });

  test.each([
    ["signed", { relation: "customer", language: "en" }],
    ["declined", { objection: "no" }],
    ["not-reached", { how: "rang twice" }],
  ] as const)("%s is a signature's place filled; withdrawn, it is open again", (kind, what) => {
    const b = begun();
    expect(b.handingOver().missing.at(-1)).toEqual({
      about: {},
      step: "step-last",
      verdict: "not taken",
      reason: { key: "signature.missing", figures: {} },
      waysOut: ["take it"],
    });
    const said = b.enter(kind, what);
    expect(asks(b)).not.toContain("signature.missing");
    b.enter("corrected", { entry: { id: said, digest: "" }, reason: "of another job", withdrawn: true });
    expect(asks(b)).toContain("signature.missing");
  });

  test("without a tolerance sheet nothing is everything", () => {
    const state = jobState({ entries: [], versions: {} });
    expect(beforehandOf(state, findings(state), 0)).toEqual([]);
  });

  test("a step is named by itself and must be there; only what is left to do names one", () => {
    const { state } = begun().done();
    const entry = (kind: string, about: object): Entry => ({
      id: "x",
      digest: "x",
      kind,
      author: { person: "p", phone: "q" },
      run: 99,
      made: 0,
      what: { text: "t", by: "2026-07-01", reason: "r", about: about as never },
    });
    const admitted = (kind: string, about: object, role: Role = "crew") => admit(state, entry(kind, about), role).ok;
    expect(admitted("left-to-do", { step: "step-later" })).toBe(true);
    expect(admitted("left-to-do", { item: "later-read" })).toBe(true);
    expect(admitted("left-to-do", { step: "no-such-step" })).toBe(false);
    expect(admitted("left-to-do", { step: "step-later", item: "later-read" })).toBe(false);
    expect(admitted("could-not-be-taken", { step: "step-later" })).toBe(false);
  });
});

describe("before something that is no covering", () => {
  const now = afterTwoDays;

  test("reads everything entered, or what is missing, of its own steps alone", () => {
    const b = book(sheet);
    const of = () => {
      const { state, all } = b.done();
      return beforehandOf(state, all, now).map(({ id, state: reads, missing }) => [id, reads, missing.map(({ about }) => about.item)]);
    };
    expect(of()).toEqual([["before-digging", "missing", ["way-known"]]]);
    b.answer("way-known", "is-wet");
    // what is bad is entered all the same
    expect(of()).toEqual([["before-digging", "everything entered", []]]);
  });

  test("by the default sheet a whole job has everything, and a job without entries lacks what its first two steps ask", () => {
    const ledger = twoDayLedger(defaultSheet(), { order: "as listed" });
    const state = jobState(ledger);
    expect(beforehandOf(state, findings(state), now)).toEqual([{ id: "before-digging", state: "everything entered", missing: [] }]);
    const bare = jobState({ ...ledger, entries: ledger.entries.slice(0, 2) });
    const [due] = beforehandOf(bare, findings(bare), now);
    const steps = new Set(due?.missing.map((line) => line.step));
    expect(steps).toEqual(new Set(defaultSheet().beforehand?.[0]?.steps));
    expect(due?.missing.length).toBeGreaterThan(10);
  });
});

describe("between two instants", () => {
  const at = (text: string): number => Date.parse(`2026-06-0${text}:00Z`);
  const instant = { quantity: "instant", unit: { inch: "instant", metric: "instant" } } as const;
  const ticket = bench({
    steps: [step("step-one", 0), step("step-dig", 1)],
    items: [
      lengthItem("good-from", { ...instant, ...asked }),
      lengthItem("good-until", { ...instant, ...asked }),
      answerItem("hole-begun", { step: "step-dig" }),
    ],
    checks: [
      {
        id: "ticket-check",
        step: "step-dig",
        title: words("Ticket"),
        function: "between two instants",
        items: ["good-from", "good-until"],
        begins: "step-dig",
        kind: "duration",
        weight: "asked",
        lower: 0,
      },
    ],
    beforehand: [{ id: "before-digging", title: words("before digging"), steps: ["step-one"] }],
  });
  const dated = (): Book => {
    const b = book(ticket);
    b.read("good-from", "2026-06-03T12:00Z", { unit: "instant" });
    b.read("good-until", "2026-06-05T12:00Z", { unit: "instant" });
    return b;
  };

  test.each([
    ["3T18:00", "within", 6],
    ["5T02:00", "within", 10],
    ["3T10:00", "outside", -2],
    ["5T18:00", "outside", -6],
  ] as const)("begun at %s: %s by %d h", (when, verdict, hours) => {
    const b = dated();
    const begins = b.answer("hole-begun", "is-dry", { at: at(when) });
    b.answer("hole-begun", "is-dry", { at: at(when) + 100 * hour });
    const finding = b.finding("ticket-check");
    expect(finding).toMatchObject({ verdict, kind: "duration", value: hours * hour, lower: 0 });
    expect(finding.entries).toContain(begins);
  });

  test("until the step has begun it waits, and the two dates stand for themselves", () => {
    const b = book(ticket);
    expect(b.finding("ticket-check").missing).toEqual([{ item: "good-from" }, { item: "good-until" }]);
    const whole = dated();
    expect(whole.finding("ticket-check")).toMatchObject({ verdict: "not taken", missing: [{ item: "hole-begun" }] });
    expect(whole.finding("good-until")).toMatchObject({ verdict: "within", weight: "asked" });
  });

  test.each([
    ["3T10:00", ["ticket-check"], at("3T12:00")],
    ["4T10:00", [], undefined],
    ["5T13:00", ["ticket-check"], undefined],
  ] as const)("before it has begun, the present is compared: %s", (when, missing, from) => {
    const { state, all } = dated().done();
    const [due] = beforehandOf(state, all, at(when));
    expect(due?.missing.map(({ about }) => about.check)).toEqual(missing);
    expect(due?.missing[0]?.from).toBe(from);
  });

  test("once it has begun, the present is no matter", () => {
    const b = dated();
    b.answer("hole-begun", "is-dry", { at: at("4T10:00") });
    const { state, all } = b.done();
    expect(beforehandOf(state, all, at("9T10:00"))).toEqual([{ id: "before-digging", state: "everything entered", missing: [] }]);
  });
});

test("a moment of the job is that of the first entry of the item which marks it", () => {
  const b = book(sheet);
  expect(momentOf(b.done().state, "first running")).toBeUndefined();
  const first = b.picture("water-runs");
  const at = b.clock();
  b.picture("water-runs");
  expect(momentOf(b.done().state, "first running")).toEqual({ at, entry: first });
  b.enter("corrected", { entry: { id: first, digest: "" }, reason: "of another job", withdrawn: true });
  expect(momentOf(b.done().state, "first running")?.entry).not.toBe(first);
});
