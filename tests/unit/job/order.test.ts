import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Entry, type JobLedger, jobState } from "#core/job/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { bench, book, computed, type Done, inch, lengthItem, minute, start } from "../../helpers/job.ts";
import { afterTwoDays, twoDayLedger } from "../../samples/two-day-job.ts";

const hour = 60 * minute;
const threeYears = 3 * 365 * 24 * hour;

/** Two phones at one job: the first three years ahead; the second right, then set back by an hour in mid-job. */
interface Work {
  readonly id: string;
  readonly kind: string;
  readonly what: unknown;
  readonly phone: "ahead" | "set-back";
  readonly run: number;
  /** True time. */
  readonly at: number;
}

function work(): { readonly ledger: JobLedger; readonly entries: readonly Work[]; readonly setBackAt: number } {
  const ledger = twoDayLedger(defaultSheet(), { order: "as listed" });
  const cover = ledger.entries.find((e) => (e.what as { item?: string }).item === "cover-shallowest")?.id ?? "";
  const named = (id: string) => ({ id, digest: id });
  const extra = [
    { kind: "corrected", what: { entry: named(cover), reason: "misread", replace: { typed: "6 0/16" } } },
    { kind: "rework-asked", what: { about: { item: "bed-screeded" }, reason: "uneven" } },
    { kind: "reworked", what: { about: { item: "bed-screeded" }, done: "screeded again", minutes: 20 } },
    { kind: "go-ahead", what: { covering: "backfill-basin", reason: "rain", role: "crew" } },
    { kind: "design-set", what: { figures: { rimBelowGrade: { typed: "5", unit: "in" } } } },
    { kind: "opened-up-again", what: { covering: "set-rock", exposed: "all", reason: "leak" } },
  ];
  const last = ledger.entries.at(-1)?.made ?? start;
  const all = [
    ...ledger.entries.map(({ id, kind, what, made }) => ({ id, kind, what, at: made })),
    ...extra.map((e, i) => ({ ...e, id: `extra-${i}`, at: last + (i + 1) * minute })),
  ];
  const runs = { ahead: 0, "set-back": 0 };
  const entries = all.map((entry, i): Work => {
    const phone = i % 3 === 0 ? "ahead" : "set-back";
    runs[phone] += 1;
    return { ...entry, phone, run: runs[phone] };
  });
  return { ledger, entries, setBackAt: (entries[Math.floor(entries.length / 2)]?.at ?? start) + minute / 2 };
}

const { ledger, entries: works, setBackAt } = work();

const clockOf = (phone: Work["phone"], at: number): number => (phone === "ahead" ? at + threeYears : at < setBackAt ? at : at - hour);

/** A time said beside an entry is told by the same clock as the entry. */
const toldBy = (phone: Work["phone"], what: unknown, at: number): unknown => {
  const said = (what as { at?: unknown }).at;
  return typeof said === "number" ? { ...(what as object), at: clockOf(phone, at) + (said - at) } : what;
};

/** What the edge gets when each phone sends what it has at these true times; the rest goes with the last. */
function delivered(contacts: Readonly<Record<Work["phone"], readonly number[]>>): readonly Entry[] {
  return works.map(({ id, kind, what, phone, run, at }) => {
    const received = contacts[phone].find((contact) => contact >= at) ?? Number.NaN;
    return {
      id,
      digest: id,
      kind,
      author: { person: "somebody", phone },
      run,
      made: clockOf(phone, at),
      sent: clockOf(phone, received),
      received,
      what: toldBy(phone, what, at) as never,
    };
  });
}

const numbered = (entries: readonly Entry[]): readonly Entry[] => entries.map((entry, i) => ({ ...entry, number: i + 1 }));
const outcome = (entries: readonly Entry[]): Omit<Done, "state"> => {
  const { all, clearances } = computed({ ...ledger, entries: numbered(entries) }, afterTwoDays);
  return { all, clearances };
};

const timeless = ({ all, clearances }: Omit<Done, "state">) => ({
  all: all.map(({ doubt, ...finding }) => (finding.kind === "duration" ? finding : { ...finding, doubt })),
  clearances,
});

const end = Math.max(...works.map(({ at }) => at)) + hour;
/** The set-back phone has met the edge on either side of it, as phones with signal do. */
const evening = { ahead: [end], "set-back": [setBackAt - 1, end] };
const times = fc.array(fc.integer({ min: start, max: end }), { maxLength: 6 });
const sorted = (list: readonly number[]): readonly number[] => [...list].sort((a, b) => a - b);

describe("the order of arrival", () => {
  const reference = outcome(delivered(evening));

  test("is not what the reference rests on: it has several verdicts, and coverings both clear and not", () => {
    expect(new Set(reference.all.map((f) => f.verdict)).size).toBeGreaterThan(2);
    expect(new Set(reference.clearances.map((c) => c.state))).toEqual(new Set(["clear", "on word", "not yet"]));
  });

  test("any arrival of the same entries gives the same findings and clearances", () => {
    const entries = delivered(evening);
    fc.assert(
      fc.property(fc.shuffledSubarray([...entries], { minLength: entries.length }), (shuffled) => {
        expect(outcome(shuffled)).toEqual(reference);
      }),
      { numRuns: 25 },
    );
  });

  test("any batches do too; only the doubt of a time passed knows how near the clocks were compared", () => {
    fc.assert(
      fc.property(times, times, fc.infiniteStream(fc.nat()), (ahead, setBack, stream) => {
        const entries = delivered({ ahead: sorted([...ahead, end]), "set-back": sorted([...setBack, setBackAt - 1, end]) });
        const keys = new Map(entries.map((entry) => [entry.id, stream.next().value as number]));
        const shuffled = [...entries].sort((a, b) => (keys.get(a.id) ?? 0) - (keys.get(b.id) ?? 0));
        expect(timeless(outcome(shuffled))).toEqual(timeless(reference));
      }),
      { numRuns: 25 },
    );
  });

  test("and the same as one phone with a right clock", () => {
    const right = works.map((w, run): Entry => {
      const { id, kind, what, at } = w;
      return { id, digest: id, kind, author: { person: "p", phone: "one" }, run, made: at, sent: end, received: end, what: what as never };
    });
    expect(timeless(outcome(right))).toEqual(timeless(reference));
  });
});

const bare = (id: string, phone: string, run: number, made: number, contact?: readonly [number, number]): Entry => ({
  id,
  digest: id,
  kind: "note-for-office",
  author: { person: "p", phone },
  run,
  made,
  ...(contact ? { sent: contact[0], received: contact[1] } : {}),
  what: { text: id },
});
const placesOf = (entries: readonly Entry[]) => jobState({ entries, versions: {} }).facts.map(({ id, at }) => [id, at - start]);

describe("clocks", () => {
  test("are corrected by the skew at the nearest contact", () => {
    // ten minutes slow at the first contact, twenty at the second
    const first = [start, start + 10 * minute] as const;
    const second = [start + 100 * minute, start + 120 * minute] as const;
    expect(
      placesOf([
        bare("first", "slow", 1, start, first),
        bare("near the first", "slow", 2, start + 40 * minute, second),
        bare("near the second", "slow", 3, start + 60 * minute, second),
        bare("other", "right", 1, start + 55 * minute, [start + 55 * minute, start + 55 * minute]),
      ]),
    ).toEqual([
      ["first", 10 * minute],
      ["near the first", 50 * minute],
      ["other", 55 * minute],
      ["near the second", 80 * minute],
    ]);
  });

  const doubtsOf = (...entries: readonly Entry[]) =>
    jobState({ entries, versions: {} }).facts.map(({ id, doubt }) => [id, Number(doubt.toFixed(3))]);
  /** An entry that went at once, by a way of so many milliseconds. */
  const went = (id: string, run: number, at: number, way: number) => bare(id, "a", run, at, [at, at + way]);

  test("a slow way is in the doubt: half a second, and by how much it was slower than the quickest", () => {
    // 1,500 ms on the way: 1,200 above the quickest, 300, of which a clock that drifts explains 20 ppm of the 10 s between them
    expect(doubtsOf(went("slow", 1, start, 1_500), went("quick", 2, start + 10_000, 300), went("usual", 3, start + 20_000, 350))).toEqual([
      ["slow", 500 + 1_200],
      ["quick", 500],
      ["usual", 500 + 50],
    ]);
  });

  test("what a quartz drifts between two contacts is no slower way: 20 ppm of an hour are 72 ms", () => {
    expect(
      doubtsOf(went("one", 1, start, 100), went("two", 2, start + hour, 100 + 72), went("three", 3, start + 2 * hour, 100 + 144 + 6)),
    ).toEqual([
      ["one", 500],
      ["two", 500],
      ["three", 500 + 6],
    ]);
  });

  test("a clock that was set is no slow way: ten minutes on, and the contacts of each side are compared among themselves", () => {
    const on = 10 * minute;
    const set = bare("set", "a", 3, start + 3 * minute + on, [start + 3 * minute + on, start + 3 * minute + 900]);
    const last = bare("last", "a", 4, start + 4 * minute + on, [start + 4 * minute + on, start + 4 * minute + 200]);
    // 700 ms and what drifted within a minute, 1.2 ms: to the millisecond
    expect(doubtsOf(went("one", 1, start, 100), went("two", 2, start + minute, 101), set, last)).toEqual([
      ["one", 500],
      ["two", 500],
      ["set", 500 + 699],
      ["last", 500],
    ]);
  });

  test("never by the entries' own times: what only the phone has says nothing about its clock", () => {
    expect(placesOf([bare("late", "a", 1, start + minute), bare("early", "b", 1, start)])).toEqual([
      ["early", 0],
      ["late", minute],
    ]);
  });

  test("within one phone the running number stands, whatever its clock did", () => {
    const contact = [start + 3 * minute, start + 3 * minute] as const;
    const order = placesOf([
      bare("one", "a", 1, start + 2 * minute, contact),
      bare("two", "a", 2, start, contact),
      bare("three", "a", 3, start + minute, contact),
    ]);
    expect(order.map(([id]) => id)).toEqual(["one", "two", "three"]);
  });

  test("set back between two contacts: each side by its own", () => {
    // right until minute 10, then an hour slow; the entry of minute 20 reads -40 and is nearer to the first contact
    expect(
      placesOf([
        bare("before", "a", 1, start + 5 * minute, [start + 9 * minute, start + 9 * minute]),
        bare("after", "a", 2, start - 40 * minute, [start + 200 * minute, start + 260 * minute]),
        bare("other", "b", 1, start + 15 * minute, [start + 15 * minute, start + 15 * minute]),
      ]),
    ).toEqual([
      ["before", 5 * minute],
      ["other", 15 * minute],
      ["after", 20 * minute],
    ]);
  });

  test("three years ahead and set right before any contact: nothing is later than the edge had it", () => {
    const contact = [start + hour, start + hour] as const;
    const places = placesOf([
      bare("ahead", "a", 1, start + threeYears, contact),
      bare("right", "a", 2, start + minute, contact),
      bare("other", "b", 1, start + 2 * hour, [start + 2 * hour, start + 2 * hour]),
    ]);
    expect(places.map(([id]) => id)).toEqual(["ahead", "right", "other"]);
  });

  test("entries of one moment stand in the order of their phones and ids, never as they came", () => {
    const entries = [bare("b", "y", 1, start), bare("a", "y", 1, start), bare("c", "x", 9, start)];
    expect(placesOf(entries)).toEqual(placesOf([...entries].reverse()));
    expect(placesOf(entries).map(([id]) => id)).toEqual(["c", "a", "b"]);
  });
});

test("the last word is the last in the work, not the last to arrive", () => {
  const sheet = bench({ items: [lengthItem("depth-read")] });
  const b = book(sheet);
  b.read("depth-read", "10 0/16", {}, { id: "the-depth" });
  const correct = (typed: string) => ({ entry: { id: "the-depth", digest: "" }, reason: "misread", replace: { typed } });
  b.enter("corrected", correct("11 0/16"), { phone: "two", at: start + 20 * minute });
  b.enter("corrected", correct("12 0/16"), { phone: "three", at: start + 10 * minute });
  const typed = b.done().state.facts.find((f) => f.id === "the-depth")?.what.typed;
  expect([typed, inch]).toEqual(["11 0/16", 25_400]);
});
