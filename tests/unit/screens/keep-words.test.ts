import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readLength } from "#core/reading/index.ts";
import { goalsOf } from "#core/screens/field/covering/goals.ts";
import { nextName } from "#core/screens/field/covering/next-name.ts";
import type { OwnPhoto } from "#core/screens/field/keep/index.ts";
import { instantOf, instantText } from "#core/screens/field/reading/instants.ts";
import { calledOut, type Marks, markAt, markText, scales } from "#core/screens/field/reading/marks.ts";
import { pointsOf } from "#core/screens/field/reading/set-up-points.ts";
import { archiveOf, partsOf } from "#core/screens/field/save-file.ts";
import { bench, book, lengthItem, pictureItem } from "../../helpers/job.ts";

describe("what is saved to a file", () => {
  const photo = (sha256: string, bytes: number): OwnPhoto => ({ sha256, bytes }) as OwnPhoto;
  const names = (photos: readonly OwnPhoto[]): readonly (readonly string[])[] =>
    partsOf(photos).map((part) => part.map(({ sha256 }) => sha256));

  test("goes in parts of at most 48 MB, in order, and a photo that is larger by itself has a part of its own", () => {
    const mega = 1_000_000;
    expect(names([photo("a", 20 * mega), photo("b", 28 * mega), photo("c", 1), photo("d", 50 * mega), photo("e", 1)])).toEqual([
      ["a", "b"],
      ["c"],
      ["d"],
      ["e"],
    ]);
    // entries without a photo are saved too
    expect(partsOf([])).toEqual([[]]);
  });

  test("reads back byte for byte with another reader", async () => {
    const random = crypto.getRandomValues(new Uint8Array(60_000));
    const text = new TextEncoder().encode('{"entries":[]}');
    const archive = await archiveOf([
      { name: "entries.json", bytes: text },
      { name: "ñ.jpg", bytes: random },
      { name: "empty.bin", bytes: new Uint8Array(0) },
    ]);
    const files = unzipSync(new Uint8Array(await archive.arrayBuffer()));
    expect(Object.keys(files)).toEqual(["entries.json", "ñ.jpg", "empty.bin"]);
    expect(strFromU8(files["entries.json"] as Uint8Array)).toBe('{"entries":[]}');
    expect(Buffer.from(files["ñ.jpg"] as Uint8Array).equals(Buffer.from(random))).toBe(true);
    expect(files["empty.bin"]?.length).toBe(0);
  });
});

describe("points of a set-up", () => {
  const [mark, left, right] = [lengthItem("mark"), lengthItem("left"), lengthItem("right", { tags: "rock" })];
  const live = (id: string, item: string, tag?: string) => ({ id, what: { item, ...(tag === undefined ? {} : { tag }) } }) as never;
  const shown = (facts: readonly never[], tag?: string) =>
    pointsOf([mark, left, right, mark], tag, facts).map(({ item, tag: at, fact }) => [item.id, at, fact?.id]);

  test("readings are put to them in the order in which they were read: the mark's first one, each place, the mark's second one", () => {
    expect(shown([])).toEqual([
      ["mark", undefined, undefined],
      ["left", undefined, undefined],
      ["right", undefined, undefined],
      ["mark", undefined, undefined],
    ]);
    const facts = [live("r1", "mark"), live("r2", "left"), live("r3", "right", "B"), live("r4", "mark")];
    expect(shown(facts, "B").map(([, , fact]) => fact)).toEqual(["r1", "r2", "r3", "r4"]);
    // another rock's reading is not this one's, and the first mark's is not the closing one's
    expect(shown(facts.slice(0, 3), "A").map(([, , fact]) => fact)).toEqual(["r1", "r2", undefined, undefined]);
  });
});

describe("marks of the drawn tape", () => {
  // one mark of each tape in micrometres, rounded once: 25400/16, 25400/8, 25400/10, a millimetre
  const step: Readonly<Record<Marks, number>> = { "1/16": 1588, "1/8": 3175, "1/10": 2540, mm: 1000 };

  test.each(Object.keys(scales) as Marks[])("%s: every mark reads back as itself, read as finely as it was drawn", (marks) => {
    for (let n = 0; n <= 700; n += 1) {
      const read = readLength(markText(marks, n), scales[marks].unit);
      if (!read.ok) throw new Error(`${markText(marks, n)}: ${read.refusal.code}`);
      const { perNumber } = scales[marks];
      expect(read.value.micrometres).toBe(marks === "mm" ? n * 1000 : Math.round((n * 25_400) / perNumber));
      expect(read.value.resolution).toBe(step[marks]);
      expect(markAt(marks, read.value.micrometres)).toBe(n);
    }
  });

  test("is called out in lowest terms", () => {
    expect([8, 0, 12, 656, 664].map((n) => calledOut("1/16", n))).toEqual(["1/2 in", "0 in", "3/4 in", "41 in", "41 1/2 in"]);
    expect([calledOut("1/8", 3), calledOut("1/10", 415), calledOut("mm", 1055)]).toEqual(["3/8 in", "41.5 in", "1055 mm"]);
  });
});

describe("instants as the site's clock says them", () => {
  // rules of the tz database for 2026: New York changes on 8 March and 1 November, Berlin on 29 March and 25 October,
  // Lord Howe by half an hour on 5 April; Kathmandu and St John's stand on quarters and halves
  test.each([
    ["America/New_York", "2026-06-01T07:05", Date.UTC(2026, 5, 1, 11, 5), "2026-06-01T07:05-04:00"],
    ["America/New_York", "2026-12-01T23:30", Date.UTC(2026, 11, 2, 4, 30), "2026-12-01T23:30-05:00"],
    ["UTC", "2026-06-01T07:05", Date.UTC(2026, 5, 1, 7, 5), "2026-06-01T07:05+00:00"],
    ["Asia/Kathmandu", "2026-06-01T07:05", Date.UTC(2026, 5, 1, 1, 20), "2026-06-01T07:05+05:45"],
    ["America/St_Johns", "2026-01-15T12:00", Date.UTC(2026, 0, 15, 15, 30), "2026-01-15T12:00-03:30"],
    // a time that the autumn night has twice is the first of them, west and east of Greenwich
    ["America/New_York", "2026-11-01T01:30", Date.UTC(2026, 10, 1, 5, 30), "2026-11-01T01:30-04:00"],
    ["Europe/Berlin", "2026-10-25T02:30", Date.UTC(2026, 9, 25, 0, 30), "2026-10-25T02:30+02:00"],
    ["Australia/Lord_Howe", "2026-04-05T01:45", Date.UTC(2026, 3, 4, 14, 45), "2026-04-05T01:45+11:00"],
    // and the hours around the change
    ["America/New_York", "2026-11-01T02:00", Date.UTC(2026, 10, 1, 7, 0), "2026-11-01T02:00-05:00"],
    ["Europe/Berlin", "2026-03-29T03:00", Date.UTC(2026, 2, 29, 1, 0), "2026-03-29T03:00+02:00"],
    // a time that the spring night leaves out counts on from before it: half past two is half past three
    ["America/New_York", "2026-03-08T02:30", Date.UTC(2026, 2, 8, 7, 30), "2026-03-08T03:30-04:00"],
    ["Europe/Berlin", "2026-03-29T02:30", Date.UTC(2026, 2, 29, 1, 30), "2026-03-29T03:30+02:00"],
  ])("%s %s", (zone, typed, instant, text) => {
    expect(instantOf(typed, zone)).toBe(instant);
    expect(instantText(instant, zone)).toBe(text);
    expect(Date.parse(text)).toBe(instant);
  });

  test("what is no day and time is none; a zone that this phone does not know is UTC", () => {
    expect(instantOf("", "UTC")).toBeUndefined();
    expect(instantOf("2026-13-01T07:05", "UTC")).toBeUndefined();
    expect(instantText(Date.UTC(2026, 5, 1, 7, 5), "Nowhere/None")).toBe("2026-06-01T07:05+00:00");
  });
});

test.each([
  [[], "1"],
  [["1", "2"], "3"],
  [["7", "2"], "8"],
  [["A"], "B"],
  [["b"], "C"],
  [["B", "A"], "C"],
  [["Y"], "Z"],
  [["Z"], "2"],
  [["by the wall"], "2"],
  [["A", "2"], "3"],
  [["1", "by the wall"], "2"],
])("after %j comes %s", (known, next) => {
  expect(nextName(known)).toBe(next);
  expect(known).not.toContain(next);
});

describe("where an entry can be moved to", () => {
  const items = [
    lengthItem("depth", { tags: "joint" }),
    lengthItem("width"),
    lengthItem("lip", { step: "step-two" }),
    lengthItem("in-set-up", { inSetUp: true }),
    lengthItem("time", { quantity: "duration" }),
    pictureItem("picture"),
  ];
  const b = book(bench({ tagSets: [{ id: "joint", title: { en: "Joint" }, least: 1, coverings: ["bury-it"] }], items }));
  b.tag("joint", "A", "bury-it");
  b.tag("joint", "B", "bury-it");
  const { tags } = b.done().state;
  const goals = (id: string, tag?: string) => {
    const item = items.find((one) => one.id === id);
    if (item === undefined) throw new Error(id);
    return goalsOf(items, tags, { item, ...(tag === undefined ? {} : { tag }) }).map((goal) => [goal.item.id, goal.tag]);
  };

  test("the same thing elsewhere first, then its own step, then the others: always of its own kind, never where it is", () => {
    expect(goals("depth", "A")).toEqual([
      ["depth", "B"],
      ["width", undefined],
      ["lip", undefined],
    ]);
    expect(goals("width")).toEqual([
      ["depth", "A"],
      ["depth", "B"],
      ["lip", undefined],
    ]);
    expect(goals("picture")).toEqual([]);
  });
});
