import { describe, expect, test } from "vitest";
import type { Spot } from "#core/geometry/index.ts";
import {
  aboutToBeBuried,
  admit,
  cardLayout,
  disagreeingOn,
  isMeasurable,
  type PhotoComparison,
  photoComparisons,
  photoMeasured,
  photoNeeds,
  printScale,
  readSheet,
  type SeenSpot,
  type Whats,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import { card, height, middle, seenFrom, type View, width } from "../../helpers/card-seen.ts";
import { type Book, bench, book, lengthItem, type What } from "../../helpers/job.ts";

const view: View = { tilt: 0.4, away: 0.8, right: 0.02, down: -0.05, k: 0 };
const photo = "c".repeat(64);
const thousandths = ({ x, y }: Spot, u = 100): SeenSpot => [Math.round(1000 * x), Math.round(1000 * y), u];

/** Two spots 508 mm (20 in) apart beside the card, on its plane, as the pinhole sees them. */
const left: Spot = { x: middle.x - 254_000, y: middle.y + 100_000 };
const right: Spot = { x: middle.x + 254_000, y: middle.y + 100_000 };

const words = (more: Partial<Whats["photo-measured"]> = {}, heightAt: (spot: Spot) => number = () => 0): Whats["photo-measured"] => ({
  item: "the-length",
  photo,
  width,
  height,
  paper: "letter",
  ruler: { typed: "254.0", unit: "mm" },
  lens: { distortion: 0, within: 50 },
  codes: card.map(({ corners }, place) => ({
    place: place as 0 | 1 | 2 | 3,
    corners: corners.map((spot) => thousandths(seenFrom(view, spot, heightAt(spot)), 50)) as unknown as [
      SeenSpot,
      SeenSpot,
      SeenSpot,
      SeenSpot,
    ],
  })),
  from: thousandths(seenFrom(view, left), 250),
  to: thousandths(seenFrom(view, right), 250),
  ...more,
});
const enter = (b: Book, what: Whats["photo-measured"]): string => b.enter("photo-measured", what as unknown as What);
const sheet = bench({
  items: [
    lengthItem("the-length", { onOnePlane: true }),
    lengthItem("the-rod", { onOnePlane: true, instrument: "bench-laser", inSetUp: true }),
  ],
});
const compared = (b: Book): readonly PhotoComparison[] => photoComparisons(b.done().state, "all");

describe("a length in a photo, from what its entry says alone", () => {
  test("the card that these tests see is the one that is printed", () => {
    expect(cardLayout("letter").codes.map(({ corners }) => corners)).toEqual(card.map(({ corners }) => corners));
  });

  test("20 in are found to the part of a millimetre, within what it says of itself", () => {
    const found = photoMeasured(words());
    if (!found.ok) throw new Error(found.refusal.code);
    const { micrometres, doubt } = found.value.length;
    // spots are entered in thousandths of a pixel: 0.3 mm in a pixel
    expect(Math.abs(micrometres - 508_000)).toBeLessThanOrEqual(5);
    expect(found.value.plane.flat).toBe(true);
    // the ruler's 250 µm of 254 mm alone make 2 × 0.5 mm / √3
    expect(doubt).toBeGreaterThan(577);
    expect(doubt).toBeLessThan(1588);
  });

  test("a card that was printed to 96 of 100 measures everything too long, until a tape has said what its ruler is", () => {
    // 10 in × 0.96 = 9.6 in; what is 20 in long looks as long as 20 / 0.96 on such a card
    const shrunk = photoMeasured(words({ ruler: { typed: "9.60", unit: "in" } }));
    if (!shrunk.ok) throw new Error(shrunk.refusal.code);
    expect(Math.abs(shrunk.value.length.micrometres - 0.96 * 508_000)).toBeLessThanOrEqual(5);
  });

  test("without a ruler the print's six of a hundred stand in its doubt: half-width over √3, twice", () => {
    const { ruler: _, ...without } = words();
    const found = photoMeasured(without);
    if (!found.ok) throw new Error(found.refusal.code);
    expect(found.value.length.length.parts.get("print")).toBeCloseTo((0.508 * 0.06) / Math.sqrt(3), 5);
    expect(found.value.length.doubt).toBeGreaterThan((2 * 508_000 * 0.06) / Math.sqrt(3));
  });

  test("a ruler is doubtful by half of what it was read to, and by a quarter millimetre at least", () => {
    // half of 1/16 in, 794 µm of 254,000
    const read = printScale("letter", { typed: "10 1/16", unit: "in" });
    if (!read.ok) throw new Error(read.refusal.code);
    expect(read.value.scale).toBeCloseTo(10.0625 / 10, 5);
    expect(read.value.within).toBe(3126);
    // 250 µm of 254 mm
    expect(printScale("a4", { typed: "254.0", unit: "mm" })).toMatchObject({ ok: true, value: { scale: 1, within: 985 } });
    expect(printScale("a4", { typed: "12", unit: "in" })).toMatchObject({ ok: false, refusal: { code: "reading-out-of-range" } });
    expect(printScale("a4", { typed: "ten", unit: "in" }).ok).toBe(false);
    // a tape that was laid from its 1 in mark: the inch was not taken off, or was taken off twice
    for (const typed of ["11 0/16", "9 0/16"]) {
      const refusal = { code: "reading-out-of-range", place: "ruler/typed" };
      expect(printScale("letter", { typed, unit: "in" })).toMatchObject({ ok: false, refusal });
    }
    // 94 of 100, as A4 comes out on letter paper
    expect(printScale("letter", { typed: "9.40", unit: "in" })).toMatchObject({ ok: true });
  });
});

describe("beside the tape's reading", () => {
  test("they agree where they differ by no more than both doubts together", () => {
    const b = book(sheet);
    const reading = b.read("the-length", "20 0/16");
    enter(b, words());
    const [one] = compared(b);
    expect(one).toMatchObject({ says: "agree", item: "the-length", photo, reading, tape: { value: 508_000 } });
    expect(one?.because).toBeUndefined();
  });

  test("they disagree where the tape says an inch more; the last reading speaks", () => {
    const b = book(sheet);
    b.read("the-length", "21 0/16");
    enter(b, words());
    expect(compared(b)[0]?.says).toBe("disagree");
    const { state, all, clearances } = b.done();
    expect(aboutToBeBuried(state, all, clearances).lines).toContainEqual(
      expect.objectContaining({ is: "tape and photo disagree", about: { item: "the-length" } }),
    );
    b.read("the-length", "20 0/16");
    expect(compared(b)[0]?.says).toBe("agree");
    const after = b.done();
    expect(aboutToBeBuried(after.state, after.all, after.clearances).lines.map(({ is }) => is)).not.toContain("tape and photo disagree");
  });

  test("the border is where the difference is as large as the doubt of both, by root of squares", () => {
    // the bench's hard place: 1588 µm either way
    const found = photoMeasured(words(), 1588);
    if (!found.ok) throw new Error(found.refusal.code);
    const b = book(sheet);
    b.read("the-length", "20 0/16");
    enter(b, words());
    const tape = compared(b)[0]?.tape;
    if (tape === undefined) throw new Error("no tape");
    const both = Math.sqrt(tape.doubt ** 2 + found.value.length.doubt ** 2);
    const saysAt = (micrometres: number): string | undefined => {
      const other = book(sheet);
      other.read("the-length", `${(found.value.length.micrometres + micrometres) / 25_400}`.slice(0, 9));
      enter(other, words());
      return compared(other)[0]?.says;
    };
    // a reading to more digits is surer by its resolution's share alone, which is a small part of the tape's doubt
    expect(saysAt(0.8 * both)).toBe("agree");
    expect(saysAt(1.1 * both)).toBe("disagree");
  });

  test("it cannot tell: no reading, no ruler, a bent card, a card that media saw elsewhere", () => {
    const none = book(sheet);
    enter(none, words());
    expect(compared(none)[0]).toMatchObject({ says: "cannot tell", because: { why: "no reading" } });

    const { ruler: _, ...without } = words();
    const unprinted = book(sheet);
    unprinted.read("the-length", "20 0/16");
    enter(unprinted, without);
    expect(compared(unprinted)[0]).toMatchObject({ says: "cannot tell", because: { why: "too doubtful", needed: 6350 } });

    const bent = book(sheet);
    bent.read("the-length", "20 0/16");
    enter(
      bent,
      words({}, ({ x }) => ((x - middle.x) * (x - middle.x)) / 2 / 1e6),
    );
    expect(compared(bent)[0]).toMatchObject({ says: "cannot tell", because: { why: "not flat" } });

    const seen = (right: number): Json =>
      card.map(({ corners }) => ({
        text: "a".repeat(20),
        says: { of: "nothing", why: "altered" },
        corners: corners.map((spot) => {
          const { x, y } = seenFrom(view, spot);
          return [Math.round(x) + right, Math.round(y)];
        }),
      }));
    const elsewhere = (moved: number): PhotoComparison | undefined => {
      const b = book(sheet);
      b.read("the-length", "20 0/16");
      enter(b, words());
      b.enter("picture-read", { photo, facts: { taken: null, position: null, notes: [], cards: seen(moved) } }, { phone: "edge" });
      return compared(b)[0];
    };
    expect(elsewhere(2)?.says).toBe("agree");
    expect(elsewhere(60)).toMatchObject({ says: "cannot tell", because: { why: "card elsewhere" } });
  });

  test("a photo of before the rework is not compared with what is read after it", () => {
    const b = book(sheet);
    b.read("the-length", "20 0/16");
    enter(b, words());
    b.enter("reworked", { about: { item: "the-length" }, done: "cut anew", minutes: 5 });
    b.read("the-length", "18 0/16");
    expect(compared(b)).toEqual([]);
  });

  test("nor where somebody measures only after the rework in a photo from before it", () => {
    const b = book(sheet);
    b.picture("the-length", { photo });
    b.enter("reworked", { about: { item: "the-length" }, done: "cut anew", minutes: 5 });
    b.read("the-length", "20 0/16");
    enter(b, words());
    expect(compared(b)).toEqual([]);
  });

  test("a photo whose picture was taken back is not compared any more; one that is still a picture elsewhere is", () => {
    const takenBack = (further: boolean): readonly PhotoComparison[] => {
      const b = book(sheet);
      b.read("the-length", "20 0/16");
      const id = b.picture("the-length", { photo });
      if (further) b.picture("the-length", { photo });
      enter(b, words());
      expect(compared(b)).toHaveLength(1);
      b.enter("corrected", { entry: { id, digest: "" }, reason: "the wrong hole", withdrawn: true });
      return compared(b);
    };
    expect(takenBack(false)).toEqual([]);
    expect(takenBack(true).map(({ says }) => says)).toEqual(["agree"]);
  });

  test("the newest photo of a reading speaks", () => {
    const b = book(sheet);
    b.read("the-length", "20 0/16");
    const { ruler: _, ...without } = words();
    enter(b, without);
    const better = enter(b, words());
    expect(compared(b).map(({ entry, says, times }) => [entry, says, times])).toEqual([[better, "agree", 2]]);
    // taken back, it is not forgotten
    b.enter("corrected", { entry: { id: better, digest: better }, reason: "the wrong edge", withdrawn: true });
    expect(compared(b)[0]).toMatchObject({ says: "cannot tell", times: 2 });
  });

  test("it cannot tell where the tape itself is doubtful, where media saw no card, where somebody said that it does not show it", () => {
    const rough = book(sheet);
    // to the whole inch: U of 14.8 mm
    rough.read("the-length", "20");
    enter(rough, words());
    expect(compared(rough)[0]).toMatchObject({ says: "cannot tell", because: { why: "tape too rough", needed: 6350 } });

    const cardless = book(sheet);
    cardless.read("the-length", "20 0/16");
    enter(cardless, words());
    cardless.enter("picture-read", { photo, facts: { taken: null, position: null, notes: [], cards: [] } }, { phone: "edge" });
    expect(compared(cardless)[0]).toMatchObject({ says: "cannot tell", because: { why: "card not found" } });

    const looked = book(sheet);
    const picture = looked.picture("the-length", { photo });
    looked.read("the-length", "20 0/16");
    enter(looked, words());
    expect(compared(looked)[0]?.says).toBe("agree");
    looked.enter("picture-looked-at", { picture, says: "does not show it" });
    expect(compared(looked)[0]).toMatchObject({ says: "cannot tell", because: { why: "not shown" } });
  });

  test("where the thing itself ends stands in its doubt, as in the tape's", () => {
    const b = book(sheet);
    b.read("the-length", "20 0/16");
    enter(b, words());
    // 1588 µm either way: 917 beside the photo's own 0.73 mm of k = 2
    const own = photoMeasured(words());
    if (!own.ok) throw new Error(own.refusal.code);
    const both = 2 * Math.sqrt((own.value.length.doubt / 2) ** 2 + 1588 ** 2 / 3);
    expect(Math.abs((compared(b)[0]?.measured?.doubt ?? 0) - both)).toBeLessThanOrEqual(2);
  });

  test("before a covering: those of its own readings that do not agree", () => {
    const b = book(sheet);
    b.read("the-length", "21 0/16");
    enter(b, words());
    const { state, all, clearances } = b.done();
    expect(disagreeingOn(state, all, "bury-it").map(({ item }) => item)).toEqual(["the-length"]);
    expect(disagreeingOn(state, all, "close-it")).toEqual([]);
    // it holds nothing
    expect(clearances.find(({ covering }) => covering === "bury-it")?.lines.map(({ about }) => about.item ?? about.check)).not.toContain(
      "the-length",
    );
    b.read("the-length", "20 0/16");
    const after = b.done();
    expect(disagreeingOn(after.state, after.all, "bury-it")).toEqual([]);
  });

  test("no finding goes by it", () => {
    const [without, beside] = [book(sheet), book(sheet)];
    for (const b of [without, beside]) b.read("the-length", "21 0/16", {}, { id: "the-reading" });
    enter(beside, words());
    expect(beside.done().all).toEqual(without.done().all);
  });
});

describe("what may be entered", () => {
  const admitted = (what: Whats["photo-measured"]) => {
    const b = book(sheet);
    const id = enter(b, what);
    const entry = b.ledger().entries.find((one) => one.id === id);
    if (entry === undefined) throw new Error("no entry");
    return admit(b.done().state, entry, "crew");
  };
  test("a length that is read with a tape, and numbers that make a card", () => {
    expect(admitted(words())).toEqual({ ok: true, value: undefined });
    expect(admitted(words({ item: "the-rod" }))).toMatchObject({ ok: false, refusal: { code: "entry-unknown-item", place: "what/item" } });
    expect(admitted(words({ to: words().from }))).toMatchObject({ ok: false, refusal: { code: "points-coincident", place: "what/taps" } });
    expect(admitted(words({ ruler: { typed: "10 ft", unit: "in" } }))).toMatchObject({ ok: false, refusal: { place: "what/ruler/typed" } });
    expect(admitted(words({ codes: [] }))).toMatchObject({ ok: false, refusal: { code: "points-too-few" } });
    expect(admitted(words({ from: [1, 2] as unknown as SeenSpot }))).toMatchObject({ ok: false, refusal: { code: "entry-shape" } });
  });

  test("a limit's need: 10 in aimed at and 8 in at least leave 2 in, and 3.65 u of that; else a quarter inch", () => {
    const read = readSheet(defaultSheetJson);
    if (!read.ok) throw new Error(read.refusal.code);
    // 2 × 50,800 / 3.65 = 27,835
    expect(photoNeeds(read.value, "cover-shallowest")).toBe(27_835);
    expect(photoNeeds(read.value, "mark-to-socket")).toBe(6350);
    const tight = bench({
      items: [lengthItem("the-length", { onOnePlane: true })],
      checks: [
        {
          id: "long-enough",
          step: "step-one",
          title: { en: "long enough" },
          function: "single value",
          items: ["the-length"],
          kind: "length",
          weight: "holds",
          holds: "bury-it",
          aim: 25_400,
          lower: 20_000,
        },
      ],
    });
    // 2 × 5,400 / 3.65 = 2,958.9
    expect(photoNeeds(tight, "the-length")).toBe(2958);
    const measurable = read.value.items.filter((item) => isMeasurable(read.value, item)).map(({ id }) => id);
    expect(measurable).toEqual(expect.arrayContaining(["cover-shallowest", "patch-beyond-cut", "mark-to-socket"]));
    // no lengths by tape; and such as no card lies on the plane of: depths of water, a lap on a curved wall
    const others = [
      "rim-place-1",
      "gap-along",
      "lip-gap-first",
      "cure-time",
      "label-applied",
      "water-at-rest",
      "overflow-freeboard",
      "liner-lap",
    ];
    for (const id of others) expect(measurable).not.toContain(id);
  });
});
