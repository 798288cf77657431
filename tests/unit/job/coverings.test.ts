import { describe, expect, test } from "vitest";
import type { Check } from "#core/job/index.ts";
import { answerItem, asks, bench, book, inch, lengthItem, minute, pictureItem, start } from "../../helpers/job.ts";

const atLeast = (id: string, item: string, more: Partial<Check> = {}): Check => ({
  id,
  step: "step-one",
  title: { en: id },
  function: "single value",
  items: [item],
  kind: "length",
  weight: "holds",
  holds: "bury-it",
  aim: 10 * inch,
  lower: 8 * inch,
  ...more,
});
const sheet = bench({
  switches: [{ id: "valve-fitted", title: { en: "Valve" }, standard: false }],
  items: [
    lengthItem("depth-read"),
    lengthItem("design-read"),
    pictureItem("bed-seen"),
    answerItem("valve-shut", { switches: { on: ["valve-fitted"] } }),
    pictureItem("ticket-seen", { weight: "if you have it" }),
    pictureItem("fill-seen", { weight: "asked", needsHidden: "bury-it" }),
    answerItem("lid-on", { holds: "close-it" }),
  ],
  checks: [
    atLeast("depth-check", "depth-read"),
    atLeast("design-check", "design-read", {
      aim: { function: "design figure", figure: "depthWanted" },
      lower: { function: "design figure", figure: "depthWanted", offset: -inch },
    }),
    {
      id: "ticket-check",
      step: "step-one",
      title: { en: "Ticket" },
      function: "at least one of",
      items: ["ticket-seen"],
      kind: "count",
      weight: "holds",
      holds: "bury-it",
    },
  ],
});
const wanted = (typed: string, switches: Record<string, boolean> = {}) => ({ figures: { depthWanted: { typed, unit: "in" } }, switches });

function complete() {
  const b = book(sheet);
  b.enter("design-set", wanted("12"));
  b.read("depth-read", "10 0/16", {}, { id: "the-depth" });
  b.read("design-read", "12 0/16");
  b.picture("bed-seen");
  b.picture("ticket-seen");
  return b;
}
const opened = (exposed: "all" | readonly Record<string, string>[]) => ({
  covering: "bury-it",
  exposed: exposed as never,
  reason: "a leak",
});

describe("covered", () => {
  test("on a clear: when, and what the phone showed", () => {
    const b = complete();
    const covered = b.covered("bury-it", "clear");
    expect(b.clearance("bury-it").covered).toEqual({
      entry: covered,
      at: b.clock(),
      noLaterThan: false,
      shown: "clear",
      shownLines: [],
      laterDoubted: false,
    });
  });

  test("said later than it happened: the time that was said", () => {
    const b = complete();
    b.covered("bury-it", "clear", { at: start + 3 * minute });
    expect(b.clearance("bury-it").covered?.at).toBe(start + 3 * minute);
  });

  test("against a not yet: recorded with its lines, not refused, and not called doubted", () => {
    const b = book(sheet);
    b.covered("bury-it", "not yet", { lines: ["depth-read"] });
    expect(b.clearance("bury-it")).toMatchObject({
      state: "not yet",
      covered: { shown: "not yet", shownLines: ["depth-read"], laterDoubted: false },
    });
  });

  test("judged twice: clear then, doubted by what came to the phone later", () => {
    const b = complete();
    b.covered("bury-it", "clear");
    b.enter("corrected", { entry: { id: "the-depth", digest: "" }, reason: "misread", replace: { typed: "6 0/16" } });
    expect(b.clearance("bury-it")).toMatchObject({ state: "not yet", covered: { shown: "clear", laterDoubted: true } });
    b.enter("concession", { about: { check: "depth-check" }, extent: "all", reason: "as is" });
    expect(b.clearance("bury-it")).toMatchObject({ state: "clear", covered: { shown: "clear", laterDoubted: false } });
  });

  test("said twice without being opened: the first stands", () => {
    const b = complete();
    const first = b.covered("bury-it", "not yet");
    b.covered("bury-it", "clear");
    expect(b.clearance("bury-it").covered).toMatchObject({ entry: first, shown: "not yet" });
  });

  test("nobody said so: no later than the first entry of something that needs it hidden", () => {
    const b = complete();
    expect(b.clearance("bury-it").covered).toBeUndefined();
    const first = b.picture("fill-seen");
    const at = b.clock();
    b.picture("fill-seen");
    expect(b.clearance("bury-it").covered).toEqual({ entry: first, at, noLaterThan: true, laterDoubted: false });
    const said = b.covered("bury-it");
    expect(b.clearance("bury-it").covered).toMatchObject({ entry: said, noLaterThan: false });
  });

  test("withdrawn: it was never covered", () => {
    const b = complete();
    const said = b.covered("bury-it");
    b.enter("corrected", { entry: { id: said, digest: "" }, reason: "wrong button", withdrawn: true });
    expect(b.clearance("bury-it").covered).toBeUndefined();
  });

  test("announced: about when, until it has happened", () => {
    const b = complete();
    b.enter("covering-announced", { covering: "bury-it", about: start + 60 * minute });
    const last = b.enter("covering-announced", { covering: "bury-it", about: start + 90 * minute });
    expect(b.clearance("bury-it").announced).toEqual({ entry: last, about: start + 90 * minute });
    expect(b.clearance("close-it").announced).toBeUndefined();
    b.covered("bury-it");
    expect(b.clearance("bury-it").announced).toBeUndefined();
    b.enter("opened-up-again", opened("all"));
    expect(b.clearance("bury-it").announced).toBeUndefined();
  });
});

describe("opened up again", () => {
  test("all of it: everything that it hid is asked again, and nothing else", () => {
    const b = complete();
    b.answer("lid-on", "is-dry");
    b.covered("bury-it");
    b.enter("opened-up-again", opened("all"));
    expect(asks(b.clearance("bury-it"))).toEqual(["bed-seen", "depth-read", "design-read", "ticket-seen"]);
    expect(b.clearance("bury-it").covered).toBeUndefined();
    expect(b.clearance("close-it").state).toBe("clear");
    expect(b.finding("bed-seen").says.key).toBe("item.not-taken-again");
  });

  test("in part: exactly what was exposed", () => {
    const b = complete();
    b.covered("bury-it");
    b.enter("opened-up-again", opened([{ item: "bed-seen" }]));
    expect(asks(b.clearance("bury-it"))).toEqual(["bed-seen"]);
    b.picture("bed-seen");
    expect(b.clearance("bury-it")).toEqual({ covering: "bury-it", state: "clear", lines: [] });
    const again = b.covered("bury-it");
    expect(b.clearance("bury-it").covered?.entry).toBe(again);
  });

  test("a word given before it no longer counts", () => {
    const b = complete();
    b.enter("does-not-apply", { about: { item: "bed-seen" }, reason: "rock bottom", role: "office" });
    b.enter("does-not-apply", { about: { check: "depth-check" }, reason: "rock bottom", role: "office" });
    b.covered("bury-it");
    b.enter("opened-up-again", opened("all"));
    expect(asks(b.clearance("bury-it"))).toContain("bed-seen");
    expect(asks(b.clearance("bury-it"))).toContain("depth-read");
  });

  test("an entry that needs it hidden, from before it was opened, does not cover it again", () => {
    const b = complete();
    b.picture("fill-seen");
    b.enter("opened-up-again", opened("all"));
    expect(b.clearance("bury-it").covered).toBeUndefined();
  });
});

describe("rework", () => {
  test("opens a new series; the old one is kept with its verdicts", () => {
    const b = complete();
    b.enter("corrected", { entry: { id: "the-depth", digest: "" }, reason: "misread", replace: { typed: "6 0/16" } });
    const done = b.enter("reworked", { about: { check: "depth-check" }, done: "dug deeper", minutes: 30 });
    expect(asks(b.clearance("bury-it"))).toEqual(["depth-read"]);
    expect(b.finding("depth-check")).toMatchObject({ verdict: "not taken", beforeRework: [{ value: 6 * inch, verdict: "outside" }] });
    b.read("depth-read", "11 0/16", {}, { id: "again" });
    expect(b.finding("depth-check")).toMatchObject({
      verdict: "within",
      value: 11 * inch,
      entries: ["again"],
      by: { way: "rework", entry: done },
      beforeRework: [{ value: 6 * inch, verdict: "outside" }],
    });
  });

  test("twice: both old series are kept, in order", () => {
    const b = complete();
    b.enter("reworked", { about: { item: "depth-read" }, done: "dug", minutes: 30 });
    b.read("depth-read", "6 0/16");
    b.enter("reworked", { about: { check: "depth-check" }, done: "dug again", minutes: 10 });
    b.read("depth-read", "11 0/16");
    expect(b.finding("depth-check").beforeRework).toEqual([
      { value: 10 * inch, verdict: "within" },
      { value: 6 * inch, verdict: "outside" },
    ]);
  });

  test("of an item without a check: by rework once it is taken again", () => {
    const b = complete();
    const done = b.enter("reworked", { about: { item: "bed-seen" }, done: "screeded again", minutes: 15 });
    expect(asks(b.clearance("bury-it"))).toEqual(["bed-seen"]);
    b.picture("bed-seen");
    expect(b.finding("bed-seen")).toMatchObject({ verdict: "within", by: { way: "rework", entry: done } });
  });

  test("asked for by the office: kept, and holds nothing by itself", () => {
    const b = complete();
    b.enter("rework-asked", { about: { item: "bed-seen" }, reason: "uneven" });
    expect(b.clearance("bury-it").state).toBe("clear");
    expect(b.done().state.facts.at(-1)).toMatchObject({ kind: "rework-asked", standing: "counts" });
  });
});

describe("the design and the sheet in force", () => {
  test("a later design change does not change what was covered", () => {
    const b = complete();
    b.covered("bury-it");
    const before = b.done().all;
    b.enter("design-set", wanted("20", { "valve-fitted": true }));
    expect(b.done().all).toEqual(before);
    b.enter("opened-up-again", opened([{ item: "bed-seen" }]));
    expect(b.finding("design-check")).toMatchObject({ verdict: "outside", lower: 19 * inch });
    expect(asks(b.clearance("bury-it"))).toContain("valve-shut");
  });

  test("before it is covered the newest counts, figure by figure", () => {
    const b = complete();
    b.enter("design-set", { switches: { "valve-fitted": true } });
    expect(b.finding("design-check")).toMatchObject({ verdict: "within", lower: 11 * inch });
    expect(asks(b.clearance("bury-it"))).toEqual(["valve-shut"]);
  });

  test("a design changed in the same moment, but after it in the order of the work, is later", () => {
    const b = complete();
    b.covered("bury-it");
    b.enter("design-set", wanted("20"), { at: b.clock() });
    expect(b.finding("design-check")).toMatchObject({ verdict: "within", lower: 11 * inch });
  });

  test("covered in the morning, said so at night: the design of the morning", () => {
    const b = complete();
    const morning = b.clock();
    b.enter("design-set", wanted("20"), { phone: "the office", at: morning + 60 * minute });
    b.covered("bury-it", "clear", { at: morning + minute }, { at: morning + 600 * minute });
    expect(b.finding("design-check")).toMatchObject({ verdict: "within", lower: 11 * inch });
  });

  test("covered no later than: a departure agreed after that was not agreed beforehand", () => {
    const b = complete();
    b.enter("corrected", { entry: { id: "the-depth", digest: "" }, reason: "misread", replace: { typed: "7 0/16" } });
    b.picture("fill-seen");
    b.enter("departure-agreed", { about: { check: "depth-check" }, lower: 6 * inch, reason: "rock" });
    expect(asks(b.clearance("bury-it"))).toEqual(["depth-check"]);
  });

  test("a version taken over moves the sheet, for what is covered too; the new one must be there", () => {
    const tighter = {
      ...sheet,
      version: 2,
      checks: sheet.checks.map((c) => (c.id === "depth-check" ? { ...c, aim: 14 * inch, lower: 12 * inch } : c)),
    };
    const digest = "d".repeat(64);
    const b = book(sheet, { [digest]: tighter as never });
    b.read("depth-read", "10 0/16");
    expect(b.finding("depth-check").verdict).toBe("within");
    b.enter("version-taken-over", { thing: "sheet", name: sheet.id, number: 2, digest });
    expect(b.finding("depth-check")).toMatchObject({ verdict: "outside", lower: 12 * inch });
    expect(b.done().state).toMatchObject({ sheetDigest: digest });
  });

  test("a kit card's figure counts where the design is silent, and the newest card of a name", () => {
    const card = (typed: string) => ({ id: "pump-card", part: "Pump", facts: { depthWanted: { typed, unit: "in" }, note: "unknown" } });
    const b = book(sheet, {
      one: card("12"),
      two: card("20"),
      odd: null,
      other: { id: "x", part: "x", facts: { depthWanted: "unknown" } },
    });
    const take = (digest: string, name = "pump") => b.enter("version-taken-over", { thing: "kit card", name, number: 1, digest });
    b.read("design-read", "12 0/16");
    expect(b.finding("design-check").unknown).toEqual(["depthWanted"]);
    take("odd", "nothing in it");
    take("missing", "not attached");
    take("one");
    expect(b.finding("design-check")).toMatchObject({ verdict: "within", lower: 11 * inch });
    take("two");
    expect(b.finding("design-check")).toMatchObject({ verdict: "outside", lower: 19 * inch });
    b.enter("design-set", wanted("12"));
    expect(b.finding("design-check").lower).toBe(11 * inch);
    b.enter("design-set", { figures: { depthWanted: "unknown" } });
    expect(b.finding("design-check").unknown).toEqual(["depthWanted"]);
  });
});

describe("handing over", () => {
  test("reads everything entered, or what is missing, of what holds and of what is asked", () => {
    const b = complete();
    b.enter("signed", { relation: "customer", language: "en" });
    expect(b.handingOver().missing.map((line) => line.about.item)).toEqual(["fill-seen", "lid-on"]);
    b.answer("lid-on", "is-wet");
    // what is bad is entered all the same: the record shows it
    expect(b.handingOver().missing.map((line) => line.about.item)).toEqual(["fill-seen"]);
    const left = b.enter("left-to-do", { text: "picture of the fill", by: "2026-07-01", about: { item: "fill-seen" } });
    expect(b.handingOver()).toEqual({
      state: "everything entered",
      missing: [],
      leftToDo: [{ entry: left, text: "picture of the fill", by: "2026-07-01", about: { item: "fill-seen" }, done: false }],
    });
    b.enter("left-to-do-done", { entry: { id: left, digest: "" } });
    expect(b.handingOver().leftToDo.map(({ done }) => done)).toEqual([true]);
    // said to be done, and yet not there: missing again
    expect(b.handingOver().missing.map((line) => line.about.item)).toEqual(["fill-seen"]);
  });

  test("what could not be taken is missing where it holds, until somebody decided", () => {
    const b = complete();
    b.enter("not-reached", { how: "rang twice" });
    b.answer("lid-on", "is-dry");
    b.enter("could-not-be-taken", { about: { item: "fill-seen" }, reason: "dark" });
    expect(b.handingOver().state).toBe("everything entered");
    b.enter("could-not-be-taken", { about: { item: "lid-on" }, reason: "dark" });
    expect(b.handingOver().missing.map((line) => line.about.item)).toEqual(["lid-on"]);
    b.enter("concession", { about: { item: "lid-on" }, extent: "all", reason: "seen by all" });
    expect(b.handingOver().state).toBe("everything entered");
  });
});
