import { describe, expect, test } from "vitest";
import { clearances, type Entry, findings, type JobLedger, jobState } from "#core/job/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { asks, bench, book, computed, pictureItem } from "../../helpers/job.ts";
import { afterTwoDays, type TwoDayOptions, twoDayLedger } from "../../samples/two-day-job.ts";

const sheet = defaultSheet();
const coverings = sheet.coverings.map(({ id }) => id);
const whole = twoDayLedger(sheet, { order: "as listed" });
const wordsOf = (entry: Entry) => entry.what as { item?: string; tag?: string; set?: string; hiddenBy?: string };
const without = (drop: (entry: Entry) => boolean): JobLedger => ({ ...whole, entries: whole.entries.filter((entry) => !drop(entry)) });

/** Every item that holds, for each tag, as the two-day job entered it, with the covering that it holds. */
const holding = whole.entries.flatMap((entry) => {
  const { item: id, tag } = wordsOf(entry);
  const item = sheet.items.find((i) => i.id === id);
  if (item === undefined) return [];
  const one = sheet.oneOf.find((o) => o.groups.some((g) => g.items.includes(item.id)));
  const tagNamed = whole.entries.map(wordsOf).find((what) => what.set !== undefined && what.set === item.tags && what.tag === tag);
  const covering = one?.holds ?? (item.weight !== "holds" ? undefined : item.holds === "by tag" ? tagNamed?.hiddenBy : item.holds);
  return covering === undefined ? [] : [{ item: item.id, tag, covering, name: `${item.id}${tag === undefined ? "" : ` ${tag}`}` }];
});

describe("the three orders", () => {
  const orders: readonly TwoDayOptions["order"][] = ["as listed", "spillway before trench", "day one at night"];
  test.each(orders)("%s: all five coverings clear", (order) => {
    const done = computed(twoDayLedger(sheet, { order }), afterTwoDays);
    expect(done.clearances.map(({ covering, state, lines }) => [covering, state, lines])).toEqual(coverings.map((id) => [id, "clear", []]));
  });
});

describe("one item short", () => {
  test("every covering has items of its own in the loop below", () => {
    expect([...new Set(holding.map(({ covering }) => covering))].sort()).toEqual([...coverings].sort());
    const ways = sheet.oneOf.flatMap((one) => one.groups.slice(1).flatMap((group) => group.items));
    const untagged = sheet.tagSets.filter((set) => set.least === 0).map((set) => set.id);
    const due = sheet.items.filter(
      ({ id, weight, switches, tags }) => weight === "holds" && !switches?.on && !ways.includes(id) && !untagged.includes(tags ?? ""),
    );
    expect([...new Set(holding.map(({ item }) => item))].sort()).toEqual(due.map(({ id }) => id).sort());
  });

  test.each(holding)("$name holds $covering, names exactly itself, and nothing else", ({ item, tag, covering, name }) => {
    const { clearances: all } = computed(
      without((entry) => wordsOf(entry).item === item && wordsOf(entry).tag === tag),
      afterTwoDays,
    );
    expect(all.filter(({ state }) => state !== "clear").map((clearance) => [clearance.covering, clearance.state, asks(clearance)])).toEqual(
      [[covering, "not yet", [name]]],
    );
  });

  test("rigid pipe cures by the table; without a temperature both coverings that wait for it ask for one", () => {
    const timed = sheet.checks.find(({ lower }) => typeof lower === "object" && lower.function === "cure time");
    const limit = typeof timed?.lower === "object" ? timed.lower : undefined;
    const cold = limit?.items?.find((id) => sheet.items.find((item) => item.id === id)?.quantity === "temperature") ?? "";
    const { clearances: all } = computed(
      without((entry) => wordsOf(entry).item === cold),
      afterTwoDays,
    );
    const open = all.filter(({ state }) => state === "not yet");
    expect(open.map(asks)).toEqual([[`${cold} 1`], [`${cold} 2`]]);
  });

  test("without the pipe's size the can's own time is asked, and the size is named", () => {
    const sizeless: JobLedger = {
      ...whole,
      entries: whole.entries.map((entry) =>
        entry.kind === "design-set"
          ? { ...entry, what: { figures: { ...(entry.what as { figures: object }).figures, pipeSize: "unknown" } } }
          : entry,
      ),
    };
    const { all, clearances: now } = computed(sizeless, afterTwoDays);
    const timed = all.filter(({ unknown }) => unknown?.includes("pipeSize") === true).filter(({ weight }) => weight === "holds");
    expect(timed.map(({ verdict, missing, says }) => [verdict, missing?.length, says.key])).toEqual([
      // set and cure of two sessions, each waiting for the can's one time
      ["not taken", 1, "check.not-taken-unknown"],
      ["not taken", 1, "check.not-taken-unknown"],
      ["not taken", 1, "check.not-taken-unknown"],
      ["not taken", 1, "check.not-taken-unknown"],
    ]);
    expect(now.filter(({ state }) => state === "not yet").flatMap(({ lines }) => lines[0]?.waysOut[0])).toEqual(["take it", "take it"]);
  });
});

describe("tags", () => {
  test("a job without tags: every covering says not yet, and says to name them", () => {
    const { clearances: all } = computed(
      without((entry) => entry.kind === "tag-named"),
      afterTwoDays,
    );
    // stone over the basin hides no tag: it is held by its own pictures, which this job has
    const tagless = coverings.filter((id) => !sheet.tagSets.some((set) => set.least > 0 && set.coverings.includes(id)));
    for (const clearance of all.filter(({ covering }) => !tagless.includes(covering))) {
      expect(clearance.state).toBe("not yet");
      expect(clearance.lines.map((line) => line.waysOut)).toEqual(clearance.lines.map(() => ["name it"]));
    }
    expect(all.filter(({ covering }) => tagless.includes(covering)).map(({ state }) => state)).toEqual(tagless.map(() => "clear"));
  });

  test("a job just opened: every covering says not yet, with lines", () => {
    const b = book(sheet);
    for (const clearance of b.done().clearances) {
      expect(clearance.state).toBe("not yet");
      expect(clearance.lines.length).toBeGreaterThan(0);
    }
  });

  test.each(sheet.tagSets.filter((set) => set.least > 0))("$id: one fewer than its least holds all that could hide it", (set) => {
    let kept = 0;
    const short = without((entry) => {
      if (entry.kind !== "tag-named" || wordsOf(entry).set !== set.id) return false;
      kept += 1;
      return kept >= set.least;
    });
    const open = computed(short, afterTwoDays).clearances.filter(({ state }) => state === "not yet");
    expect(open.map(({ covering }) => covering).sort()).toEqual([...set.coverings].sort());
    for (const clearance of open) expect(asks(clearance)).toEqual([set.id]);
    for (const { lines } of open)
      expect(lines[0]?.reason).toEqual({ key: "tags.too-few", figures: { named: set.least - 1, least: set.least } });
  });

  const none = sheet.items.flatMap((item) => (item.whenNoTagOf === undefined ? [] : [{ item: item.id, set: item.whenNoTagOf }]));
  test.each(none)("without $set the answer 'none here' is asked; with one its own items are", ({ item, set }) => {
    expect(sheet.tagSets.find((s) => s.id === set)?.least).toBe(0);
    const [covering] = sheet.tagSets.find((s) => s.id === set)?.coverings ?? [];
    const { entries } = whole;
    const last = entries.at(-1);
    if (last === undefined || covering === undefined) throw new Error("no entries");
    const tag: Entry = { ...last, id: "one-more", run: last.run + 1, kind: "tag-named", what: { set, tag: "X", hiddenBy: covering } };
    const done = computed({ ...whole, entries: [...entries, tag] }, afterTwoDays);
    expect(done.all.some((f) => f.check === item)).toBe(false);
    const own = sheet.items.filter((i) => i.tags === set && i.weight === "holds").map((i) => `${i.id} X`);
    expect(asks(done.clearances.find((c) => c.covering === covering) ?? { covering, state: "not yet", lines: [] })).toEqual(own);
  });

  test("a tag whose covering is no covering of its set stands under the first of them, and escapes none", () => {
    const odd = {
      ...whole,
      entries: whole.entries.map((e) => (e.kind === "tag-named" ? { ...e, what: { ...wordsOf(e), hiddenBy: "nowhere" } } : e)),
    };
    for (const tag of jobState(odd).tags) expect(coverings).toContain(tag.hiddenBy);
  });

  test("a tag named again is hidden by what it was named with last", () => {
    const tagged = bench({
      tagSets: [{ id: "pipe-joint", title: { en: "Joint" }, least: 1, coverings: ["bury-it", "close-it"] }],
      items: [pictureItem("joint-seen", { tags: "pipe-joint", holds: "by tag" })],
    });
    const b = book(tagged);
    b.tag("pipe-joint", "A", "bury-it");
    expect(b.done().clearances.map(asks)).toEqual([["joint-seen A"], []]);
    b.tag("pipe-joint", "A", "close-it");
    expect(b.done().clearances.map(asks)).toEqual([[], ["joint-seen A"]]);
    expect(b.done().state.tags).toHaveLength(1);
  });
});

describe("findings", () => {
  test("the same state gives the same findings, and no clock enters into them", () => {
    const state = jobState(whole);
    expect(findings(state)).toEqual(findings(jobState(structuredClone(whole))));
    expect(findings(state)).toEqual(findings(state));
    expect(findings.length).toBe(1);
  });

  test("each of a job with 300 entries, and how long they take", () => {
    const readings = whole.entries.filter((entry) => entry.kind === "reading-taken");
    const more = Array.from({ length: 300 - whole.entries.length }, (_, i): Entry => {
      const of = readings[i % readings.length];
      if (of === undefined) throw new Error("no readings");
      return { ...of, id: `more-${i}`, run: whole.entries.length + i };
    });
    const ledger = { ...whole, entries: [...whole.entries, ...more] };
    expect(ledger.entries).toHaveLength(300);
    const before = performance.now();
    const all = findings(jobState(ledger));
    const took = performance.now() - before;
    console.log(`findings of 300 entries: ${took.toFixed(0)} ms, ${all.length} findings`);
    expect(all.length).toBeGreaterThan(80);
    expect(clearances(jobState(ledger), all, afterTwoDays)).toHaveLength(coverings.length);
  });
});
